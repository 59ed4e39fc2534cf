package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"unicode"
	"yardproof/pipeline/report"
)

// Folder writes files below one folder of the disk, each whole or not at all.
// Several goroutines may write different files at the same time.
type Folder struct {
	root *os.Root
	name string // as it was asked for

	mu      sync.Mutex
	written map[string]bool // names, folded as some file systems fold them
}

// OpenFolder creates the folder if it does not exist. Nothing is ever written
// outside it, whatever links lie in it. Close it after the last write.
func OpenFolder(dir string) (*Folder, error) {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return nil, fmt.Errorf("create output folder %s: there is a file of that name", dir)
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("create output folder %s: %w", dir, cause(err))
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("open output folder %s: %w", dir, cause(err))
	}
	return &Folder{root: root, name: dir, written: map[string]bool{}}, nil
}

// Close closes the folder.
func (d *Folder) Close() error { return d.root.Close() }

// Write creates or replaces one file and the folders above it. On an error the
// earlier file of that name, if any, is untouched and nothing is left behind.
// It is an error to write one name twice: two plans would have the same id.
func (d *Folder) Write(ctx context.Context, f report.File) error {
	shown := path.Join(filepath.ToSlash(d.name), f.Name)
	if err := d.write(ctx, f); err != nil {
		return fmt.Errorf("write %s: %w", shown, cause(err))
	}
	return nil
}

func (d *Folder) write(ctx context.Context, f report.File) error {
	if fault := NameFault(f.Name); fault != "" {
		return errors.New(fault)
	}
	if !d.claim(f.Name) {
		return errors.New("it was already written in this run")
	}
	err := d.put(ctx, f)
	if err != nil {
		d.release(f.Name)
	}
	return err
}

func (d *Folder) put(ctx context.Context, f report.File) error {
	folder, base := path.Split(f.Name)
	folder = path.Clean(folder)
	if err := d.root.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	in, err := d.root.OpenRoot(folder)
	if err != nil {
		return err
	}
	defer in.Close()
	return replace(ctx, in, base, func(w io.Writer) error {
		_, err := w.Write(f.Bytes)
		return err
	})
}

// claim reports whether this is the first time that the name is written.
func (d *Folder) claim(name string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	folded := strings.ToLower(name)
	first := !d.written[folded]
	d.written[folded] = true
	return first
}

func (d *Folder) release(name string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	delete(d.written, strings.ToLower(name))
}

// NameFault says why a name is not a path below the folder on every operating
// system; it returns "" if it is one.
func NameFault(name string) string {
	switch {
	case !fs.ValidPath(name) || name == ".":
		return "the name is not a path below the output folder"
	case strings.ContainsAny(name, `\:*?"<>|`) || strings.ContainsFunc(name, unicode.IsControl):
		return "the name has a character that not every system allows in a file name"
	case !filepath.IsLocal(filepath.FromSlash(name)):
		return "the name has a meaning of its own on this system"
	}
	return ""
}

// WriteReport creates or replaces the file at path with what write writes, whole
// or not at all: an error of write leaves an earlier file untouched. The folder
// that the file is in must exist.
func WriteReport(ctx context.Context, path string, write func(io.Writer) error) error {
	if err := writeReport(ctx, path, write); err != nil {
		return fmt.Errorf("write report %s: %w", path, cause(err))
	}
	return nil
}

func writeReport(ctx context.Context, path string, write func(io.Writer) error) error {
	dir, base := filepath.Split(path)
	if base == "" || base == "." || base == ".." {
		return errors.New("it is a folder, not a file")
	}
	in, err := os.OpenRoot(filepath.Clean(dir))
	if err != nil {
		return err
	}
	defer in.Close()
	return replace(ctx, in, base, write)
}

// replace writes the file of name base in the folder in.
func replace(ctx context.Context, in *os.Root, base string, write func(io.Writer) error) error {
	if err := mayReplace(in, base); err != nil {
		return err
	}
	return swap(in, base, func(w io.Writer) error {
		if err := write(interruptible{ctx, w}); err != nil {
			return err
		}
		return ctx.Err()
	})
}

// mayReplace returns an error for links, folders and devices, which a rename would
// destroy.
func mayReplace(in *os.Root, base string) error {
	info, err := in.Lstat(base)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return errors.New("there is a folder of that name")
	case !info.Mode().IsRegular():
		return errors.New("what has that name is not a regular file, so it is not replaced")
	}
	return nil
}

// interruptible stops writing once its context is done.
type interruptible struct {
	ctx context.Context
	w   io.Writer
}

func (i interruptible) Write(b []byte) (int, error) {
	if err := i.ctx.Err(); err != nil {
		return 0, err
	}
	return i.w.Write(b)
}

// cause strips the name of a temporary file and the system call from an error:
// the caller names the file that matters.
func cause(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	if l, ok := errors.AsType[*os.LinkError](err); ok {
		return l.Err
	}
	return err
}
