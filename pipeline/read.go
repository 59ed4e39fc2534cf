package pipeline

import (
	"bytes"
	"io"
	"io/fs"
	"os"

	"yardproof/pipeline/diag"
	"yardproof/schema/jsontree"
)

// notRegular is the error of reading what is no regular file.
type notRegular struct{ mode fs.FileMode }

func (n notRegular) Error() string { return "it is " + n.kind() + ", not a regular file" }

func (n notRegular) kind() string {
	switch {
	case n.mode&fs.ModeDir != 0:
		return "a folder"
	case n.mode&fs.ModeNamedPipe != 0:
		return "a named pipe"
	case n.mode&fs.ModeSocket != 0:
		return "a socket"
	case n.mode&fs.ModeDevice != 0:
		return "a device"
	}
	return "something special"
}

// ReadFile reads a regular file that a run is given besides plans, such as a
// baseline, or of a larger one as much as is needed to see that it is too
// large. What kept it from being read is a finding.
func ReadFile(path string, most int) ([]byte, []diag.Finding) {
	b, err := disk{}.Read(path, most)
	if err != nil {
		return nil, []diag.Finding{unread(path, err)}
	}
	return b, nil
}

// read reads a regular file. Of a file that is too large for the decoder it
// reads just enough for the decoder to see that.
func read(from storage, name string) ([]byte, error) {
	return from.Read(name, jsontree.DefaultLimits().MaxBytes)
}

// opener is where a file is opened: on the whole disk, or in one folder.
type opener interface {
	Stat(name string) (fs.FileInfo, error)
	OpenFile(name string, flag int, perm fs.FileMode) (*os.File, error)
}

func readMost(from opener, name string, most int) ([]byte, error) {
	info, err := from.Stat(name)
	if err != nil {
		return nil, err
	}
	// Opening a named pipe would wait for somebody to write to it.
	if !info.Mode().IsRegular() {
		return nil, notRegular{info.Mode()}
	}
	f, err := from.OpenFile(name, os.O_RDONLY|nonBlocking, 0)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	// It may have been replaced by a pipe in between.
	if info, err = f.Stat(); err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, notRegular{info.Mode()}
	}
	limit := int64(most) + 1
	var b bytes.Buffer
	b.Grow(int(min(info.Size(), limit)) + bytes.MinRead)
	_, err = b.ReadFrom(io.LimitReader(f, limit))
	return b.Bytes(), err
}
