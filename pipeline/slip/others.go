package slip

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/schema"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// exchange tries pairs the other way round.
func (s *search) exchange() {
	for _, v := range s.values {
		if v.length == 0 || !v.pair() || v.In.Items[0].Text == v.In.Items[1].Text {
			continue
		}
		a, b := v.In.Items[0].Range, v.In.Items[1].Range
		whole := v.In.Range
		text := func(from, to int) string { return s.File.Slice(source.Range{Start: from, End: to}) }
		exchanged := text(whole.Start, a.Start) + s.File.Slice(b) + text(a.End, b.Start) + s.File.Slice(a) + text(b.End, whole.End)
		s.try(candidate{of: v, edits: []source.Edit{amend.Of(s.File, s.Tree).Put(whole, exchanged)},
			is: s.box(v.In.Items[1], v.In.Items[0]), weight: 1, solved: true, root: true})
	}
}

// box prints two lengths as the sides of a piece.
func (s *search) box(w, h *jsontree.Node) string {
	a, _ := s.sizeOf(w)
	b, _ := s.sizeOf(h)
	return measure.FormatBox(a.Surd(), b.Surd(), s.Plan.Units)
}

// trim tries to trim what is not trimmed: to the size that the plan gives for it, and
// to the size at which what differs would agree.
func (s *search) trim() {
	for _, m := range members(s.Tree.Get("parts")) {
		for _, op := range members(m.Value) {
			keys := []string{"parts", m.Key, op.Key}
			means, ok := schema.MayHave(keys, "trim")
			if !ok || op.Value.Kind != jsontree.Object || op.Value.Get("trim") != nil || op.Value.Get("trim_down_to") != nil {
				continue
			}
			s.trimPart(m.Key, op.Value, means == "pair")
		}
	}
}

func members(n *jsontree.Node) []jsontree.Member {
	if n == nil {
		return nil
	}
	return n.Members
}

func (s *search) trimPart(name string, op *jsontree.Node, pair bool) {
	both := 2 * s.Plan.Sizes[0].Seam.Allowance.Length
	add := func(w, h measure.Length) (gaps, bool) {
		width, height := amend.LengthLike("", w, s.Plan.Units), amend.LengthLike("", h, s.Plan.Units)
		text := width
		if pair {
			text = "[" + width + ", " + height + "]"
		}
		e, ok := amend.Of(s.File, s.Tree).Add(op.Range, "trim", text)
		if !ok || w <= 0 || h <= 0 || width == "" || pair && height == "" {
			return nil, false
		}
		is := w.Format(s.Plan.Units)
		if pair {
			is = w.Bare(s.Plan.Units) + " x " + h.Format(s.Plan.Units)
		}
		v := &value{Value: schema.Value{Node: op, In: op, Keys: []string{"parts", name, "trim"}}, key: "trim"}
		t, ok := s.try(candidate{of: v, edits: []source.Edit{e}, is: is, weight: 2 + 2*s.fineness(w), solved: true, root: true})
		return gapsOf(t.Sizes), ok
	}
	if f := op.Get("finished"); f != nil {
		w, h := s.sizeOf(f)
		add(w+both, h+both)
		return
	}
	for _, size := range s.Sizes {
		p := size.Part(name)
		if p == nil || !p.Known {
			continue
		}
		at := p.Width.FloorTo(s.step())
		moved, ok := add(at, p.Height.FloorTo(s.step()))
		if !ok || pair {
			return
		}
		// It was p.Width without a trim: the gap moves by as much as is trimmed off.
		by := at.Surd().Sub(p.Width)
		if by.IsZero() {
			at -= s.step()
			by = s.step().Surd().Neg()
			if moved, ok = add(at, at); !ok {
				return
			}
		}
		for _, x := range s.roots(moved, p.Width, by) {
			w := x.NearestTo(s.step())
			add(w, w)
		}
		return
	}
}

// sizeOf reads a length or a pair.
func (s *search) sizeOf(n *jsontree.Node) (w, h measure.Length) {
	read := func(n *jsontree.Node) measure.Length {
		x, err := measure.ParseLength(n.Text, s.Plan.Units)
		if err != nil {
			return 0
		}
		return x
	}
	if n.Kind == jsontree.Array && len(n.Items) == 2 {
		return read(n.Items[0]), read(n.Items[1])
	}
	return read(n), read(n)
}

// mostTurns is how many turned cells are tried.
const mostTurns = 12

