package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/honestplate/portion/record"
)

// errInterrupted is returned when a signal came before anything was put in place.
var errInterrupted = errors.New("interrupted: nothing was written")

// writeFolder puts files into dir as a set: afterwards it holds all of the new ones
// or, after an error, what it held before. They are staged in a folder of their own,
// beside dir. A new dir is that folder, renamed. An existing one is exchanged with it in
// one step where the system can, with what else lies in it taken along; where it cannot,
// or where folders lie in it, it gets its files one by one, and what could not be
// completed is taken back: if power fails between two of those, both sets are on the
// disk, in part. A signal on interrupt ends the staging; once files are put in place it
// no longer counts.
//
// Of two runs into one folder the second waits for the first, where the system has locks.
//
// A record that somebody filled in is never replaced. Files of an earlier plan that the
// new one does not have are removed, as is what a killed run has left.
func writeFolder(dir string, files map[string][]byte, interrupt <-chan os.Signal) (err error) {
	dir, files = filepath.Clean(dir), withManifest(files)
	parent, exists := filepath.Dir(dir), false
	if info, err := os.Stat(dir); err == nil {
		if !info.IsDir() {
			return fmt.Errorf("%s is a file, want a folder", dir)
		}
		exists = true
		if real, err := filepath.EvalSymlinks(dir); err == nil {
			dir, parent = real, filepath.Dir(real)
		}
		if err := replaceable(dir, files); err != nil {
			return err
		}
	} else if err := os.MkdirAll(parent, 0o755); err != nil {
		return err
	}
	unlock, alone, err := locked(parent, interrupt)
	if err != nil {
		return err
	}
	defer unlock()
	tidy(parent, dir, alone)
	tidy(dir, dir, alone)
	if exists {
		// Another run may have written meanwhile.
		if err := replaceable(dir, files); err != nil {
			return err
		}
	}
	stage, err := os.MkdirTemp(parent, ".callsheet-")
	if err != nil && exists {
		parent = dir // nothing can be made beside it
		stage, err = os.MkdirTemp(dir, ".callsheet-")
	}
	if err != nil {
		return err
	}
	beside := stage
	defer func() { err = errors.Join(err, os.RemoveAll(beside)) }()
	set := filepath.Join(stage, "new")
	if err := os.Mkdir(set, 0o755); err != nil {
		return err
	}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := write(filepath.Join(set, name), files[name]); err != nil {
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
	old := outdated(dir, files)
	if parent != dir && inOneStep(set, dir, files, old) {
		return nil
	}
	if parent != dir {
		// What lies in dir may be on another disk than what lies beside it: stage there.
		if stage, err = os.MkdirTemp(dir, ".callsheet-"); err != nil {
			return err
		}
		inside := stage
		defer func() { err = errors.Join(err, os.RemoveAll(inside)) }()
		set = filepath.Join(inside, "new")
		if err := os.Mkdir(set, 0o755); err != nil {
			return err
		}
		for _, name := range slices.Sorted(maps.Keys(files)) {
			if err := write(filepath.Join(set, name), files[name]); err != nil {
				return err
			}
		}
	}
	return swap(set, dir, filepath.Join(stage, "old"), slices.Sorted(maps.Keys(files)), old)
}

// inOneStep gives the new set every file of dir that is not of the old set, and exchanges
// the two folders. It reports whether it did; if not, nothing has changed.
func inOneStep(set, dir string, files map[string][]byte, outdated []string) bool {
	info, err := os.Stat(dir)
	if err != nil || os.Chmod(set, info.Mode().Perm()) != nil {
		return false
	}
	taken := func(name string) bool {
		_, again := files[name]
		return again || slices.Contains(outdated, name)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return false
	}
	for _, e := range entries {
		if taken(e.Name()) {
			continue
		}
		if !e.Type().IsRegular() || os.Link(filepath.Join(dir, e.Name()), filepath.Join(set, e.Name())) != nil {
			return false
		}
	}
	if replaceable(dir, files) != nil || exchange(set, dir) != nil {
		return false
	}
	// What somebody put there in the meantime comes along.
	if entries, err = os.ReadDir(set); err == nil {
		for _, e := range entries {
			if _, err := os.Lstat(filepath.Join(dir, e.Name())); !taken(e.Name()) && errors.Is(err, fs.ErrNotExist) {
				os.Rename(filepath.Join(set, e.Name()), filepath.Join(dir, e.Name()))
			}
		}
	}
	return true
}

// A keptRecord is a record in the folder that somebody filled in: it stays, and the pages
// say so. It is that of its picture, whatever number a plan of another order gives.
type keptRecord struct {
	name    string
	picture string // empty where the file cannot be read as a record
}

// filledInRecords lists the records in a folder that somebody filled in.
func filledInRecords(dir string) (kept []keptRecord) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil // none yet; what cannot be read is noticed when it is written
	}
	for _, e := range entries {
		if !isRecord(e.Name()) {
			continue
		}
		if data, err := os.ReadFile(filepath.Join(dir, e.Name())); err == nil && filledIn(data) {
			kept = append(kept, keptRecord{e.Name(), pictureOf(data)})
		}
	}
	return kept
}

// pictureOf is the picture that a record is of; empty for what cannot be read as one.
func pictureOf(data []byte) string {
	r, err := record.Read(bytes.NewReader(data))
	if err != nil {
		return ""
	}
	return r.Picture
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
		if !isRecord(name) {
			continue
		}
		data, err := os.ReadFile(path)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		if err == nil && filledIn(data) {
			return fmt.Errorf("%s is filled in, or not as this program wrote it, and is not replaced: "+
				"it says how the picture was made; move it away or give another folder", path)
		}
	}
	return nil
}

func isRecord(name string) bool {
	return strings.HasPrefix(name, "record-") && strings.HasSuffix(name, ".json")
}

// filledIn reports whether somebody weighed, took or signed in a record; one that cannot
// be read as a record counts as somebody's.
func filledIn(data []byte) bool {
	r, err := record.Read(bytes.NewReader(data))
	if err != nil || len(r.Signed) > 0 || len(r.Takes) > 0 || len(r.Edits) > 0 || r.Revision > 1 {
		return true
	}
	return slices.ContainsFunc(r.Items, func(i record.Item) bool { return i.Weighed != nil })
}

// manifest lists the files that were written, so that those of an earlier plan can be
// taken away and nothing else is.
const manifest = ".callsheet"

// outdated lists the files of an earlier plan in dir that the new one does not have. A
// record that somebody filled in stays.
func outdated(dir string, files map[string][]byte) []string {
	list, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		return nil
	}
	var out []string
	for name := range strings.Lines(string(list)) {
		name = strings.TrimSpace(name)
		if _, again := files[name]; again || name == "" || name != filepath.Base(name) || slices.Contains(out, name) {
			continue
		}
		info, err := os.Lstat(filepath.Join(dir, name))
		if err != nil || !info.Mode().IsRegular() {
			continue
		}
		if isRecord(name) {
			data, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil || filledIn(data) {
				continue
			}
		}
		out = append(out, name)
	}
	return out
}

// withManifest adds the list of the files to them.
func withManifest(files map[string][]byte) map[string][]byte {
	out := maps.Clone(files)
	out[manifest] = []byte(strings.Join(slices.Sorted(maps.Keys(files)), "\n") + "\n")
	return out
}

// write writes a file; tests fill the disk here.
var write = writeSynced

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
