package main

import (
	"errors"
	"os"
	"runtime"
	"syscall"
	"time"
	"unsafe"
)

// renameat2 is the number of the system call on each processor; the standard library's
// list ends before it. Linux has it since 3.15.
var renameat2 = map[string]uintptr{"amd64": 316, "386": 353, "arm": 382, "arm64": 276, "riscv64": 276, "loong64": 276, "ppc64le": 357, "s390x": 347}

// exchange swaps two folders in one step, so that a reader, and who is interrupted, sees
// the old one or the new one and nothing between.
func exchange(a, b string) error {
	number, known := renameat2[runtime.GOARCH]
	if !known {
		return syscall.ENOSYS
	}
	from, err := syscall.BytePtrFromString(a)
	if err != nil {
		return err
	}
	to, err := syscall.BytePtrFromString(b)
	if err != nil {
		return err
	}
	const here, swap = -100, 2 // AT_FDCWD, RENAME_EXCHANGE
	at := here
	if _, _, no := syscall.Syscall6(number, uintptr(at), uintptr(unsafe.Pointer(from)), uintptr(at), uintptr(unsafe.Pointer(to)), swap, 0); no != 0 {
		return no
	}
	return nil
}

// locked waits until no other run writes into a folder of parent, and keeps others out
// until unlock is called or this process ends. A file system without locks is not locked:
// then others may be at work, and alone is false.
func locked(parent string, interrupt <-chan os.Signal) (unlock func(), alone bool, err error) {
	f, err := os.Open(parent)
	if err != nil {
		return func() {}, false, nil // what cannot be opened is told when it is written into
	}
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		if !errors.Is(err, syscall.EWOULDBLOCK) {
			return func() { f.Close() }, err == nil, nil
		}
		select {
		case <-interrupt:
			f.Close()
			return nil, false, errInterrupted
		case <-time.After(10 * time.Millisecond):
		}
	}
}
