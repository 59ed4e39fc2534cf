package report

import "yardproof/pipeline/diag"

// Reading is what became of the numbers in a pattern's own text.
type Reading struct {
	File    string
	Numbers []Stated // in the order of the text
}

// Stated is a number of a text and what it was taken for.
type Stated struct {
	Place   diag.Place
	Text    string // as it is written
	Verdict string // "agrees", "disagrees", "not placed" or "no quantity"
	Sense   string // what it is, where it is no quantity: "label", "date"
	States  string // the figure that it was held against
	Is      string // the value of that figure
	Size    string // that the figure is of
	Printed bool   // the figure is printed by the plan; otherwise it is derived
}

// Count is how many numbers have a verdict.
func (t *Reading) Count(verdict string) int {
	n := 0
	for _, s := range t.Numbers {
		if s.Verdict == verdict {
			n++
		}
	}
	return n
}

// From says whether the figure is derived or printed.
func (s Stated) From() string {
	if s.Printed {
		return "printed"
	}
	return "derived"
}