// turn tries other turns of the cells that are turned, where something does not fit.
func (s *search) turn() {
	if _, fits := s.evidence(s.Found, 0); fits {
		return
	}
	n := 0
	for _, v := range s.values {
		if v.Means != "turn" || n == mostTurns {
			continue
		}
		n++
		for _, turn := range []string{"0", "90", "180", "270"} {
			if turn != v.text {
				s.try(candidate{of: v, edits: []source.Edit{s.put(v, turn)}, is: turn, weight: 2, solved: true, root: true})
			}
		}
	}
}

// neighbours tries, of every value that an error changes with, what it is easily
// mistaken for.
func (s *search) neighbours() {
	for _, v := range s.values {
		if !v.relevant {
			continue
		}
		s.likely(v)
	}
}

// likely tries what a value is easily mistaken for.
func (s *search) likely(v *value) {
	for _, text := range transposed(v.Node.Text) {
		if v.length > 0 {
			if x, err := measure.ParseLength(text, s.Plan.Units); err == nil {
				s.tryLength(v, x)
			}
		} else if n, err := strconv.ParseInt(text, 10, 32); err == nil {
			s.tryCount(v, n)
		}
	}
	if v.length > 0 {
		for _, x := range s.mistaken(v) {
			s.tryLength(v, x)
		}
	}
}

// mistaken are the lengths that one is easily written for: those of its fellows, by a
// seam allowance or two more or less, by a step, and other fractions.
func (s *search) mistaken(v *value) []measure.Length {
	a := s.Plan.Sizes[0].Seam.Allowance.Length
	unit := s.Plan.Units.Length()
	whole := measure.FloorTo(v.length, unit)
	all := []measure.Length{v.length + 2*a, v.length - 2*a, v.length + a, v.length - a, v.length - s.step()}
	for _, f := range s.values {
		if f.key == v.key && f.length > 0 {
			all = append(all, f.length)
		}
	}
	for k := range measure.Length(8) {
		all = append(all, whole+k*unit/8)
	}
	return append(all, v.length+unit, v.length-unit)
}

// transposed are the texts in which two digits that stand together and differ have
// changed places.
func transposed(text string) []string {
	digit := func(b byte) bool { return b >= '0' && b <= '9' }
	var all []string
	for i := 0; i+1 < len(text); i++ {
		if a, b := text[i], text[i+1]; digit(a) && digit(b) && a != b {
			all = append(all, text[:i]+string([]byte{b, a})+text[i+2:])
		}
	}
	return all
}

// slip is what is told of a candidate.
func (s *search) slip(c candidate) Slip {
	v := c.of
	what, was := v.name(), v.Node.Text
	out := Slip{At: v.Node.Range, Is: c.is, Edits: c.edits}
	switch {
	case v.Node == v.In: // the trim that is missing
		out.At, out.Says, out.Does = v.Node.Open(), fmt.Sprintf("%q is not trimmed", v.Keys[1]), fmt.Sprintf("add %s to %q", c.edits[0].Shown, v.Keys[1])
		out.Is = "a trim to " + c.is
	case v.length > 0 && c.edits[0].Range != v.Node.Range: // the pair
		out.At, was = v.In.Range, s.box(v.In.Items[0], v.In.Items[1])
		what = strings.Replace(what, "the width", "the size", 1)
	case v.length > 0:
		was = v.length.Format(s.Plan.Units)
	case v.named():
		was = fmt.Sprintf("%q", was)
	}
	if out.Says == "" {
		out.Says = what + " " + v.verb() + " " + was + " here"
		out.Does = "write " + c.edits[0].Shown + " for " + what
	}
	for _, f := range s.Found {
		if !c.left.HoldsAsGrave(f) {
			out.Clear = append(out.Clear, f)
		}
	}
	agreeing, sizes := s.gaps.agree(c.now)
	figures, fits := s.evidence(out.Clear, agreeing)
	out.Figures, out.Sewn, out.Sizes = figures, !fits, s.sizesOf(out.Clear, sizes)
	return out
}

// sizesOf are the sizes of findings, and those given, in the plan's order.
func (s *search) sizesOf(found []diag.Finding, known []string) []string {
	in := map[string]bool{}
	for _, size := range known {
		in[size] = true
	}
	for _, f := range s.speaking(found) {
		for _, size := range f.Sizes {
			in[size] = true
		}
	}
	var all []string
	for i := range s.Plan.Sizes {
		if name := s.Plan.Sizes[i].Name.Text; in[name] {
			all = append(all, name)
		}
	}
	return all
}
