package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate/portion"
	"github.com/google/go-cmp/cmp"
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

var twoFiles = map[string][]byte{"callsheet.md": []byte("# Call sheet: new\n"), "record.json": []byte("[]\n")}

func TestAFilledInRecordIsNotReplaced(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "day")
	_, files := sheetOf(t, "")
	for range 2 { // a record that nobody touched is renewed
		if err := writeFolder(dir, files, nil); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(dir, "record.json")
	edit := func(change func(*portion.Record)) string {
		var records []portion.Record
		if err := json.Unmarshal(files["record.json"], &records); err != nil {
			t.Fatal(err)
		}
		change(&records[len(records)-1])
		data, err := json.Marshal(records)
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	want := path + " is filled in, or not as this program wrote it, and is not replaced: " +
		"it says how the picture was made; move it away or give another folder"
	for name, text := range map[string]string{
		"weighed":    edit(func(r *portion.Record) { r.Items[0].Weighed = &portion.Weighed{Grams: 162.1} }),
		"signed":     edit(func(r *portion.Record) { r.Signed = []portion.Signature{{Name: "A. Stylist"}} }),
		"one record": `{"picture": "x"}`,
		"no JSON":    "weighed 162.1 g",
	} {
		fill(t, dir, map[string]string{"record.json": text, "callsheet.md": "read and noted"})
		before := folder(t, dir)
		if err := writeFolder(dir, files, nil); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
		if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
			t.Errorf("%s: the folder changed: %s", name, diff)
		}
	}
	var stdout, stderr bytes.Buffer
	if status := run([]string{"-out", dir}, &stdout, &stderr); status != 1 || stderr.String() != "callsheet: "+want+"\n" || stdout.Len() > 0 {
		t.Errorf("exit status %d, message %q, %d bytes printed, want 1, the reason and nothing", status, stderr.String(), stdout.Len())
	}
}

func TestDrawingsOfAnEarlierPlanAreRemoved(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, map[string]string{
		"callsheet.md":         "# Call sheet: old\n\n![x](layout-1-pie.svg)\n\n![x](layout-2-tart.svg)\n\n![x](../layout-3-up.svg)\n",
		"layout-1-pie.svg":     "old",
		"layout-2-tart.svg":    "old",
		"layout-9-my-own.svg":  "mine",
		"notes-layout-1-x.svg": "mine",
	})
	files := map[string][]byte{"callsheet.md": []byte("# Call sheet: new\n"), "layout-1-pie.svg": []byte("new")}
	if err := writeFolder(dir, files, nil); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"callsheet.md": "# Call sheet: new\n", "layout-1-pie.svg": "new", "layout-9-my-own.svg": "mine", "notes-layout-1-x.svg": "mine"}
	if diff := cmp.Diff(want, folder(t, dir)); diff != "" {
		t.Error(diff)
	}
	// A sheet that this program did not write says nothing about what may go.
	fill(t, dir, map[string]string{"callsheet.md": "mine: ![x](layout-9-my-own.svg)"})
	if err := writeFolder(dir, files, nil); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, folder(t, dir)); diff != "" {
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
	if err := os.MkdirAll(filepath.Join(dir, "record.json", "below"), 0o700); err != nil {
		t.Fatal(err)
	}
	fill(t, dir, map[string]string{"callsheet.md": "old"})
	before := folder(t, dir)
	if err := writeFolder(dir, twoFiles, nil); err == nil || !strings.Contains(err.Error(), "record.json is not a file") {
		t.Errorf("%v, want a refusal of record.json", err)
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
	if got := folder(t, dir); len(got) != 2 || got["record.json"] != "[]\n" {
		t.Errorf("the folder holds %v", got)
	}
	if got := folder(t, parent); len(got) != 1 {
		t.Errorf("left %v", got)
	}
}

// A name of any length and any letters gives a file that can be written.
func TestLayoutNames(t *testing.T) {
	seen := []string{}
	for i, name := range []string{"Spiced oat bowl", strings.Repeat("very long ", 50), "../../etc/passwd", "\u00fc\u00f6", ""} {
		shot := Shot{Dish: &Dish{Name: name}}
		got := shot.layoutName(i)
		if len(got) > 80 || strings.ContainsAny(got, `/\`) || slices.Contains(seen, got) || !layoutFile.MatchString("]("+got+")") {
			t.Errorf("%q: %q", name, got)
		}
		seen = append(seen, got)
	}
}
