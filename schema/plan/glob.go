package plan

import (
	"errors"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/bmatcuk/doublestar/v4"
)

// Glob is a pattern of the paths of files and folders. The zero Glob matches
// nothing.
type Glob struct {
	pattern string
	names   bool // it is held against the last word of a path
	folders bool // it is for folders only
}

// ParseGlob reads a pattern. A star stands for any characters but a slash, two
// stars between slashes for any folders, a question mark for one character,
// [a-z] for one of some, and {a,b} for either. Where there is no slash but
// perhaps one at the end it is a name at any depth; with one at the end it is
// for folders only.
func ParseGlob(text string) (Glob, error) {
	folders := strings.HasSuffix(text, "/")
	pattern := strings.TrimPrefix(strings.TrimRight(text, "/"), "./")
	switch {
	case pattern == "" || pattern == ".":
		return Glob{}, errors.New("it names nothing")
	case !utf8.ValidString(pattern) || !doublestar.ValidatePattern(pattern):
		return Glob{}, errors.New("it is no glob: a bracket or brace is not closed, or a backslash ends it")
	}
	return Glob{pattern, !strings.Contains(pattern, "/"), folders}, nil
}

// Match reports whether the glob stands for a path, which has slashes and is
// relative to where the glob is.
func (g Glob) Match(name string, folder bool) bool {
	if g.pattern == "" || g.folders && !folder {
		return false
	}
	if g.names {
		name = path.Base(name)
	}
	return doublestar.MatchUnvalidated(g.pattern, name)
}

// leadsOut tells of a glob that can match nothing below its folder.
func (g Glob) leadsOut() bool {
	return path.IsAbs(g.pattern) || slices.Contains(strings.Split(g.pattern, "/"), "..")
}
