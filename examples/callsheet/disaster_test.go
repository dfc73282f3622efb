package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// versions are sets of files, of which each has some that the other has not.
func version(v string) map[string][]byte {
	return map[string][]byte{"a.md": []byte(v), "m.svg": []byte(v), "only-" + v + ".svg": []byte(v), "z.json": []byte(v)}
}

// wholeSet wants a folder to hold one version with its list, and besides what was there.
func wholeSet(t *testing.T, dir string, besides ...string) (v string) {
	t.Helper()
	got := folder(t, dir)
	v = got["a.md"]
	want := map[string]string{}
	for name, text := range withManifest(version(v)) {
		want[name] = string(text)
	}
	for _, name := range besides {
		want[name] = got[name]
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Fatalf("not one set of version %q: %s", v, diff)
	}
	return v
}

// The disk is full at the first file, at the second, at any: what was there is there, and
// nothing else.
func TestAFullDiskChangesNothing(t *testing.T) {
	full := errors.New("no space left on device")
	defer func() { write = writeSynced }()
	for _, place := range []string{"new", "in one step", "file by file"} {
		for fails := range 12 {
			parent := t.TempDir()
			dir := filepath.Join(parent, "day")
			write = writeSynced
			if place != "new" {
				if err := writeFolder(dir, version("0"), nil); err != nil {
					t.Fatal(err)
				}
			}
			if place == "file by file" { // a folder inside cannot be taken along in one step
				if err := os.Mkdir(filepath.Join(dir, "pictures"), 0o700); err != nil {
					t.Fatal(err)
				}
			}
			n := 0
			write = func(path string, data []byte) error {
				if n++; n <= fails {
					return writeSynced(path, data)
				}
				return errors.Join(os.WriteFile(path, data[:len(data)/2], 0o600), full)
			}
			err := writeFolder(dir, version("1"), nil)
			switch {
			case err == nil:
				if n > fails {
					t.Errorf("%s: the full disk at file %d was not noticed", place, fails+1)
				}
				if v := wholeSet(t, dir, besides(place)...); v != "1" {
					t.Errorf("%s: version %s", place, v)
				}
			case !errors.Is(err, full):
				t.Errorf("%s: %v", place, err)
			case place == "new":
				if _, err := os.Stat(dir); !errors.Is(err, os.ErrNotExist) {
					t.Errorf("%s: the folder is there after file %d failed", place, fails+1)
				}
			default:
				if v := wholeSet(t, dir, besides(place)...); v != "0" {
					t.Errorf("%s: version %s after file %d failed", place, v, fails+1)
				}
			}
			for _, e := range folderNames(t, parent) {
				if e != "day" {
					t.Errorf("%s: left %s", place, e)
				}
			}
		}
	}
}

func besides(place string) []string {
	if place == "file by file" {
		return []string{"pictures"}
	}
	return nil
}

func folderNames(t *testing.T, dir string) (names []string) {
	for name := range folder(t, dir) {
		names = append(names, name)
	}
	return names
}

// Runs into one folder at once: one after the other, and the last one's set is whole.
func TestRunsAtOnceDoNotMix(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "day")
	if unlock, _, err := locked(parent, nil); err != nil {
		t.Fatal(err)
	} else {
		defer unlock()
	}
	interrupt := make(chan os.Signal, 1)
	interrupt <- os.Interrupt
	if _, _, err := locked(parent, interrupt); err == nil {
		t.Skip("this system has no locks")
	}
	another := t.TempDir()
	dir = filepath.Join(another, "day")
	errs := make(chan error)
	for i := range 12 {
		go func() {
			var err error
			for k := range 4 {
				err = errors.Join(err, writeFolder(dir, version(fmt.Sprint(12*k+i)), nil))
			}
			errs <- err
		}()
	}
	for range 12 {
		if err := <-errs; err != nil {
			t.Error(err)
		}
	}
	wholeSet(t, dir)
	if got := folderNames(t, another); len(got) != 1 {
		t.Errorf("left %v", got)
	}
}

// writeUntilKilled is what a second process of this test does: it writes versions into
// the folder until it is killed.
const loopVariable = "CALLSHEET_TEST_WRITES_INTO"

func TestMain(m *testing.M) {
	if dir := os.Getenv(loopVariable); dir != "" {
		for i := range 100_000 {
			if err := writeFolder(dir, version(fmt.Sprint(i%7)), nil); err != nil {
				fmt.Fprintln(os.Stderr, err)
				os.Exit(1)
			}
			if i == 0 {
				fmt.Println("writing")
			}
		}
	}
	os.Exit(m.Run())
}

