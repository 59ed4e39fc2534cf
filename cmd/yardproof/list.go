package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"strings"
)

// mostListed is how many bytes a list of paths may have: more than a million
// plans need, and less than a stream that never ends.
const mostListed = 256 << 20

// pathsFrom reads a list of paths from a file, which may be a pipe, or from
// standard input.
func pathsFrom(ctx context.Context, name string, stdin io.Reader) ([]string, error) {
	from, what := stdin, "standard input"
	if name != toStdout {
		from, what = &opened{name: name}, name
	}
	b, err := io.ReadAll(io.LimitReader(untilDone{ctx, from}, mostListed+1))
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
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

// opened is a file that is opened when it is first read: of a pipe that takes as
// long as nobody writes to it.
type opened struct {
	name string
	file *os.File
}

func (o *opened) Read(b []byte) (n int, err error) {
	if o.file == nil {
		if o.file, err = os.Open(o.name); err != nil {
			return 0, err
		}
	}
	if n, err = o.file.Read(b); err != nil {
		o.file.Close()
	}
	return n, err
}

// untilDone reads until a context is done. The system's own reading cannot be
// interrupted: it is left behind, with a buffer of its own, for the program is
// about to end.
type untilDone struct {
	ctx context.Context
	r   io.Reader
}

func (u untilDone) Read(b []byte) (int, error) {
	type result struct {
		b   []byte
		err error
	}
	ended := make(chan result, 1)
	go func() {
		own := make([]byte, len(b))
		n, err := u.r.Read(own)
		ended <- result{own[:n], err}
	}()
	select {
	case <-u.ctx.Done():
		return 0, u.ctx.Err()
	case r := <-ended:
		return copy(b, r.b), r.err
	}
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
