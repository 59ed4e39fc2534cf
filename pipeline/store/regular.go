package store

import (
	"errors"
	"io"
	"os"
	"path/filepath"
)

// openRegular opens a regular file of a folder. It does not wait, as opening a
// named pipe would.
func openRegular(root *os.Root, name string) (*os.File, error) {
	info, err := root.Lstat(filepath.FromSlash(name))
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errNotRegular
	}
	file, err := root.OpenFile(filepath.FromSlash(name), os.O_RDONLY|nonBlocking, 0)
	if err != nil {
		return nil, err
	}
	if now, err := file.Stat(); err != nil || !os.SameFile(info, now) {
		return nil, errors.Join(errNotRegular, err, file.Close())
	}
	return file, nil
}

var errNotRegular = errors.New("it is not a regular file")

// readRegular reads a regular file of a folder whole.
func readRegular(root *os.Root, name string) ([]byte, error) {
	file, err := openRegular(root, name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(file)
}
