package pipeline

import (
	"io"
	"path/filepath"

	"yardproof/pipeline/diag"
	"yardproof/schema/jsontree"
)

// Given is a plan that is handed over and not read from the disk.
type Given struct {
	Path string // whose text it is: findings name it, and its project is that of this path. It need not exist
	Text []byte
}

// ReadGiven reads the text of a plan from a stream: of one that is too large
// as much as is needed to see that. What kept it from being read is a finding.
func ReadGiven(path string, r io.Reader) (*Given, []diag.Finding) {
	// One byte more than the decoder takes, for it to see that it is too much.
	text, err := io.ReadAll(io.LimitReader(r, int64(jsontree.DefaultLimits().MaxBytes)+1))
	if err != nil {
		return nil, []diag.Finding{unread(path, err)}
	}
	return &Given{path, text}, nil
}

func (g *Given) plan() *planFile {
	p := &planFile{path: g.Path, name: filepath.ToSlash(g.Path), given: true, bytes: g.Text}
	p.outcome.File = p.name
	return p
}
