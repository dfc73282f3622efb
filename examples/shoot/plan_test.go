package shoot

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"
)

func demo(t *testing.T, name string) *Brief {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "callsheet", "days", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	b, err := Read(f)
	if err != nil {
		t.Fatalf("%s:\n%v", name, err)
	}
	return b
}

func TestTheDemonstrationDaysPlan(t *testing.T) {
	for _, name := range []string{"autumn", "coast", "motion"} {
		b := demo(t, name)
		p, err := b.Plan(nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		text, err := json.MarshalIndent(p, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		var back Plan
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		again, _ := json.MarshalIndent(&back, "", " ")
		if string(again) != string(text) {
			t.Errorf("%s does not read back", name)
		}
	}
}

// What a program writes as a brief is read as one, and is the same day.
func TestABriefThatIsWrittenReadsBack(t *testing.T) {
	for _, name := range []string{"autumn", "coast", "motion"} {
		b := demo(t, name)
		text, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Read(bytes.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if again, _ := json.Marshal(back); !bytes.Equal(again, text) {
			t.Errorf("%s reads back as %s, was %s", name, again, text)
		}
	}
}

// A byte order mark and Windows line ends are passed over; UTF-16 is refused with a
// sentence that says what to do.
func TestFilesOfOtherMachines(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "callsheet", "days", "coast.json"))
	if err != nil {
		t.Fatal(err)
	}
	windows := append([]byte("\ufeff"), bytes.ReplaceAll(bytes.ReplaceAll(text, []byte("\r"), nil), []byte("\n"), []byte("\r\n"))...)
	b, err := Read(bytes.NewReader(windows))
	if err != nil {
		t.Fatal(err)
	}
	want, _ := json.Marshal(demo(t, "coast"))
	if got, _ := json.Marshal(b); !bytes.Equal(got, want) {
		t.Error("a Windows file is another brief")
	}
	if _, err := ReadFacts(strings.NewReader("\ufeff{\r\n\"now\": \"2026-10-14T11:00:00Z\"}\r\n")); err != nil {
		t.Error(err)
	}
	for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
		wide := order.AppendUint16(nil, 0xfeff)
		for _, c := range utf16.Encode([]rune(string(text))) {
			wide = order.AppendUint16(wide, c)
		}
		if _, err := Read(bytes.NewReader(wide)); err == nil || err.Error() != "line 1: file is UTF-16, want UTF-8: save it again with that encoding" {
			t.Errorf("UTF-16: %v", err)
		}
	}
}
