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
	slices.SortStableFunc(order, func(a, b source.Edit) int { return a.Range.Compare(b.Range) })
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

// Then is edits of a text followed by edits of what the first made of it, as edits of
// the text itself. There are none when the second touch what the first wrote.
func Then(first, second []source.Edit) ([]source.Edit, bool) {
	order := slices.Clone(first)
	slices.SortStableFunc(order, func(a, b source.Edit) int { return a.Range.Compare(b.Range) })
	all := slices.Clone(first)
	for _, e := range second {
		r, ok := back(order, e.Range)
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
func back(order []source.Edit, r source.Range) (source.Range, bool) {
	grown := 0
	for _, e := range order {
		wrote := source.Range{Start: e.Range.Start + grown, End: e.Range.Start + grown + len(e.Text)}
		switch {
		case r.End <= wrote.Start:
			return source.Range{Start: r.Start - grown, End: r.End - grown}, true
		case r.Start < wrote.End:
			return source.Range{}, false
		}
		grown += len(e.Text) - e.Range.Len()
	}
	return source.Range{Start: r.Start - grown, End: r.End - grown}, true
}
