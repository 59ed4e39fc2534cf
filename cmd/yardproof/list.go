package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"
)

// mostListed is how many bytes a list of paths may have: more than a million
// plans need, and less than a stream that never ends.
const mostListed = 256 << 20

// pathsFrom reads a list of paths from a file or from standard input.
func pathsFrom(name string, stdin io.Reader) ([]string, error) {
	from, what := stdin, "standard input"
	if name != toStdout {
		f, err := os.Open(name)
		if err != nil {
			return nil, fmt.Errorf("read the list of paths: %w", err)
		}
		defer f.Close()
		from, what = f, name
	}
	b, err := io.ReadAll(io.LimitReader(from, mostListed+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("read the list of paths from %s: %w", what, err)
	case len(b) > mostListed:
		return nil, fmt.Errorf("read the list of paths from %s: it is longer than %d bytes", what, mostListed)
	}
	paths := parts(b)
	if len(paths) == 0 {
		return nil, fmt.Errorf("read the list of paths from %s: it is empty, and a check of nothing must not look like one without findings", what)
	}
	return paths, nil
}

// parts are the paths of a list, one a line. With a NUL anywhere they are
// ended by NULs instead and may hold line breaks, as find -print0 and git
// ls-files -z write them.
func parts(b []byte) []string {
	end := "\n"
	if bytes.IndexByte(b, 0) >= 0 {
		end = "\x00"
	}
	var paths []string
	for part := range strings.SplitSeq(string(b), end) {
		if end == "\n" {
			part = strings.TrimSuffix(part, "\r")
		}
		if part != "" {
			paths = append(paths, part)
		}
	}
	return paths
}
