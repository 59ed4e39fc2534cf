package slip

import "yardproof/pipeline/diag"

// mark is a finding's in one size, at a level.
type mark struct {
	diag.Mark
	diag.Level
}

// wordsOf are the messages of findings by their marks.
func wordsOf(found []diag.Finding) map[mark]string {
	words := map[mark]string{}
	for _, f := range found {
		for _, m := range f.Marks() {
			words[mark{m, f.Level}] += f.Message
		}
	}
	return words
}

// touches reports whether a finding is another one than before, or gone.
func touches(before, after map[mark]string) bool {
	for m, words := range before {
		if after[m] != words {
			return true
		}
	}
	return false
}
