//go:build unix

package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"yardproof/pipeline/report"
)

// limitedIn is set for a copy of the test program that may not write big
// files: the limit cannot be lifted again within a process.
const limitedIn = "YARDPROOF_LIMITED_IN"

// A full disk, stood in for by a limit on the size of files: the error says
// so, an earlier file stays as it was, and nothing half-written is left.
func TestFullDisk(t *testing.T) {
	if dir := os.Getenv(limitedIn); dir != "" {
		writeTooMuch(t, dir)
		return
	}
	dir := t.TempDir()
	put(t, filepath.Join(dir, "a", "big.csv"), "old")
	put(t, filepath.Join(dir, "report"), "old")
	limited := exec.Command(os.Args[0], "-test.run=^TestFullDisk$", "-test.v")
	limited.Env = append(os.Environ(), limitedIn+"="+dir)
	out, err := limited.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "limited to") {
		t.Errorf("%v\n%s", err, out)
	}
	wantFile(t, filepath.Join(dir, "a", "big.csv"), "old")
	wantFile(t, filepath.Join(dir, "report"), "old")
	if got := files(t, dir); got != "a/big.csv report" {
		t.Errorf("left %s", got)
	}
}

func writeTooMuch(t *testing.T, dir string) {
	const limit = 1 << 16
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: limit, Max: limit}); err != nil {
		t.Skip(err)
	}
	fmt.Println("limited to", limit)
	d := openFolder(t, dir)
	big := bytes.Repeat([]byte("x"), 2*limit)
	err := d.Write(context.Background(), report.File{Name: "a/big.csv", Bytes: big})
	if !errors.Is(err, syscall.EFBIG) || !strings.Contains(err.Error(), "a/big.csv") || strings.Contains(err.Error(), ".big.csv") {
		t.Errorf("got %v", err)
	}
	err = WriteReport(context.Background(), filepath.Join(dir, "report"), func(w io.Writer) error {
		_, err := w.Write(big)
		return err
	})
	if !errors.Is(err, syscall.EFBIG) {
		t.Errorf("got %v", err)
	}
}

func TestPermissions(t *testing.T) {
	dir := t.TempDir()
	old := syscall.Umask(0o027)
	defer syscall.Umask(old)
	d := openFolder(t, filepath.Join(dir, "out"))
	put(t, filepath.Join(dir, "out", "kept"), "")
	if err := os.Chmod(filepath.Join(dir, "out", "kept"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]os.FileMode{"new": 0o640, "kept": 0o600} {
		if err := d.Write(t.Context(), report.File{Name: name, Bytes: nil}); err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(filepath.Join(dir, "out", name))
		if err != nil || info.Mode().Perm() != want {
			t.Errorf("%s has %v (%v), want %v", name, info.Mode(), err, want)
		}
	}
}

// A pipe or a device has no earlier content to keep and no place to rename to.
func TestDevicesAreNotReplaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Skip(err)
	}
	err := WriteReport(t.Context(), path, func(io.Writer) error { return nil })
	if err == nil || !strings.Contains(err.Error(), "not a regular file") {
		t.Errorf("got %v", err)
	}
}
