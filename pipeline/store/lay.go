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
	"yardproof/pipeline/report"
)

// Replace writes the file at path anew, whole or not at all, keeping its
// permissions. Links and what is no regular file are not replaced.
func Replace(ctx context.Context, path string, b []byte) error {
	err := writeReport(ctx, path, func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	})
	if err != nil {
		return fmt.Errorf("write %s: %w", filepath.ToSlash(path), cause(err))
	}
	return nil
}

// ExistsError is the error of Lay when some of the names are taken.
type ExistsError struct {
	Names []string // as they were to be named, with the folder, in order
}

func (e *ExistsError) Error() string {
	return "there is already " + strings.Join(e.Names, ", ") + ", and nothing was written"
}

// Lay writes new files below a folder, all of them or none. It replaces nothing,
// and after an error or an interrupt it removes what it has written. The folder is
// created if it does not exist; links in it that lead out of it are not followed.
// A file that begins with #! is made executable. If a name is taken, the error is
// an [*ExistsError].
func Lay(ctx context.Context, dir string, files []report.File) (err error) {
	l := layer{ctx: ctx, dir: dir}
	if err := l.free(files); err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, l.undo())
		}
	}()
	if err := l.folders(dir); err != nil {
		return fmt.Errorf("create folder %s: %w", filepath.ToSlash(dir), cause(err))
	}
	if l.root, err = os.OpenRoot(dir); err != nil {
		return fmt.Errorf("open folder %s: %w", filepath.ToSlash(dir), cause(err))
	}
	defer l.root.Close()
	for _, f := range files {
		if err := l.file(f); err != nil {
			return fmt.Errorf("write %s: %w", l.shown(f.Name), cause(err))
		}
	}
	return nil
}

type layer struct {
	ctx  context.Context
	dir  string
	root *os.Root // the folder, once it is there
	made []string // files and folders, in the order they were made
}

func (l *layer) shown(name string) string { return path.Join(filepath.ToSlash(l.dir), name) }

func (l *layer) place(name string) string { return filepath.Join(l.dir, filepath.FromSlash(name)) }

// free returns an error if any of the names is taken, before the first file is
// written.
func (l *layer) free(files []report.File) error {
	var taken []string
	for _, f := range files {
		if fault := NameFault(f.Name); fault != "" {
			return fmt.Errorf("write %s: %s", l.shown(f.Name), fault)
		}
		switch err := l.there(f.Name); {
		case err == nil:
			taken = append(taken, l.shown(f.Name))
		case leadsOut(err):
			return fmt.Errorf("write %s: a link on the way leads out of %s, and nothing was written", l.shown(f.Name), filepath.ToSlash(l.dir))
		case !errors.Is(err, fs.ErrNotExist):
			return fmt.Errorf("write %s: %w", l.shown(f.Name), cause(err))
		}
	}
	if len(taken) > 0 {
		return &ExistsError{taken}
	}
	return nil
}

// there returns nil if something has the name below the folder, and otherwise an
// error.
func (l *layer) there(name string) error {
	root, err := os.OpenRoot(l.dir)
	if err != nil {
		return err
	}
	defer root.Close()
	_, err = root.Lstat(filepath.FromSlash(name))
	return err
}

// leadsOut reports whether an error is that of a link out of a root, for which
// package os has no value.
func leadsOut(err error) bool { return err != nil && strings.Contains(err.Error(), "path escapes") }

// folders creates a folder and those above it, and remembers which of them are
// new.
func (l *layer) folders(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case err == nil && info.IsDir():
		return nil
	case err == nil:
		return errors.New("there is a file of that name")
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}
	if err := l.folders(filepath.Dir(dir)); err != nil {
		return err
	}
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	l.made = append(l.made, dir)
	return nil
}

func (l *layer) file(f report.File) error {
	if err := l.ctx.Err(); err != nil {
		return err
	}
	at := l.place(f.Name)
	if err := l.folders(filepath.Dir(at)); err != nil {
		return err
	}
	mode := fs.FileMode(0o666)
	if strings.HasPrefix(string(f.Bytes), "#!") {
		mode = 0o777
	}
	// Another program may have taken the name since it was looked at.
	out, err := l.root.OpenFile(filepath.FromSlash(f.Name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	l.made = append(l.made, at)
	_, err = out.Write(f.Bytes)
	return errors.Join(err, out.Close())
}

// undo removes what was made, the last first. A folder stays if somebody has put
// something into it in the meantime.
func (l *layer) undo() error {
	var failed []error
	for i := len(l.made) - 1; i >= 0; i-- {
		info, err := os.Lstat(l.made[i])
		if err == nil {
			err = os.Remove(l.made[i])
		}
		if err != nil && !(info != nil && info.IsDir()) {
			failed = append(failed, fmt.Errorf("take away %s: %w", filepath.ToSlash(l.made[i]), cause(err)))
		}
	}
	return errors.Join(failed...)
}
