package pipeline

import (
	"io/fs"
	"os"
	"path/filepath"
)

// storage is what a run reads from: the disk, or what it was at another time.
// Paths are those of the system, as its own functions take them.
type storage interface {
	Stat(path string) (fs.FileInfo, error)
	Lstat(path string) (fs.FileInfo, error)
	ReadDir(path string) ([]fs.DirEntry, error)
	// Real is the absolute path of what is there, without links.
	Real(path string) (string, error)
	// Read reads a regular file. Of one of more than so many bytes it gives
	// just enough to see that.
	Read(path string, most int) ([]byte, error)
	// ReadIn reads a file below a folder, out of which no link may lead.
	ReadIn(folder, name string, most int) ([]byte, error)
}

// disk is the disk as it is.
type disk struct{}

func (disk) Stat(path string) (fs.FileInfo, error)      { return os.Stat(path) }
func (disk) Lstat(path string) (fs.FileInfo, error)     { return os.Lstat(path) }
func (disk) ReadDir(path string) ([]fs.DirEntry, error) { return os.ReadDir(path) }

func (disk) Real(path string) (string, error) {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return "", err
	}
	return filepath.Abs(real)
}

func (d disk) Read(path string, most int) ([]byte, error) { return readMost(d, path, most) }

func (disk) ReadIn(folder, name string, most int) ([]byte, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	return readMost(root, name, most)
}

// OpenFile opens a file, for readMost.
func (disk) OpenFile(path string, flag int, perm fs.FileMode) (*os.File, error) {
	return os.OpenFile(path, flag, perm)
}
