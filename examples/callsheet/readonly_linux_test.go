package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A folder that may not be written into, for somebody who is not root, keeps what it has.
func TestAReadOnlyFolderKeepsWhatItHas(t *testing.T) {
	parent, err := os.MkdirTemp("", "callsheet-readonly")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(parent)
	dir := filepath.Join(parent, "day")
	if err := writeFolder(dir, version("0"), nil); err != nil {
		t.Fatal(err)
	}
	before := folder(t, dir)
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(program)
	if os.Geteuid() == 0 {
		// Root writes everywhere: another user must try, with a program that he can reach.
		data, err := os.ReadFile(program)
		if err != nil {
			t.Fatal(err)
		}
		copied := filepath.Join(parent, "program")
		if err := os.WriteFile(copied, data, 0o755); err != nil {
			t.Fatal(err)
		}
		c = exec.Command(copied)
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	}
	for _, path := range []string{dir, parent} {
		if err := os.Chmod(path, 0o555); err != nil {
			t.Fatal(err)
		}
		defer os.Chmod(path, 0o755)
	}
	var out bytes.Buffer
	c.Dir, c.Env, c.Stdout, c.Stderr = "/", append(os.Environ(), loopVariable+"="+dir), &out, &out
	if err := c.Run(); err == nil || !strings.Contains(out.String(), "permission denied") {
		if os.Geteuid() == 0 && out.Len() == 0 {
			t.Skipf("no other user can be tried here: %v", err)
		}
		t.Errorf("%v, %s", err, out.String())
	}
	if diff := cmp.Diff(before, folder(t, dir)); diff != "" {
		t.Error(diff)
	}
}
