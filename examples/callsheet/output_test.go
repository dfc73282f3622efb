package main

import (
	"bytes"
	"errors"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate/portion/record"
)

// folder returns the files of a folder by name; what is no file has its mode.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, e := range entries {
		if !e.Type().IsRegular() {
			out[e.Name()] = e.Type().String()
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		out[e.Name()] = string(data)
	}
	return out
}

func fill(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

var twoFiles = map[string][]byte{"callsheet.md": []byte("new\n"), "day.svg": []byte("<svg/>\n")}

func TestAFilledInRecordIsNotReplaced(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "day")
	files := demoFiles(t)
	for range 2 { // a record that nobody touched is renewed
		if err := writeFolder(dir, files, nil); err != nil {
			t.Fatal(err)
		}
	}
	const name = "record-1-filled-plums.json"
	path := filepath.Join(dir, name)
	edit := func(change func(*record.Record)) string {
		r, err := record.Read(bytes.NewReader(files[name]))
		if err != nil {
			t.Fatal(err)
		}
		change(&r)
		var b bytes.Buffer
		if err := r.Write(&b); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	want := path + " is filled in, or not as this program wrote it, and is not replaced: " +
		"it says how the picture was made; move it away or give another folder"
	for what, text := range map[string]string{
		"weighed": edit(func(r *record.Record) { r.Items[0].Weighed = &record.Weighed{Grams: 162.1} }),
		"signed":  edit(func(r *record.Record) { r.Signed = []record.Signature{{Name: "A. Stylist", Date: "2026-10-14"}} }),
		"taken":   edit(func(r *record.Record) { r.Takes = []record.Take{{Number: 1, Chosen: true}} }),
		"no JSON": "weighed 162.1 g",
	} {
		fill(t, dir, map[string]string{name: text, "callsheet.md": "read and noted"})
		before := folder(t, dir)
		if err := writeFolder(dir, files, nil); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", what, err, want)
		}
		if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
			t.Errorf("%s: the folder changed: %s", what, diff)
		}
	}
	// The program writes the rest, and says so.
	filled := folder(t, dir)[name]
	var stdout, stderr bytes.Buffer
	if status := run([]string{"-out", dir}, &stdout, &stderr); status != 0 || stderr.String() != "callsheet: "+name+" is filled in, or not as this program wrote it: it stays as it is\n" {
		t.Errorf("exit status %d, message %q", status, stderr.String())
	}
	got := folder(t, dir)
	if !strings.Contains(got["callsheet.md"], "Filled plums") || got[name] != filled {
		t.Errorf("the record was replaced, or the sheet was not: %q", got[name])
	}
	// And so do the pages, whichever somebody holds.
	const said = " was filled in: it is kept as it is and not written anew."
	if !strings.Contains(strings.Join(strings.Fields(stdout.String()), " "), name+said) || !strings.Contains(got["print.html"], name+said) || !strings.Contains(got["callsheet.md"], plain(name+said)) {
		t.Errorf("a page does not say that %s was kept", name)
	}
	for i, s := range island(t, []byte(got["set.html"])).Shots {
		if s.Kept != (i == 0) {
			t.Errorf("picture %d on the set's page: kept %v", i, s.Kept)
		}
	}
}

// A plan of another order numbers its pictures anew: a record that is filled in under the
// old number is the picture's record.
func TestAFilledInRecordOfAnotherNumberIsThePicturesRecord(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "day")
	files := demoFiles(t)
	if err := writeFolder(dir, files, nil); err != nil {
		t.Fatal(err)
	}
	const before, now = "record-4-filled-plums.json", "record-1-filled-plums.json"
	filled := strings.Replace(string(files[now]), `"revision": 1`, `"signed": [{"name": "x"}], "revision": 1`, 1)
	fill(t, dir, map[string]string{before: filled})
	if err := os.Remove(filepath.Join(dir, now)); err != nil {
		t.Fatal(err)
	}
	kept := filledInRecords(dir)
	if len(kept) != 1 || kept[0].name != before {
		t.Fatalf("kept %v", kept)
	}
	rest, err := filesOf(demoPlans(t)["autumn"], kept...)
	if err != nil {
		t.Fatal(err)
	}
	if s := island(t, rest["set.html"]).Shots[0]; !s.Kept || s.RecordName != before {
		t.Errorf("the set's page hands over %s, kept %v", s.RecordName, s.Kept)
	}
	if err := writeFolder(dir, rest, nil); err != nil {
		t.Fatal(err)
	}
	got := folder(t, dir)
	if _, blank := got[now]; blank || got[before] != filled {
		t.Errorf("beside the record that is filled in there is a blank one: %v; or it was changed", blank)
	}
	if len(got) != len(files)+1 {
		t.Errorf("%d files, want %d and their list", len(got), len(files))
	}
}

