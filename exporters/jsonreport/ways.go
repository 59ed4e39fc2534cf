package jsonreport

import (
	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// way is a way out of a finding. The bytes of its edits are those of the file as it
// was read, so that all of a way's edits are made together.
type way struct {
	Kind  string `json:"kind"`
	Says  string `json:"says"`
	Tried bool   `json:"tried"`
	Edits []edit `json:"edits,omitempty"`
}

type edit struct {
	File  string    `json:"file"`
	Act   string    `json:"act"`
	Range span      `json:"range"`
	Start *position `json:"start,omitempty"`
	End   *position `json:"end,omitempty"`
	Text  string    `json:"text"`
}

// waysOf are the ways that a finding's hint tells.
func waysOf(f diag.Finding) []way {
	var all []way
	for _, w := range f.Told() {
		out := way{Kind: w.Kind.String(), Says: w.Sentence(), Tried: w.Trial == source.Holds}
		for _, e := range w.All() {
			out.Edits = append(out.Edits, editOf(e, f.Place.File))
		}
		all = append(all, out)
	}
	return all
}

func editOf(e diag.Edit, file string) edit {
	if e.File != "" {
		file = e.File
	}
	out := edit{File: file, Act: e.Act.String(), Range: span{e.Range.Start, e.Range.End}, Text: e.Text}
	if e.Start.Line > 0 {
		out.Start, out.End = where(e.Start), where(e.End)
	}
	return out
}
