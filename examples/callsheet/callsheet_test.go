package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"example.org/honestplate/portion"
	"github.com/google/go-cmp/cmp"
)

const coast = "testdata/coast.json"

// demoPlan is the demonstration worked out.
var demoPlan = sync.OnceValues(func() (*Plan, error) {
	b, err := ReadBrief(bytes.NewReader(demoBrief))
	if err != nil {
		return nil, err
	}
	return b.Plan()
})

// A day is what the program prints and writes for a brief.
type day struct {
	text  string
	files map[string][]byte
}

// The days most tests look at are planned once.
var (
	demoDay  = sync.OnceValues(func() (day, error) { return planDay("") })
	coastDay = sync.OnceValues(func() (day, error) { return planDay(coast) })
)

// planDay runs the program into a fresh folder.
func planDay(brief string) (d day, err error) {
	dir, err := os.MkdirTemp("", "callsheet-test-")
	if err != nil {
		return d, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(dir)) }()
	args := []string{"-out", filepath.Join(dir, "sheet")}
	if brief != "" {
		args = append(args, "-brief", brief)
	}
	var stdout, stderr bytes.Buffer
	if status := run(args, &stdout, &stderr); status != 0 {
		return d, fmt.Errorf("exit status %d: %s", status, stderr.String())
	}
	d = day{stdout.String(), map[string][]byte{}}
	entries, err := os.ReadDir(args[1])
	if err != nil {
		return d, err
	}
	for _, e := range entries {
		if d.files[e.Name()], err = os.ReadFile(filepath.Join(args[1], e.Name())); err != nil {
			return d, err
		}
	}
	return d, nil
}

// sheetOf returns what the program prints and writes for the demonstration ("") or
// the day at the coast.
func sheetOf(t *testing.T, brief string) (text string, files map[string][]byte) {
	t.Helper()
	plan := demoDay
	if brief == coast {
		plan = coastDay
	}
	d, err := plan()
	if err != nil {
		t.Fatal(err)
	}
	return d.text, d.files
}

func TestTheSheetFitsATerminal(t *testing.T) {
	for _, brief := range []string{"", coast} {
		text, _ := sheetOf(t, brief)
		for i, line := range strings.Split(text, "\n") {
			if n := utf8.RuneCountInString(line); n > textWidth {
				t.Errorf("%q, line %d has %d columns: %s", brief, i+1, n, line)
			}
			if strings.Contains(line, "e+0") || strings.Contains(line, "NaN") || strings.Contains(line, "Inf") || strings.Contains(line, "%!") {
				t.Errorf("%q, line %d has a number no crew reads: %s", brief, i+1, line)
			}
		}
	}
}

