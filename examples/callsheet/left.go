package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// staging names the folders that a run stages its files in.
var staging = regexp.MustCompile(`^\.callsheet-[0-9]+$`)

// longAgo is how old what another run stages must be to count as left behind, where no
// lock says that no other run is at work.
const longAgo = 24 * time.Hour

// tidy removes the staging folders that killed runs left in a folder: those that hold
// nothing but what this program wrote for dir. Alone says that no other run is at work. What
// cannot be removed stays: it is in nobody's way.
func tidy(in, dir string, alone bool) {
	entries, err := os.ReadDir(in)
	if err != nil {
		return
	}
	for _, e := range entries {
		if path := filepath.Join(in, e.Name()); e.IsDir() && staging.MatchString(e.Name()) && leftBehind(path, dir, alone) {
			os.RemoveAll(path)
		}
	}
}

// leftBehind reports whether a staging folder is stale and holds nothing of anybody's.
func leftBehind(stage, dir string, alone bool) bool {
	written := append(listed(dir), listed(filepath.Join(stage, "new"))...)
	fresh := func(path string) bool {
		info, err := os.Lstat(path)
		return err != nil || !alone && time.Since(info.ModTime()) < longAgo
	}
	parts, err := os.ReadDir(stage)
	if err != nil || fresh(stage) {
		return false
	}
	for _, part := range parts {
		files, err := os.ReadDir(filepath.Join(stage, part.Name()))
		if err != nil || part.Name() != "new" && part.Name() != "old" {
			return false
		}
		for _, f := range files {
			path := filepath.Join(stage, part.Name(), f.Name())
			if !f.Type().IsRegular() || fresh(path) || !same(path, filepath.Join(dir, f.Name())) && (!slices.Contains(written, f.Name()) || somebodys(path)) {
				return false
			}
		}
	}
	return true
}

// listed are the names in the list of a folder, with the list's own.
func listed(dir string) []string {
	list, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		return nil
	}
	return append(strings.Fields(string(list)), manifest)
}

// same reports whether two names are of one file.
func same(a, b string) bool {
	x, err := os.Lstat(a)
	if err != nil {
		return false
	}
	y, err := os.Lstat(b)
	return err == nil && os.SameFile(x, y)
}

// somebodys reports whether a file is a record that somebody filled in; one that broke off
// while it was written is not.
func somebodys(path string) bool {
	data, err := os.ReadFile(path)
	return err != nil || isRecord(filepath.Base(path)) && json.Valid(bytes.TrimSpace(data)) && filledIn(data)
}
