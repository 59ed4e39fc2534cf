package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"strconv"
	"strings"
	"time"
)

// LockName is the name of the file that runs lock in an output folder. It is never
// deleted: otherwise one run could lock a deleted file and another a new one, and
// both would believe that they are alone.
const LockName = ".yardproof.lock"

// holderName is the name of a file that says which run holds the lock. It is for
// people to read; no run relies on it.
const holderName = ".yardproof.holder"

// access says how a run works in an output folder.
type access struct {
	// overwrite replaces and removes files that somebody changed, too.
	overwrite bool
	// share is a run that is one of several, which may work in the folder at
	// the same time. No other may.
	share bool
	// wait is called once if another run is in the way, with who that is, and
	// the run waits for it to end. When it is nil, the error is a *BusyError.
	wait func(holder string)
}

// BusyError is the error of a folder that another run is writing to.
type BusyError struct {
	Dir    string
	Holder string // who it is and since when, empty when that is not known
}

func (e *BusyError) Error() string {
	text := "another yardproof is writing to " + e.Dir
	if e.Holder != "" {
		text += ": " + e.Holder
	}
	return text
}

// A lock of the operating system on a file inside a folder. It ends with the
// process, however that ends.
type lock struct {
	root *os.Root
	file *os.File // nil where the system has no locks
	mine string   // what this run wrote of itself
}

var (
	errBusy    = errors.New("another process holds the lock")
	errNoLocks = errors.New("the file system has no locks")
	errMoved   = errors.New("it was replaced while it was being locked")
)

// takeLock takes the lock of a folder, which is called dir in errors. A lock
// without a file stands for a folder on a file system that has no locks.
func takeLock(ctx context.Context, root *os.Root, dir string, a access) (*lock, error) {
	l := &lock{root: root}
	told := false
	for {
		file, err := tryLock(root, !a.share)
		switch {
		case err == nil:
			l.file = file
			l.sign()
			return l, nil
		case errors.Is(err, errNoLocks):
			return l, nil
		case errors.Is(err, errMoved):
		case !errors.Is(err, errBusy):
			return nil, fmt.Errorf("lock %s: %w", path.Join(dir, LockName), cause(err))
		case a.wait == nil:
			return nil, &BusyError{dir, l.holder()}
		case !told:
			told = true
			a.wait(l.holder())
		}
		if err := pause(ctx, betweenTries); err != nil {
			return nil, err
		}
	}
}

// betweenTries is how long a waiting run pauses between two attempts. The system's
// own way to wait for a lock could not be interrupted.
const betweenTries = 20 * time.Millisecond

func pause(ctx context.Context, d time.Duration) error {
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-timer.C:
		return nil
	}
}

// tryLock opens the folder's own lock file, making it if there is none, and
// locks it.
func tryLock(root *os.Root, alone bool) (*os.File, error) {
	file, err := openLock(root)
	if err != nil {
		return nil, err
	}
	if err = lockFile(file, alone); err == nil {
		err = stillThere(root, file)
	}
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return file, nil
}

// openLock opens the lock file, or creates it. It follows no link and opens
// nothing that is not a regular file.
func openLock(root *os.Root) (*os.File, error) {
	info, err := root.Lstat(LockName)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		file, err := root.OpenFile(LockName, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			return nil, errMoved
		}
		return file, err
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errors.New("what has that name is not a regular file")
	}
	file, err := root.OpenFile(LockName, os.O_RDWR, 0)
	if errors.Is(err, fs.ErrPermission) {
		// It is somebody else's, who lets us read it; that is enough on most
		// systems.
		file, err = root.OpenFile(LockName, os.O_RDONLY, 0)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errMoved
	}
	return file, err
}

// stillThere returns an error if the file that was locked is no longer the one
// that has the name, so that another run would lock a different one.
func stillThere(root *os.Root, file *os.File) error {
	ours, err := file.Stat()
	if err != nil {
		return err
	}
	now, err := root.Lstat(LockName)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !os.SameFile(ours, now) {
		return errMoved
	}
	return err
}

// held reports whether there is a lock at all.
func (l *lock) held() bool { return l.file != nil }

// release gives up the lock.
func (l *lock) release() error {
	if l.file == nil {
		return nil
	}
	if text, err := l.holderText(); err == nil && text == l.mine {
		// If it cannot be removed, it names a run that has ended, which does no harm.
		_ = l.root.Remove(holderName)
	}
	file := l.file
	l.file = nil
	return file.Close()
}

// sign writes down which run holds the lock. Since no run relies on that, an error
// is ignored.
func (l *lock) sign() {
	l.mine = "process " + strconv.Itoa(os.Getpid())
	if host, err := os.Hostname(); err == nil {
		l.mine += " on " + host
	}
	l.mine += ", since " + time.Now().UTC().Format("2006-01-02 15:04:05 UTC")
	if info, err := l.root.Lstat(holderName); err == nil && !info.IsDir() {
		_ = l.root.Remove(holderName) // a link itself, and not what it leads to
	}
	file, err := l.root.OpenFile(holderName, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return
	}
	_, _ = file.WriteString(l.mine)
	_ = file.Close()
}

// mostHolder is the greatest number of bytes read of the file that names the
// holder.
const mostHolder = 400

func (l *lock) holderText() (string, error) {
	file, err := openRegular(l.root, holderName)
	if err != nil {
		return "", err
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, mostHolder))
	return string(text), err
}

// holder is who holds the lock, as far as is known, as one line that is safe to
// print on a terminal.
func (l *lock) holder() string {
	text, err := l.holderText()
	if err != nil {
		return ""
	}
	quoted := strconv.QuoteToGraphic(strings.TrimSpace(text))
	return strings.ReplaceAll(quoted[1:len(quoted)-1], `\"`, `"`)
}
