package sarif

import (
	"maps"
	"path"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// root is the base of relative paths; what folder it is depends on who reads
// the log.
const root = "%SRCROOT%"

// artifacts are the files of a run, by name.
type artifacts struct {
	list []artifact
	at   map[string]int
}

// newArtifacts lists every plan, with or without findings, and every other
// file that a finding is about.
func newArtifacts(r *report.Run, findings []diag.Finding, excused []report.Excused) *artifacts {
	isPlan := map[string]bool{}
	for _, f := range findings {
		note(isPlan, f)
	}
	for _, e := range excused {
		note(isPlan, e.Finding)
		isPlan[e.Place.File] = false
	}
	for _, p := range r.Plans {
		isPlan[p.File] = true
	}
	delete(isPlan, "")
	out := &artifacts{list: []artifact{}, at: map[string]int{}}
	for _, file := range slices.Sorted(maps.Keys(isPlan)) {
		a := artifact{Location: locate(file)}
		if isPlan[file] {
			a.Roles = []string{"analysisTarget"}
		}
		if path.Ext(file) == ".json" {
			a.MIMEType = "application/json"
		}
		out.at[file] = len(out.list)
		out.list = append(out.list, a)
	}
	return out
}

// note takes the files that a finding speaks of.
func note(files map[string]bool, f diag.Finding) {
	for _, f := range append(diag.Flatten(f.Follows), f) {
		files[f.Place.File] = false
		for _, r := range f.Related {
			files[r.Place.File] = false
		}
	}
}

func (a *artifacts) reference(file string) location {
	l := locate(file)
	if at, ok := a.at[file]; ok {
		l.Index = &at
	}
	return l
}

// locate turns a file's name into a URI (RFC 3986) or, for a relative one,
// into a reference that is resolved against the root. Files named by their
// whole path follow RFC 8089, with the drive letters and host names of its
// appendix E.
func locate(file string) location {
	switch {
	case strings.HasPrefix(file, "//"):
		return location{URI: "file:" + encode(file, true)}
	case strings.HasPrefix(file, "/"):
		return location{URI: "file://" + encode(file, true)}
	case hasDrive(file):
		return location{URI: "file:///" + encode(file, true)}
	}
	file = path.Clean(file)
	first, _, _ := strings.Cut(file, "/")
	return location{URI: encode(file, !strings.Contains(first, ":")), URIBaseID: root}
}

// hasDrive reports whether a path begins with a drive letter: "C:/".
func hasDrive(file string) bool {
	return len(file) > 2 && file[1:3] == ":/" && strings.Contains(letters, file[:1])
}

const (
	letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
	// plainBytes may stand in a path as they are: unreserved characters,
	// sub-delims, "@" and "/" (RFC 3986, 3.3).
	plainBytes = letters + "0123456789-._~!$&'()*+,;=@/"
	hexDigits  = "0123456789ABCDEF"
)

// encode percent-encodes a path byte by byte. In a relative one a colon before
// the first slash would look like a scheme.
func encode(file string, colons bool) string {
	var s strings.Builder
	for _, b := range []byte(file) {
		if strings.IndexByte(plainBytes, b) >= 0 || b == ':' && colons {
			s.WriteByte(b)
			continue
		}
		s.WriteByte('%')
		s.WriteByte(hexDigits[b>>4])
		s.WriteByte(hexDigits[b&15])
	}
	return s.String()
}
