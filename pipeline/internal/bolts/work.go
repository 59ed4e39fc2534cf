package bolts

// Work is what the searches for the plans of one article may cost together, in the
// unit of [cutting.Spent], and what they have cost. Once it is done plans are what is
// found without a search, and orders that nobody tried are not called impossible.
type Work struct {
	Allowed int
	Done    int
	Short   bool // more might have led to a better plan, or to a proof
}

// spent reports whether nothing is left, and remembers that more was asked for.
func (w *Work) spent() bool {
	if w == nil || w.Done < w.Allowed {
		return false
	}
	w.Short = true
	return true
}