// A process that is killed at any moment leaves the old set or the new one.
func TestAKilledRunLeavesOneSet(t *testing.T) {
	if testing.Short() {
		t.Skip("kills processes for some seconds")
	}
	parent := t.TempDir()
	dir := filepath.Join(parent, "day")
	if err := writeFolder(dir, version("0"), nil); err != nil {
		t.Fatal(err)
	}
	if err := exchange(dir, dir+"-none"); errors.Is(err, errors.ErrUnsupported) {
		t.Skip("this system does not exchange folders in one step")
	}
	fill(t, dir, map[string]string{"notes.txt": "mine"})
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	seen := []string{"0"}
	for i := range 40 {
		var out bytes.Buffer
		c := exec.Command(program)
		c.Env, c.Stderr = append(os.Environ(), loopVariable+"="+dir), &out
		says, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		says.Read(make([]byte, 8)) // however slow the machine: it writes, or has ended
		time.Sleep(time.Duration(7*i%30) * time.Millisecond)
		c.Process.Kill()
		c.Wait()
		if out.Len() > 0 {
			t.Fatalf("the other process says %s", out.String())
		}
		seen = append(seen, wholeSet(t, dir, "notes.txt"))
	}
	if len(slices.Compact(slices.Sorted(slices.Values(seen)))) < 2 {
		t.Errorf("no run got anywhere: %s", strings.Join(seen, " "))
	}
	if err := writeFolder(dir, version("9"), nil); err != nil || wholeSet(t, dir, "notes.txt") != "9" {
		t.Errorf("a whole run after that: %v", err)
	}
	if got := folderNames(t, parent); len(got) != 1 {
		t.Errorf("killed runs left %v", got)
	}
}

// What killed runs have staged is removed by the next run; what is somebody's, of another
// program, or of a run that may still be at work is not.
func TestWhatKilledRunsLeftIsRemoved(t *testing.T) {
	blank := demoFiles(t)["record-1-filled-plums.json"]
	filled := strings.Replace(string(blank), `"revision": 1`, `"signed": [{"name": "x"}], "revision": 1`, 1)
	half := string(blank[:len(blank)/2])
	for _, c := range []struct {
		what, name string
		files      map[string]string
		stays      bool
	}{
		{"nothing yet", ".callsheet-123", nil, false},
		{"half a set", ".callsheet-123", map[string]string{"new/.callsheet": "a.md\nrecord-1-x.json\n", "new/a.md": "n", "new/record-1-x.json": half}, false},
		{"an earlier set, after the exchange", ".callsheet-123", map[string]string{"new/.callsheet": "a.md\n", "new/a.md": "old", "new/z.json": "old"}, false},
		{"what was taken out, file by file", ".callsheet-123", map[string]string{"new/.callsheet": "z.json\n", "old/a.md": "old", "old/m.svg": "old"}, false},
		{"a file of somebody's", ".callsheet-123", map[string]string{"new/.callsheet": "a.md\n", "new/letter.txt": "mine"}, true},
		{"a record that is filled in", ".callsheet-123", map[string]string{"old/record-1-x.json": filled, "new/.callsheet": "record-1-x.json\n"}, true},
		{"another program's folder", ".callsheet-backup", map[string]string{"new/a.md": "n"}, true},
		{"a folder inside", ".callsheet-123", map[string]string{"new/deep/a.md": "n"}, true},
		{"something else in it", ".callsheet-123", map[string]string{"kept/a.md": "n"}, true},
	} {
		for _, inside := range []bool{false, true} {
			parent := t.TempDir()
			dir := filepath.Join(parent, "day")
			if err := writeFolder(dir, version("0"), nil); err != nil {
				t.Fatal(err)
			}
			stage := filepath.Join(parent, c.name)
			if inside {
				stage = filepath.Join(dir, c.name)
			}
			lay := func() {
				if err := os.MkdirAll(stage, 0o700); err != nil {
					t.Fatal(err)
				}
				for name, text := range c.files {
					path := filepath.Join(stage, name)
					if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
						t.Fatal(err)
					}
					if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
						t.Fatal(err)
					}
				}
			}
			left := func() bool { _, err := os.Stat(stage); return err == nil }
			lay()
			tidy(filepath.Dir(stage), dir, false)
			if !left() {
				t.Errorf("%s: another run may be at work, and it is gone", c.what)
			}
			tidy(filepath.Dir(stage), dir, true)
			if left() != c.stays {
				t.Errorf("%s: it stays %v, wanted %v", c.what, left(), c.stays)
			}
			lay()
			old := time.Now().Add(-2 * longAgo)
			err := filepath.WalkDir(stage, func(path string, _ os.DirEntry, err error) error {
				return errors.Join(err, os.Chtimes(path, old, old))
			})
			if err != nil {
				t.Fatal(err)
			}
			tidy(filepath.Dir(stage), dir, false)
			if left() != c.stays {
				t.Errorf("%s, of long ago: it stays %v, wanted %v", c.what, left(), c.stays)
			}
			if err := writeFolder(dir, version("1"), nil); err != nil {
				t.Errorf("%s: %v", c.what, err)
			}
		}
	}
}
