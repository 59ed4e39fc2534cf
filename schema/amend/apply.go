package amend

import (
	"fmt"
	"slices"

	"yardproof/schema/source"
)

// Apply is a text with all edits made, whatever file they name. Every byte outside their ranges
// stays. The error is of edits that lie outside the text or overlap; nothing is
// applied then.
func Apply(text []byte, edits []source.Edit) ([]byte, error) {
	order, err := inOrder(len(text), edits)
	if err != nil {
		return nil, err
	}
	var out []byte
	at := 0
	for _, e := range order {
		out = append(append(out, text[at:e.Range.Start]...), e.Text...)
		at = e.Range.End
	}
	return append(out, text[at:]...), nil
}

// inOrder sorts edits by place, equal ones taken once. Two that only add text at one
// place keep their order.
func inOrder(length int, edits []source.Edit) ([]source.Edit, error) {
	var order []source.Edit
	for _, e := range edits {
		if !slices.ContainsFunc(order, func(o source.Edit) bool {
			return o.Range == e.Range && o.Text == e.Text && o.Act == e.Act
		}) {
			order = append(order, e)
		}
	}
	order = byPlace(order)
	for i, e := range order {
		if !e.Range.Valid() || e.Range.End > length {
			return nil, fmt.Errorf("an edit of the bytes %d to %d of a text of %d", e.Range.Start, e.Range.End, length)
		}
		if i == 0 {
			continue
		}
		last := order[i-1].Range
		if e.Range.Start < last.End || e.Range == last && !e.Range.Empty() {
			return nil, fmt.Errorf("two edits of the bytes from %d on", e.Range.Start)
		}
	}
	return order, nil
}

// Wrote is where edits of a text wrote in what they made of it, in the order of their
// places.
func Wrote(edits []source.Edit) []source.Range {
	var all []source.Range
	grown := 0
	for _, e := range byPlace(edits) {
		start := e.Range.Start + grown
		all = append(all, source.Range{Start: start, End: start + len(e.Text)})
		grown += len(e.Text) - e.Range.Len()
	}
	return all
}

// byPlace are edits in the order of their places. Those of one place keep theirs.
func byPlace(edits []source.Edit) []source.Edit {
	order := slices.Clone(edits)
	slices.SortStableFunc(order, func(a, b source.Edit) int { return a.Range.Compare(b.Range) })
	return order
}

// Then is edits of a text followed by edits of what the first made of it, as edits of
// the text itself. There are none when the second touch what the first wrote.
func Then(first, second []source.Edit) ([]source.Edit, bool) {
	order, wrote := byPlace(first), Wrote(first)
	all := slices.Clone(first)
	for _, e := range second {
		r, ok := back(order, wrote, e.Range)
		if !ok {
			return nil, false
		}
		e.Range = r
		all = append(all, e)
	}
	return all, true
}

// back is where a range of the changed text stands in the text before, if no byte of
// it was written by the edits.
func back(order []source.Edit, wrote []source.Range, r source.Range) (source.Range, bool) {
	grown := 0
	for i, w := range wrote {
		switch {
		case r.End <= w.Start:
			return source.Range{Start: r.Start - grown, End: r.End - grown}, true
		case r.Start < w.End:
			return source.Range{}, false
		}
		grown = w.End - order[i].Range.End
	}
	return source.Range{Start: r.Start - grown, End: r.End - grown}, true
}
