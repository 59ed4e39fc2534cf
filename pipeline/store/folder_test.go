package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"yardproof/pipeline/report"
)

func openFolder(t *testing.T, dir string) *Folder {
	t.Helper()
	d, err := OpenFolder(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { d.Close() })
	return d
}

func wantFile(t *testing.T, path, want string) {
	t.Helper()
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Errorf("%s holds %.40q (%v), want %.40q", path, got, err, want)
	}
}

// files lists everything below a folder that is no folder itself, without what
// the lock keeps there.
func files(t *testing.T, dir string) string {
	t.Helper()
	var all []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && d.Name() != LockName && d.Name() != holderName {
			name, _ := filepath.Rel(dir, path)
			all = append(all, filepath.ToSlash(name))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(all, " ")
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestFolderWrites(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "out")
	d := openFolder(t, dir)
	put(t, filepath.Join(dir, "a", "old.csv"), "old")
	for _, f := range []report.File{{Name: "a/b.csv", Bytes: []byte("1")}, {Name: "a/old.csv", Bytes: []byte("new")}, {Name: "line.json", Bytes: nil}} {
		if err := d.Write(t.Context(), f); err != nil {
			t.Fatal(err)
		}
	}
	wantFile(t, filepath.Join(dir, "a", "b.csv"), "1")
	wantFile(t, filepath.Join(dir, "a", "old.csv"), "new")
	wantFile(t, filepath.Join(dir, "line.json"), "")
	if got := files(t, dir); got != "a/b.csv a/old.csv line.json" {
		t.Errorf("the folder holds %s", got)
	}
}

func TestFolderRefusesNames(t *testing.T) {
	outer := t.TempDir()
	dir := filepath.Join(outer, "out")
	d := openFolder(t, dir)
	for _, name := range []string{
		"", ".", "..", "../x", "a/../x", "a/../../x", "/x", "//x", "a//x", "a/", "./x",
		`a\x`, `..\x`, "C:/x", "C:x", "a\x00b", "a\nb", "what?", "a*", `"a"`, "<a>", "a|b", "\xff",
	} {
		err := d.Write(t.Context(), report.File{Name: name, Bytes: []byte("x")})
		if err == nil || !strings.HasPrefix(err.Error(), "write ") {
			t.Errorf("%q: %v", name, err)
		}
	}
	if got := files(t, outer); got != "" {
		t.Errorf("refused names left %s", got)
	}
}

func symlink(t *testing.T, target, path string) {
	t.Helper()
	if err := os.Symlink(target, path); err != nil {
		t.Skip("no symbolic links here: ", err)
	}
}

func TestFolderStaysInside(t *testing.T) {
	outside, dir := t.TempDir(), t.TempDir()
	put(t, filepath.Join(outside, "x"), "mine")
	symlink(t, outside, filepath.Join(dir, "link"))
	symlink(t, filepath.Join(outside, "x"), filepath.Join(dir, "x"))
	symlink(t, "gone", filepath.Join(dir, "dangling"))
	if err := os.Mkdir(filepath.Join(dir, "folder"), 0o777); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(dir, "file"), "f")
	d := openFolder(t, dir)
	for _, name := range []string{"link/x", "link/new/x", "x", "dangling", "folder", "file/x"} {
		if err := d.Write(t.Context(), report.File{Name: name, Bytes: []byte("theirs")}); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
	wantFile(t, filepath.Join(outside, "x"), "mine")
	wantFile(t, filepath.Join(dir, "file"), "f")
	if got := files(t, outside); got != "x" {
		t.Errorf("outside there is %s", got)
	}
}

func TestFolderRefusesTheSameNameTwice(t *testing.T) {
	dir := t.TempDir()
	d := openFolder(t, dir)
	if err := d.Write(t.Context(), report.File{Name: "a/x.csv", Bytes: []byte("first")}); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"a/x.csv", "A/X.csv"} {
		if err := d.Write(t.Context(), report.File{Name: name, Bytes: []byte("second")}); err == nil || !strings.Contains(err.Error(), "already") {
			t.Errorf("%s: %v", name, err)
		}
	}
	wantFile(t, filepath.Join(dir, "a", "x.csv"), "first")
}

func TestOpenFolderOnAFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	put(t, path, "mine")
	for _, name := range []string{path, filepath.Join(path, "below")} {
		_, err := OpenFolder(name)
		if err == nil || !strings.Contains(err.Error(), "create output folder "+name) {
			t.Errorf("%v", err)
		}
	}
	wantFile(t, path, "mine")
}

func TestFolderStopsWhenInterrupted(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "x"), "old")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	d := openFolder(t, dir)
	if err := d.Write(ctx, report.File{Name: "x", Bytes: []byte("new")}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	wantFile(t, filepath.Join(dir, "x"), "old")
	if got := files(t, dir); got != "x" {
		t.Errorf("left %s", got)
	}
	if err := d.Write(t.Context(), report.File{Name: "x", Bytes: []byte("new")}); err != nil {
		t.Errorf("a second try: %v", err)
	}
}

func TestFolderTakesSeveralAtOnce(t *testing.T) {
	dir := t.TempDir()
	d := openFolder(t, dir)
	var group sync.WaitGroup
	for i := range 40 {
		group.Go(func() {
			name := fmt.Sprintf("p%d/t%d.csv", i%4, i)
			if err := d.Write(t.Context(), report.File{Name: name, Bytes: []byte(name)}); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	for i := range 40 {
		name := fmt.Sprintf("p%d/t%d.csv", i%4, i)
		wantFile(t, filepath.Join(dir, filepath.FromSlash(name)), name)
	}
	if got := strings.Count(files(t, dir), " ") + 1; got != 40 {
		t.Errorf("%d files, want 40", got)
	}
}

func TestWriteReport(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "report.json")
	put(t, path, "old")
	failure := errors.New("no more")
	err := WriteReport(t.Context(), path, func(w io.Writer) error {
		w.Write(bytes.Repeat([]byte("x"), 1<<20))
		return failure
	})
	if !errors.Is(err, failure) || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v", err)
	}
	wantFile(t, path, "old")
	good := func(w io.Writer) error {
		_, err := io.WriteString(w, "new")
		return err
	}
	if err := WriteReport(t.Context(), path, good); err != nil {
		t.Error(err)
	}
	wantFile(t, path, "new")
	if got := files(t, dir); got != "report.json" {
		t.Errorf("left %s", got)
	}
	for _, path := range []string{dir, dir + string(filepath.Separator), filepath.Join(dir, "none", "x"), filepath.Join(path, "x"), "", ".."} {
		if err := WriteReport(t.Context(), path, good); err == nil {
			t.Errorf("%q was written", path)
		}
	}
}

func TestWriteReportKeepsALink(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "target"), "mine")
	link := filepath.Join(dir, "link")
	symlink(t, "target", link)
	err := WriteReport(t.Context(), link, func(io.Writer) error { return nil })
	if err == nil || !strings.Contains(err.Error(), "not a regular file") {
		t.Errorf("got %v", err)
	}
	wantFile(t, link, "mine")
}
