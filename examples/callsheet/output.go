package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// errInterrupted is returned when a signal came before anything was put in place.
var errInterrupted = errors.New("interrupted: nothing was written")

// writeFolder puts files into dir as a set: afterwards it holds all of the new ones
// or, after an error, what it held before. They are staged in a folder of their own;
// a new dir is that folder, renamed, an existing one gets its files one by one, and
// what could not be completed is taken back. A signal on interrupt ends the staging;
// once files are put in place it no longer counts. No system swaps many files in one
// step: if power fails between two of them, both sets are on the disk, in part.
//
// A record.json that somebody filled in is never replaced. Drawings of an earlier
// plan that the new one does not have are removed.
func writeFolder(dir string, files map[string][]byte, interrupt <-chan os.Signal) (err error) {
	dir = filepath.Clean(dir)
	beside, exists := filepath.Dir(dir), false
	if info, err := os.Stat(dir); err == nil {
		if !info.IsDir() {
			return fmt.Errorf("%s is a file, want a folder", dir)
		}
		beside, exists = dir, true // perhaps a file system of its own, into which nothing can be moved
		if err := replaceable(dir, files); err != nil {
			return err
		}
	} else if err := os.MkdirAll(beside, 0o755); err != nil {
		return err
	}
	stage, err := os.MkdirTemp(beside, ".callsheet-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	set := filepath.Join(stage, "new")
	if err := os.Mkdir(set, 0o755); err != nil {
		return err
	}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := writeSynced(filepath.Join(set, name), files[name]); err != nil {
			return err
		}
		select {
		case <-interrupt:
			return errInterrupted
		default:
		}
	}
	if !exists && os.Rename(set, dir) == nil {
		return nil
	}
	// It exists, or has come to exist since, or cannot be made: that is said here.
	if err := os.Mkdir(dir, 0o755); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return swap(set, dir, filepath.Join(stage, "old"), slices.Sorted(maps.Keys(files)), outdated(dir, files))
}

// swap moves the files called names from set into dir and takes the outdated ones out
// of it. What was there is kept in old until all is done, and put back if one fails.
func swap(set, dir, old string, names, outdated []string) (err error) {
	if err := os.Mkdir(old, 0o700); err != nil {
		return err
	}
	var undo []func() error
	defer func() {
		if err == nil {
			return
		}
		for _, u := range slices.Backward(undo) {
			err = errors.Join(err, u())
		}
	}()
	for _, name := range slices.Concat(names, outdated) {
		target, kept := filepath.Join(dir, name), filepath.Join(old, name)
		switch err := keep(target, kept); {
		case err == nil:
			undo = append(undo, func() error { return os.Rename(kept, target) })
		case errors.Is(err, fs.ErrNotExist):
			undo = append(undo, func() error {
				if err := os.Remove(target); !errors.Is(err, fs.ErrNotExist) {
					return err
				}
				return nil
			})
		default:
			return err
		}
		if slices.Contains(outdated, name) {
			err = os.Remove(target)
			if errors.Is(err, fs.ErrNotExist) {
				err = nil // moved, or gone already
			}
		} else {
			err = os.Rename(filepath.Join(set, name), target)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// keep gives a file a second name, so that the first is never without one; a file
// system that has no links gets it moved.
func keep(path, kept string) error {
	err := os.Link(path, kept)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return os.Rename(path, kept)
}

// replaceable refuses a folder in which a file to be written is not a file, or is a
// record that somebody filled in.
func replaceable(dir string, files map[string][]byte) error {
	for _, name := range slices.Sorted(maps.Keys(files)) {
		path := filepath.Join(dir, name)
		info, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return err
		}
		if !info.Mode().IsRegular() && info.Mode()&fs.ModeSymlink == 0 {
			return fmt.Errorf("%s is not a file, so the sheet cannot be written there: move it away or give another folder", path)
		}
	}
	path := filepath.Join(dir, "record.json")
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !filledIn(data) {
		return nil
	}
	if err != nil {
		return err
	}
	return fmt.Errorf("%s is filled in, or not as this program wrote it, and is not replaced: "+
		"it says how the picture was made; move it away or give another folder", path)
}

// filledIn reports whether somebody weighed or signed in a record file; one that
// cannot be read as what this program writes counts as somebody's.
func filledIn(data []byte) bool {
	var records []struct {
		Items  []struct{ Weighed any }
		Signed []any
	}
	if json.Unmarshal(data, &records) != nil {
		return true
	}
	for _, r := range records {
		if len(r.Signed) > 0 {
			return true
		}
		for _, it := range r.Items {
			if it.Weighed != nil {
				return true
			}
		}
	}
	return false
}

var layoutFile = regexp.MustCompile(`\]\((layout-[0-9]+-[a-z0-9-]*\.svg)\)`)

// outdated lists the drawings in dir that its call sheet shows and that files, which
// replace it, do not have.
func outdated(dir string, files map[string][]byte) []string {
	sheet, err := os.ReadFile(filepath.Join(dir, "callsheet.md"))
	if err != nil || !strings.HasPrefix(string(sheet), "# Call sheet: ") {
		return nil
	}
	var out []string
	for _, m := range layoutFile.FindAllStringSubmatch(string(sheet), -1) {
		info, err := os.Lstat(filepath.Join(dir, m[1]))
		if _, again := files[m[1]]; !again && err == nil && info.Mode().IsRegular() && !slices.Contains(out, m[1]) {
			out = append(out, m[1])
		}
	}
	return out
}

// writeSynced writes a file and waits until it is on the disk, so that a full one
// is noticed here.
func writeSynced(path string, data []byte) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}
