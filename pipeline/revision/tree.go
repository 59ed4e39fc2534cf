package revision

import (
	"bufio"
	"bytes"
	"context"
	"crypto/sha1" // what git names most objects by
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Tree is what a revision holds: its regular files, by their slash paths below
// the top of the working tree. Several goroutines may use it at the same time.
type Tree struct {
	git     git
	top     string
	commit  string
	ids     map[string]string   // of files
	folders map[string][]string // names of what is in each; "" is the top
	blobs   blobs
}

// mostListed is how many bytes the list of a revision's files may have: more
// than a million plans need.
const mostListed = 256 << 20

// Open looks a revision up in the repository of a folder, which exists, and
// lists its files. An *Error is one of what was asked for.
func Open(ctx context.Context, folder, revision string) (*Tree, error) {
	t := &Tree{git: in(ctx, folder), ids: map[string]string{}, folders: map[string][]string{"": nil}}
	top, err := t.git.top(folder)
	if err != nil {
		return nil, err
	}
	if t.top, err = filepath.EvalSymlinks(filepath.FromSlash(top)); err != nil {
		return nil, err
	}
	if t.commit, err = t.git.commit(revision); err != nil {
		return nil, err
	}
	if err := t.list(); err != nil {
		return nil, err
	}
	t.blobs.git = t.git
	return t, nil
}

// Top is the real path of the working tree, in the system's form.
func (t *Tree) Top() string { return t.top }

// Commit is the id of the revision's commit.
func (t *Tree) Commit() string { return t.commit }

// Names are the paths of all files, sorted.
func (t *Tree) Names() []string { return slices.Sorted(maps.Keys(t.ids)) }

// IsFile reports whether the revision has a regular file of this path.
func (t *Tree) IsFile(name string) bool { return t.ids[name] != "" }

// Folder is what is in a folder, by name; the top is "".
func (t *Tree) Folder(name string) (names []string, ok bool) {
	names, ok = t.folders[name]
	return names, ok
}

// Read reads a file. Of one of more than so many bytes it gives as many blanks
// as are needed to see that, and git does not read it. Whatever else goes wrong
// is told by Err as well.
func (t *Tree) Read(name string, most int) ([]byte, error) {
	id, ok := t.ids[name]
	if !ok {
		return nil, &fs.PathError{Op: "read", Path: name, Err: fs.ErrNotExist}
	}
	b, err := t.blobs.read(id, most)
	if err != nil {
		return nil, fmt.Errorf("read %s of the revision: %w", name, err)
	}
	return b, nil
}

// Is reports whether a file of the revision has this content, by its id, without
// asking git.
func (t *Tree) Is(name string, content []byte) bool {
	id := t.ids[name]
	hash := sha1.New()
	if len(id) == 2*sha256.Size {
		hash = sha256.New()
	}
	fmt.Fprintf(hash, "blob %d\x00", len(content))
	hash.Write(content)
	return hex.EncodeToString(hash.Sum(nil)) == id
}

// IsTracked reports whether git keeps a file of this path now.
func (t *Tree) IsTracked(name string) (bool, error) {
	out, err := t.git.output("ls-files", "-z", "--", ":(top,literal)"+name)
	return out != "", err
}

// Err is the first error that reading met.
func (t *Tree) Err() error { return t.blobs.failed() }

// Close ends the programs that read.
func (t *Tree) Close() { t.blobs.close() }

// list lists the files of the commit.
func (t *Tree) list() error {
	c := t.git.command("ls-tree", "-r", "-z", "--full-tree", t.commit)
	var said bytes.Buffer
	c.Stderr = &said
	out, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	if err := c.Start(); err != nil {
		return err
	}
	// What is left unread would keep git from ending.
	reading := t.take(out)
	if reading != nil {
		c.Process.Kill()
	}
	err = c.Wait()
	switch {
	case t.git.ctx.Err() != nil:
		return t.git.ctx.Err()
	case reading != nil:
		return reading
	case err != nil:
		return failure{"ls-tree", firstLine(said.String()), err}
	}
	for _, names := range t.folders {
		slices.Sort(names)
	}
	return nil
}

// take reads a list of files, each "mode type id<tab>path" and ended by a NUL.
func (t *Tree) take(out io.Reader) error {
	limited := &io.LimitedReader{R: out, N: mostListed}
	for r := bufio.NewReader(limited); ; {
		line, err := r.ReadString(0)
		switch {
		case limited.N <= 0:
			return fmt.Errorf("git ls-tree: the list of the revision's files is longer than %d bytes", mostListed)
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return err
		}
		about, name, _ := strings.Cut(strings.TrimSuffix(line, "\x00"), "\t")
		fields := strings.Fields(about)
		if len(fields) != 3 || !isID(fields[2]) {
			return fmt.Errorf("git ls-tree: %q is not about a file", line)
		}
		// Links are files of mode 120000, and submodules are no files.
		if fields[1] == "blob" && strings.HasPrefix(fields[0], "100") && isInside(name) {
			t.add(name, fields[2])
		}
	}
}

// isInside reports whether a path leads to a place below the top. Git lets no
// other be committed, but anybody can make such an object.
func isInside(name string) bool {
	return name != "." && path.Clean(name) == name && filepath.IsLocal(filepath.FromSlash(name))
}

func (t *Tree) add(name, id string) {
	t.ids[name] = id
	for name != "" {
		folder, base := path.Split(name)
		folder = strings.TrimSuffix(folder, "/")
		_, known := t.folders[folder]
		t.folders[folder] = append(t.folders[folder], base)
		if known {
			return
		}
		name = folder
	}
}