func TestFilesOfAnEarlierPlanAreTakenAwayAndNothingElse(t *testing.T) {
	dir := t.TempDir()
	blank := demoFiles(t)["record-1-filled-plums.json"]
	old := map[string][]byte{"callsheet.md": []byte("old"), "day-2.svg": []byte("old"), "record-1-pie.json": blank, "record-2-tart.json": blank}
	fill(t, dir, map[string]string{"notes.txt": "mine", "day-3.svg": "mine"})
	if err := writeFolder(dir, old, nil); err != nil {
		t.Fatal(err)
	}
	fill(t, dir, map[string]string{"record-2-tart.json": strings.Replace(string(blank), `"revision": 1`, `"signed": [{"name": "x"}], "revision": 1`, 1)})
	if err := writeFolder(dir, twoFiles, nil); err != nil {
		t.Fatal(err)
	}
	got := slices.Sorted(maps.Keys(folder(t, dir)))
	want := []string{".callsheet", "callsheet.md", "day-3.svg", "day.svg", "notes.txt", "record-2-tart.json"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestAnInterruptLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	old := map[string]string{"callsheet.md": "old"}
	existing := filepath.Join(parent, "existing")
	if err := os.Mkdir(existing, 0o700); err != nil {
		t.Fatal(err)
	}
	fill(t, existing, old)
	for _, dir := range []string{existing, filepath.Join(parent, "to-be-made")} {
		interrupt := make(chan os.Signal, 1)
		interrupt <- os.Interrupt
		if err := writeFolder(dir, twoFiles, interrupt); !errors.Is(err, errInterrupted) {
			t.Errorf("%s: %v, want an interrupt", dir, err)
		}
	}
	if diff := cmp.Diff(old, folder(t, existing)); diff != "" {
		t.Error(diff)
	}
	if got := folder(t, parent); len(got) != 1 {
		t.Errorf("left %v", got)
	}
}

// What fails half way is taken back: replaced, added and removed files alike.
func TestAHalfSetIsTakenBack(t *testing.T) {
	root := t.TempDir()
	set, dir := filepath.Join(root, "new"), filepath.Join(root, "day")
	for _, d := range []string{set, dir} {
		if err := os.Mkdir(d, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	before := map[string]string{"a": "old a", "c": "old c", "layout": "old layout", "notes": "mine"}
	fill(t, dir, before)
	fill(t, set, map[string]string{"a": "new a", "b": "new b"})
	old := filepath.Join(root, "old")
	// c cannot be moved: it was never staged.
	if err := swap(set, dir, old, []string{"a", "b", "c"}, []string{"layout"}); err == nil {
		t.Fatal("the missing file was not noticed")
	}
	if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
		t.Error(diff)
	}
}

func TestATargetThatIsAFolderIsRefusedFirst(t *testing.T) {
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "day.svg", "below"), 0o700); err != nil {
		t.Fatal(err)
	}
	fill(t, dir, map[string]string{"callsheet.md": "old"})
	before := folder(t, dir)
	if err := writeFolder(dir, twoFiles, nil); err == nil || !strings.Contains(err.Error(), "day.svg is not a file") {
		t.Errorf("%v, want a refusal of day.svg", err)
	}
	if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
		t.Error(diff)
	}
}

// Runs into one folder at the same time all succeed and leave one set.
func TestManyRunsIntoOneFolder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("an open file cannot be replaced there")
	}
	parent := t.TempDir()
	dir := filepath.Join(parent, "day")
	errs := make(chan error)
	for range 8 {
		go func() { errs <- writeFolder(dir, twoFiles, nil) }()
	}
	for range 8 {
		if err := <-errs; err != nil {
			t.Error(err)
		}
	}
	if got := folder(t, dir); len(got) != 3 || got["day.svg"] != "<svg/>\n" {
		t.Errorf("the folder holds %v", got)
	}
	if got := folder(t, parent); len(got) != 1 {
		t.Errorf("left %v", got)
	}
}

// A name of any length and any letters gives a file that can be written.
func TestNamesOfRecords(t *testing.T) {
	for name, want := range map[string]string{
		"Spiced oat bowl": "spiced-oat-bowl", "../../etc/passwd": "etc-passwd", "Grüße, Käse!": "grüße-käse", "": "picture", "☃": "picture",
		strings.Repeat("very long ", 50): "very-long-very-long-very-long-very-long-very-long",
	} {
		if got := slug(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// Whoever looks into the folder while it is renewed sees one set or the other, and what
// else lies in it stays.
func TestASetIsNeverMixed(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "day")
	if err := writeFolder(dir, version("0"), nil); err != nil {
		t.Fatal(err)
	}
	if err := exchange(dir, dir+"-none"); errors.Is(err, errors.ErrUnsupported) {
		t.Skip("this system does not exchange folders in one step")
	}
	fill(t, dir, map[string]string{"notes.txt": "mine"})
	done := make(chan error)
	go func() {
		var err error
		for i := range 60 {
			err = errors.Join(err, writeFolder(dir, version(string(rune('0'+i%10))), nil))
		}
		done <- err
	}()
	looks := 0
	for {
		select {
		case err := <-done:
			if err != nil {
				t.Fatal(err)
			}
			if got := folder(t, dir); len(got) != 6 || got["notes.txt"] != "mine" {
				t.Errorf("the folder holds %v", got)
			}
			if looks == 0 {
				t.Skip("the writer was too fast to be watched")
			}
			return
		default:
		}
		root, err := os.OpenRoot(dir)
		if err != nil {
			t.Fatalf("the folder was gone for a moment: %v", err)
		}
		var seen []string
		for _, name := range []string{"a.md", "m.svg", "z.json"} {
			if data, err := root.ReadFile(name); err == nil { // else: that set is being taken away
				seen = append(seen, string(data))
			}
		}
		root.Close()
		if len(slices.Compact(slices.Sorted(slices.Values(seen)))) > 1 {
			t.Fatalf("two sets are mixed: %q", seen)
		}
		looks++
	}
}
