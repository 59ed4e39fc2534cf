package pipeline

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"yardproof/pipeline/revision"
)

// past is the disk as it was at a revision: what lies in the working tree of the
// repository is what the revision held, anything else is as it is now.
type past struct {
	disk
	tree  *revision.Tree
	roots []root // the longest first
}

// root is a folder, by a path that may lead to it through links, and what it is
// in the tree.
type root struct{ path, name string }

// newPast is the disk as it was, by the paths that a run names. False for the
// first of these that does not lie in the working tree.
func newPast(tree *revision.Tree, paths []string) (p *past, outside string, ok bool) {
	p = &past{tree: tree, roots: []root{{tree.Top(), ""}}}
	for _, named := range paths {
		absolute, err := filepath.Abs(named)
		if err != nil {
			return nil, named, false
		}
		real := reached(absolute)
		// What both end with is no link, so that what lies around the path is
		// known, too.
		for real != tree.Top() && filepath.Base(real) == filepath.Base(absolute) && filepath.Dir(real) != real {
			real, absolute = filepath.Dir(real), filepath.Dir(absolute)
		}
		name, err := filepath.Rel(tree.Top(), real)
		if err != nil || !filepath.IsLocal(name) {
			return nil, named, false
		}
		if r := (root{absolute, slashName(name)}); !slices.Contains(p.roots, r) {
			p.roots = append(p.roots, r)
		}
	}
	slices.SortStableFunc(p.roots, func(a, b root) int { return len(b.path) - len(a.path) })
	return p, "", true
}

// reached is the real path of what is there, or of what is around it.
func reached(absolute string) string {
	if real, err := filepath.EvalSymlinks(absolute); err == nil {
		return real
	}
	if above := filepath.Dir(absolute); above != absolute {
		return filepath.Join(reached(above), filepath.Base(absolute))
	}
	return absolute
}

// slashName is a relative path as a tree has it; the top is "".
func slashName(relative string) string {
	if relative == "." {
		return ""
	}
	return filepath.ToSlash(relative)
}

// name is the name of a path in the tree, if it lies there.
func (p *past) name(at string) (string, bool) {
	absolute, err := filepath.Abs(at)
	if err != nil {
		return "", false
	}
	for _, r := range p.roots {
		if relative, err := filepath.Rel(r.path, absolute); err == nil && filepath.IsLocal(relative) {
			return path.Join(r.name, slashName(relative)), true
		}
	}
	return "", false
}

func (p *past) Stat(path string) (fs.FileInfo, error) {
	name, inside := p.name(path)
	if !inside {
		return p.disk.Stat(path)
	}
	return p.stat(name, path)
}

// Lstat is Stat where there are no links.
func (p *past) Lstat(path string) (fs.FileInfo, error) {
	if _, inside := p.name(path); !inside {
		return p.disk.Lstat(path)
	}
	return p.Stat(path)
}

func (p *past) stat(name, at string) (fs.FileInfo, error) {
	if _, ok := p.tree.Folder(name); ok {
		return committed{path.Base(name), fs.ModeDir | 0o777}, nil
	}
	if p.tree.IsFile(name) {
		return committed{path.Base(name), 0o666}, nil
	}
	return nil, &fs.PathError{Op: "stat", Path: at, Err: fs.ErrNotExist}
}

func (p *past) ReadDir(at string) ([]fs.DirEntry, error) {
	name, inside := p.name(at)
	if !inside {
		return p.disk.ReadDir(at)
	}
	names, ok := p.tree.Folder(name)
	if !ok {
		return nil, &fs.PathError{Op: "open", Path: at, Err: fs.ErrNotExist}
	}
	var entries []fs.DirEntry
	for _, n := range names {
		info, err := p.stat(strings.TrimPrefix(name+"/"+n, "/"), at)
		if err != nil {
			return nil, err
		}
		entries = append(entries, fs.FileInfoToDirEntry(info))
	}
	return entries, nil
}

func (p *past) Real(path string) (string, error) {
	name, inside := p.name(path)
	if !inside {
		return p.disk.Real(path)
	}
	if _, err := p.Stat(path); err != nil {
		return "", err
	}
	return filepath.Join(p.tree.Top(), filepath.FromSlash(name)), nil
}

// Read asks git only for what is not the same now.
func (p *past) Read(path string, most int) ([]byte, error) {
	name, inside := p.name(path)
	if !inside {
		return p.disk.Read(path, most)
	}
	if p.tree.IsFile(name) {
		if now, err := p.disk.Read(path, most); err == nil && p.tree.Is(name, now) {
			return now, nil
		}
	}
	return p.tree.Read(name, most)
}

// ReadIn reads a list. One that git has never kept, prices that are nobody's
// business, is as it is now.
func (p *past) ReadIn(folder, name string, most int) ([]byte, error) {
	in, inside := p.name(filepath.Join(folder, name))
	if !inside {
		return p.disk.ReadIn(folder, name, most)
	}
	if !p.tree.IsFile(in) {
		if tracked, err := p.tree.IsTracked(in); err == nil && !tracked {
			return p.disk.ReadIn(folder, name, most)
		}
	}
	return p.tree.Read(in, most)
}

// committed is a file or folder of a revision, which knows neither time nor size.
type committed struct {
	name string
	mode fs.FileMode
}

func (c committed) Name() string       { return c.name }
func (c committed) Size() int64        { return 0 }
func (c committed) Mode() fs.FileMode  { return c.mode }
func (c committed) ModTime() time.Time { return time.Time{} }
func (c committed) IsDir() bool        { return c.mode.IsDir() }
func (c committed) Sys() any           { return nil }

// plansGone are the paths of plans that the revision held and the disk does not.
func (p *past) plansGone() []string {
	var gone []string
	for _, name := range p.tree.Names() {
		at := filepath.Join(p.tree.Top(), filepath.FromSlash(name))
		if !isPlan(name) {
			continue
		}
		if _, err := os.Lstat(at); err != nil {
			gone = append(gone, at)
		}
	}
	return gone
}