func TestEveryDishIsAnswered(t *testing.T) {
	text, _ := sheetOf(t, "")
	for _, want := range []string{
		"THE DAY", "START BEFORE THE SHOTS", "TO BUY", "MIND", "RECORD TO FILL IN", "Signed",
		"whole milk + ", "confirms it", "Correct    if the cup says", "advertised and pours as it is", "stand-in",
		"haze after", "Runs", "Ice        real", "One freeze", "Two freezes", "Strips", "Slices", "Choose", "Pull", "Oven",
		"Heroes     prepare", "local codes",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
}

// The grams a sheet prints add up to what is declared, to the step.
func TestPrintedSumsAreExact(t *testing.T) {
	text, _ := sheetOf(t, "")
	joined := strings.Join(strings.Fields(text), " ")
	sum := regexp.MustCompile(`((?:\d+(?:\.\d+)? \+ )+\d+(?:\.\d+)?) g = (\d+(?:\.\d+)?) g`)
	found := sum.FindAllStringSubmatch(joined, -1)
	if len(found) < 2 {
		t.Fatalf("found %d sums, want the strips and the slices", len(found))
	}
	for _, m := range found {
		total := 0.0
		for part := range strings.SplitSeq(m[1], " + ") {
			v, err := strconv.ParseFloat(part, 64)
			if err != nil {
				t.Fatal(err)
			}
			total += v
		}
		want, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(total-want) > 1e-9 || want != 62 {
			t.Errorf("%s adds up to %g, want 62", m[0], total)
		}
	}
	blend := regexp.MustCompile(`(\d+) g whole milk \+ (\d+) g whipping cream = (\d+) g`).FindStringSubmatch(joined)
	if blend == nil {
		t.Fatal("no blend in grams")
	}
	milk, _ := strconv.Atoi(blend[1])
	cream, _ := strconv.Atoi(blend[2])
	if total, _ := strconv.Atoi(blend[3]); milk+cream != total || total != 900 {
		t.Errorf("%s does not add up", blend[0])
	}
}

// The chosen plums are nine, and weigh what is declared to the step.
func TestChosenPiecesWeighWhatIsDeclared(t *testing.T) {
	p, err := demoPlan()
	if err != nil {
		t.Fatal(err)
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		if s.Dish.Pieces == nil {
			continue
		}
		names := strings.Fields(strings.Split(s.Planned["filled plum"], ",")[0])
		total := 0.0
		for _, n := range names {
			for _, w := range s.Dish.Pieces.Weighed {
				if w.Name == n {
					total += w.Grams
				}
			}
		}
		if len(names) != 9 || math.Abs(total-162) > 1e-9 {
			t.Errorf("%d pieces of %.2f g, want 9 of 162", len(names), total)
		}
		return
	}
	t.Fatal("no dish of pieces")
}

// A second, deeper freeze makes the scoop hold longer and starts earlier.
func TestTwoFreezesHoldLonger(t *testing.T) {
	text, _ := sheetOf(t, "")
	at := func(label string) string {
		_, after, ok := strings.Cut(text, "\n"+label)
		if !ok {
			t.Fatalf("no line %q", label)
		}
		_, after, _ = strings.Cut(after, "soft after ")
		clock, _, _ := strings.Cut(after, " ")
		return clock
	}
	minutes := func(clock string) float64 {
		m, s, _ := strings.Cut(clock, ":")
		a, err1 := strconv.Atoi(m)
		b, err2 := strconv.Atoi(s)
		if err1 != nil || err2 != nil {
			t.Fatalf("clock %q", clock)
		}
		return float64(a) + float64(b)/60
	}
	cabinet, one, two := minutes(at("Cabinet")), minutes(at("One freeze")), minutes(at("Two freezes"))
	if !(cabinet < one && one < two) {
		t.Errorf("soft after %.1f, %.1f and %.1f min, want each later", cabinet, one, two)
	}
}

func TestFilesAreCompleteAndWellFormed(t *testing.T) {
	for _, brief := range []string{"", coast} {
		_, files := sheetOf(t, brief)
		layouts := 0
		for name, data := range files {
			if filepath.Ext(name) == ".svg" {
				dec := xml.NewDecoder(bytes.NewReader(data))
				for {
					if _, err := dec.Token(); errors.Is(err, io.EOF) {
						break
					} else if err != nil {
						t.Errorf("%s: %v", name, err)
						break
					}
				}
			}
			if strings.HasPrefix(name, "layout-") {
				layouts++
				if !bytes.Contains(files["callsheet.md"], []byte("("+name+")")) {
					t.Errorf("callsheet.md does not show %s", name)
				}
			}
		}
		var records []portion.Record
		if err := json.Unmarshal(files["record.json"], &records); err != nil {
			t.Fatal(err)
		}
		if len(records) != layouts {
			t.Errorf("%d records and %d layouts, want one of each a dish", len(records), layouts)
		}
		for _, want := range []string{"callsheet.md", "timeline.svg", "record.json"} {
			if len(files[want]) == 0 {
				t.Errorf("%s is missing", want)
			}
		}
	}
}

// A brief's words stay words in the Markdown sheet.
func TestMarkdownIsEscaped(t *testing.T) {
	for text, want := range map[string]string{
		`a | b`:                         `a \| b`,
		`\[x](https://example.invalid)`: `\\\[x](https://example.invalid)`,
		`\*em\*`:                        `\\\*em\\\*`,
		"~~~":                           `\~\~\~`,
		"<b>&lt;":                       "&lt;b>&amp;lt;",
		"`x` _y_ #1":                    `'x' \_y\_ \#1`,
	} {
		if got := escape(text); got != want {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
}

func TestSameBriefSameBytes(t *testing.T) {
	text, files := sheetOf(t, "")
	again, err := planDay("")
	if err != nil {
		t.Fatal(err)
	}
	if text != again.text {
		t.Error("two runs print different sheets")
	}
	if diff := cmp.Diff(files, again.files); diff != "" {
		t.Errorf("two runs write different files:\n%s", diff)
	}
}

func TestFoldersThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a-file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, out := range []string{file, filepath.Join(file, "below")} {
		var stdout, stderr bytes.Buffer
		if status := run([]string{"-out", out}, &stdout, &stderr); status != 1 || stderr.Len() == 0 {
			t.Errorf("%s: exit status %d (%s), want 1 and a reason", out, status, stderr.String())
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != 1 {
		t.Errorf("left %v behind", entries)
	}
}

// A folder that holds an older sheet is renewed; what is not the sheet's stays.
func TestAnOlderSheetIsRenewed(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{"callsheet.md": "old", "notes.txt": "mine"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	_, files := sheetOf(t, "")
	if err := writeFolder(dir, files, nil); err != nil {
		t.Fatal(err)
	}
	sheet, _ := os.ReadFile(filepath.Join(dir, "callsheet.md"))
	notes, _ := os.ReadFile(filepath.Join(dir, "notes.txt"))
	if string(sheet) == "old" || string(notes) != "mine" {
		t.Errorf("callsheet.md %.20q, notes.txt %q", sheet, notes)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestAFullDiskIsSaid(t *testing.T) {
	var stderr bytes.Buffer
	if status := run(nil, fullDisk{}, &stderr); status != 1 || !strings.Contains(stderr.String(), "no space") {
		t.Errorf("exit status %d (%s), want 1 and the reason", status, stderr.String())
	}
}

func TestFlags(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"-brief", "testdata/there-is-none.json"}, 1, "there-is-none"},
		{[]string{"-nonsense"}, 2, "nonsense"},
		{[]string{"day.json"}, 2, "day.json"},
		{[]string{"-h"}, 0, "-brief"},
	} {
		var stdout, stderr bytes.Buffer
		if status := run(c.args, &stdout, &stderr); status != c.status || !strings.Contains(stderr.String(), c.want) {
			t.Errorf("%v: exit status %d (%s), want %d and %q", c.args, status, stderr.String(), c.status, c.want)
		}
	}
}

func FuzzReadBrief(f *testing.F) {
	f.Add(demoBrief)
	f.Add([]byte(`{"title": "x"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := ReadBrief(bytes.NewReader(data))
		if err != nil {
			return
		}
		p, err := b.Plan()
		if err != nil {
			return
		}
		var text bytes.Buffer
		if err := p.Sheet().WriteText(&text); err != nil || strings.Contains(text.String(), "NaN") {
			t.Errorf("%v: %s", err, text.String())
		}
	})
}
