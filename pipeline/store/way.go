package store

import (
	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// Way is a diag.Way, a way out of a finding.
type Way struct {
	Kind  string `json:"kind"`
	Edits []Edit `json:"edits,omitempty"`
	Also  []Edit `json:"also,omitempty"`
	Says  string `json:"says,omitempty"`
	Note  string `json:"note,omitempty"`
	Trial string `json:"trial,omitempty"`
	Else  bool   `json:"else,omitempty"`
}

// Edit is one of its edits.
type Edit struct {
	File  string `json:"file,omitempty"`
	Act   string `json:"act"`
	At    Span   `json:"at"`
	Text  string `json:"text,omitempty"`
	Verb  string `json:"verb,omitempty"`
	Shown string `json:"shown,omitempty"`
	Thing string `json:"thing,omitempty"`
}

func rememberedWays(ways []diag.Way) []Way {
	var all []Way
	for _, w := range ways {
		all = append(all, Way{w.Kind.String(), rememberedEdits(w.Edits), rememberedEdits(w.Also), w.Says, w.Note, w.Trial.String(), w.Else})
	}
	return all
}

func rememberedEdits(edits []diag.Edit) []Edit {
	var all []Edit
	for _, e := range edits {
		all = append(all, Edit{e.File, e.Act.String(), Span{e.Range.Start, e.Range.End}, e.Text, e.Verb, e.Shown, e.Thing})
	}
	return all
}

func recalledWays(kept []Way, file *source.File) []diag.Way {
	var all []diag.Way
	for _, k := range kept {
		kind, _ := source.ParseKind(k.Kind)
		trial, _ := source.ParseTrial(k.Trial)
		all = append(all, diag.Way{Kind: kind, Edits: recalledEdits(k.Edits, located(file, trial)), Also: recalledEdits(k.Also, located(file, trial)), Says: k.Says, Note: k.Note, Trial: trial, Else: k.Else})
	}
	return all
}

// located is where offsets of a file stand, of a way that was tried.
func located(file *source.File, trial source.Trial) func(int) source.Position {
	if trial == source.Unasked {
		return func(int) source.Position { return source.Position{} }
	}
	return file.Position
}

func recalledEdits(kept []Edit, at func(int) source.Position) []diag.Edit {
	var all []diag.Edit
	for _, k := range kept {
		act, _ := source.ParseAct(k.Act)
		all = append(all, diag.Edit{File: k.File, Act: act, Range: source.Range{Start: k.At.Start, End: k.At.End}, Text: k.Text, Verb: k.Verb, Shown: k.Shown, Thing: k.Thing, Start: at(k.At.Start), End: at(k.At.End)})
	}
	return all
}
