package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"errors"
	"io/fs"
	"slices"
	"strings"
	"time"
)

// file is one file of an archive.
type file struct {
	name  string // slash path
	bytes []byte
	run   bool // it is a program
}

func (f file) mode() fs.FileMode {
	if f.run {
		return 0o755
	}
	return 0o644
}

func sorted(files []file) []file {
	return slices.SortedFunc(slices.Values(files), func(a, b file) int { return strings.Compare(a.name, b.name) })
}

// tarred is a compressed tar archive of files by name, all of one time and of
// nobody.
func tarred(files []file, at time.Time) ([]byte, error) {
	var out bytes.Buffer
	// Its header has neither a name nor a time, and no system.
	z, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	t := tar.NewWriter(z)
	for _, f := range sorted(files) {
		header := &tar.Header{
			Typeflag: tar.TypeReg, Name: f.name, Size: int64(len(f.bytes)), Mode: int64(f.mode()),
			ModTime: at.Truncate(time.Second), Format: tar.FormatUSTAR,
		}
		if err := t.WriteHeader(header); err != nil {
			return nil, err
		}
		if _, err := t.Write(f.bytes); err != nil {
			return nil, err
		}
	}
	err = errors.Join(t.Close(), z.Close())
	return out.Bytes(), err
}

// zipped is a zip archive of files by name, all of one time.
func zipped(files []file, at time.Time) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, f := range sorted(files) {
		header := &zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: at.Truncate(time.Second).UTC()}
		header.SetMode(f.mode())
		w, err := z.CreateHeader(header)
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(f.bytes); err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return out.Bytes(), err
}
