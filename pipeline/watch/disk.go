package watch

import (
	"errors"
	"fmt"
	"io/fs"

	"github.com/fsnotify/fsnotify"
)

// Disk follows folders of the disk. What lies in a folder is followed, what
// lies in folders below it is not.
type Disk struct {
	watcher *fsnotify.Watcher
	folders map[string]bool
}

// Open begins with no folders. Close it.
func Open() (*Disk, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, fmt.Errorf("follow changes: %w", err)
	}
	return &Disk{watcher: w, folders: map[string]bool{}}, nil
}

// Close ends the telling of changes.
func (d *Disk) Close() error { return d.watcher.Close() }

// Events are the changes in the folders that are followed.
func (d *Disk) Events() <-chan fsnotify.Event { return d.watcher.Events }

// Errors are what goes wrong in following them.
func (d *Disk) Errors() <-chan error { return d.watcher.Errors }

// Follow adds folders to those that are followed, and reports whether any was
// new. One that has gone in the meantime is no error, for its parent tells of
// that, nor is one that may not be read: whoever looks through it says so.
func (d *Disk) Follow(folders []string) (added bool, err error) {
	for _, f := range folders {
		// The system forgets a folder that is removed, and the same name may
		// come back as another: asking for one twice costs nothing.
		switch err := d.watcher.Add(f); {
		case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
			delete(d.folders, f)
			continue
		case err != nil:
			return added, fmt.Errorf("follow changes in %s: %w", f, err)
		}
		added = added || !d.folders[f]
		d.folders[f] = true
	}
	return added, nil
}

// Follows reports whether a path is a folder that is followed.
func (d *Disk) Follows(path string) bool { return d.folders[path] }

// Forget notes that a folder has gone.
func (d *Disk) Forget(path string) { delete(d.folders, path) }
