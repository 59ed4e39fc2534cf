package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// released is what an archive of a release holds that an image needs.
type released struct {
	version, machine string
	program, licence []byte
	at               time.Time // of the commit, which every file carries
}

// archives are the archives for Linux in a folder, each of the sum that
// SHA256SUMS gives, in the order of that.
func archives(dir string) ([]released, error) {
	sums, err := os.ReadFile(filepath.Join(dir, "SHA256SUMS"))
	if err != nil {
		return nil, err
	}
	var all []released
	for line := range strings.Lines(string(sums)) {
		sum, name, ok := strings.Cut(strings.TrimSpace(line), "  ")
		if !ok || name != filepath.Base(name) {
			return nil, fmt.Errorf("SHA256SUMS: %q is not a sum and a name", line)
		}
		stem, isTar := strings.CutSuffix(name, ".tar.gz")
		version, machine, isLinux := strings.Cut(strings.TrimPrefix(stem, "yardproof-"), "-linux-")
		if !isTar || !isLinux {
			continue
		}
		b, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return nil, err
		}
		if fmt.Sprintf("%x", sha256.Sum256(b)) != sum {
			return nil, fmt.Errorf("%s is not the archive of the sum in SHA256SUMS", name)
		}
		r, err := unpack(b)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		r.version, r.machine = version, machine
		all = append(all, r)
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("%s has no archive for Linux", dir)
	}
	return all, nil
}

// unpack takes the program and its licence out of an archive.
func unpack(archive []byte) (released, error) {
	var r released
	z, err := gzip.NewReader(bytes.NewReader(archive))
	if err != nil {
		return r, err
	}
	for t := tar.NewReader(z); ; {
		h, err := t.Next()
		switch {
		case errors.Is(err, io.EOF) && len(r.program) > 0 && len(r.licence) > 0:
			return r, nil
		case errors.Is(err, io.EOF):
			return r, errors.New("it lacks the program or the licence")
		case err != nil:
			return r, err
		}
		into := map[string]*[]byte{"yardproof": &r.program, "LICENSE": &r.licence}[path.Base(h.Name)]
		if into == nil {
			continue
		}
		if *into, err = io.ReadAll(t); err != nil {
			return r, err
		}
		r.at = h.ModTime.UTC()
	}
}
