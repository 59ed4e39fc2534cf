package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"yardproof/pipeline/report"
)

func TestLay(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "line")
	err := Lay(t.Context(), dir, []report.File{{Name: "plans/a.plan.json", Bytes: []byte("{}")}, {Name: ".hooks/check", Bytes: []byte("#!/bin/sh\n")}, {Name: "README.md", Bytes: []byte("r")}})
	if err != nil {
		t.Fatal(err)
	}
	if got := files(t, dir); got != ".hooks/check README.md plans/a.plan.json" {
		t.Errorf("the folder holds %s", got)
	}
	wantFile(t, filepath.Join(dir, "plans", "a.plan.json"), "{}")
	for name, want := range map[string]fs.FileMode{".hooks/check": 0o111, "README.md": 0} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if got := info.Mode() & 0o111; runtime.GOOS != "windows" && (got == 0) != (want == 0) {
			t.Errorf("%s has the permissions %v", name, info.Mode())
		}
	}
}

// What is there already is named, all of it, and nothing else is written.
func TestLayReplacesNothing(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "b"), "mine")
	put(t, filepath.Join(dir, "d", "e"), "mine")
	symlink(t, "nowhere", filepath.Join(dir, "c"))
	before := files(t, dir)
	err := Lay(t.Context(), dir, []report.File{{Name: "a", Bytes: nil}, {Name: "b", Bytes: nil}, {Name: "c", Bytes: nil}, {Name: "d/e", Bytes: nil}, {Name: "d/f", Bytes: nil}})
	exists, ok := errors.AsType[*ExistsError](err)
	if !ok || len(exists.Names) != 3 {
		t.Fatalf("the error is %v", err)
	}
	for i, name := range []string{"/b", "/c", "/d/e"} {
		if !strings.HasSuffix(exists.Names[i], name) || strings.Contains(exists.Names[i], `\`) {
			t.Errorf("name %d is %s", i, exists.Names[i])
		}
	}
	if got := files(t, dir); got != before {
		t.Errorf("the folder holds %s", got)
	}
}

// stopAfter is cancelled once it has been asked often enough.
type stopAfter struct {
	context.Context
	left int
}

func (s *stopAfter) Err() error {
	if s.left--; s.left < 0 {
		return context.Canceled
	}
	return nil
}

func TestLayUndoes(t *testing.T) {
	outer := t.TempDir()
	put(t, filepath.Join(outer, "line", "mine"), "mine")
	new := []report.File{{Name: "a/b/c", Bytes: []byte("1")}, {Name: "d", Bytes: []byte("2")}, {Name: "mine/x", Bytes: []byte("3")}}
	// A file stands where a folder is wanted.
	err := Lay(t.Context(), filepath.Join(outer, "line"), new)
	if err == nil || !strings.Contains(err.Error(), "mine/x") {
		t.Errorf("the error is %v", err)
	}
	for left := range 3 {
		dir := filepath.Join(outer, "fresh")
		err = Lay(&stopAfter{t.Context(), left}, dir, []report.File{{Name: "a/b/c", Bytes: nil}, {Name: "d", Bytes: nil}, {Name: "e", Bytes: nil}})
		if !errors.Is(err, context.Canceled) {
			t.Errorf("interrupted after %d files: %v", left, err)
		}
		if _, err := os.Lstat(dir); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("interrupted after %d files: the folder is left", left)
		}
	}
	if got := files(t, outer); got != "line/mine" {
		t.Errorf("what is left is %s", got)
	}
	if entries, _ := os.ReadDir(filepath.Join(outer, "line")); len(entries) != 1 {
		t.Errorf("%d entries are left", len(entries))
	}
}

func TestReplace(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a")
	put(t, path, "old")
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := Replace(t.Context(), path, []byte("new")); err != nil {
		t.Fatal(err)
	}
	wantFile(t, path, "new")
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("the permissions are %v (%v)", info.Mode(), err)
	}
	symlink(t, "a", filepath.Join(dir, "link"))
	err := Replace(t.Context(), filepath.Join(dir, "link"), []byte("x"))
	if err == nil || !strings.HasPrefix(err.Error(), "write ") || !strings.Contains(err.Error(), "not a regular file") {
		t.Errorf("a link: %v", err)
	}
	wantFile(t, path, "new")
}
