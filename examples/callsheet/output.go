package main

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// writeFolder writes files into dir, all or none: they are staged first, in dir or,
// if it is yet to be made, beside it, and moved when the last is safely written.
func writeFolder(dir string, files map[string][]byte) (err error) {
	dir = filepath.Clean(dir)
	beside := filepath.Dir(dir)
	if info, err := os.Stat(dir); err == nil && info.IsDir() {
		beside = dir // perhaps a file system of its own, into which nothing can be moved
	} else if err := os.MkdirAll(beside, 0o755); err != nil {
		return err
	}
	stage, err := os.MkdirTemp(beside, ".callsheet-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	names := slices.Sorted(maps.Keys(files))
	for _, name := range names {
		if err := writeSynced(filepath.Join(stage, name), files[name]); err != nil {
			return err
		}
	}
	if err := os.Mkdir(dir, 0o755); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	for _, name := range names {
		if err := os.Rename(filepath.Join(stage, name), filepath.Join(dir, name)); err != nil {
			return err
		}
	}
	return nil
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
