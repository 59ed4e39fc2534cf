package sarif

import (
	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// fixes are the ways out of a finding that were tried and mend it. A viewer offers
// each as a whole.
func (b *builder) fixes(f diag.Finding) []fix {
	var all []fix
	for _, w := range f.Ways {
		if w.Trial != source.Holds {
			continue
		}
		out := fix{Description: message{words.OneLine(w.Sentence())}}
		for _, e := range w.All() {
			out.replace(b, e, f.Place.File)
		}
		all = append(all, out)
	}
	return all
}

// replace adds an edit to the changes of its file.
func (x *fix) replace(b *builder, e diag.Edit, file string) {
	if e.File != "" {
		file = e.File
	}
	at := b.artifacts.reference(file)
	r := replacement{region{
		StartLine: e.Start.Line, StartColumn: e.Start.Column, EndLine: e.End.Line, EndColumn: e.End.Column,
		ByteOffset: e.Range.Start, ByteLength: e.Range.Len(),
	}, content{e.Text}}
	for i := range x.ArtifactChanges {
		if x.ArtifactChanges[i].ArtifactLocation.URI == at.URI {
			x.ArtifactChanges[i].Replacements = append(x.ArtifactChanges[i].Replacements, r)
			return
		}
	}
	x.ArtifactChanges = append(x.ArtifactChanges, artifactChange{at, []replacement{r}})
}
