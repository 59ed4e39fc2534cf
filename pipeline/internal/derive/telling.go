package derive

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Noted is an operation that has something to say about what its lengths give,
// before it is said how to press.
type Noted interface {
	Notes() []say.Sentence
}

// Fitted is an operation that has something to say about its pieces and what
// comes of them.
type Fitted interface {
	Fit() []say.Sentence
}

// trimmedTo says that a unit is trimmed, where it is.
func trimmedTo(to, downTo plan.Length) say.Sentence {
	if !to.Given() {
		return say.Sentence{}
	}
	return say.That(", trimmed to %s", say.AsThere(to)).And(down(downTo))
}

// trimmedBy is trimmedTo for a unit of two sides.
func trimmedBy(to [2]plan.Length, downTo plan.Length) say.Sentence {
	if !to[0].Given() {
		return say.Sentence{}
	}
	return say.That(", trimmed to %s", say.ThereBy(to[0].Length, to[1])).And(down(downTo))
}

// down says why a unit is trimmed to what it is, where a grid decides it.
func down(to plan.Length) say.Sentence {
	if !to.Given() {
		return say.Sentence{}
	}
	return say.That(", down to the next line of %s", say.Long(to))
}

// names are parts in the order in which they are named.
func names(of []plan.Text) string {
	var all []string
	for _, t := range of {
		all = append(all, t.Text)
	}
	return strings.Join(all, ", ")
}

// listed counts equal neighbours: "2 x navy, white".
func listed(strips []Strip) string {
	var out []string
	for i := 0; i < len(strips); {
		j := i
		for j < len(strips) && strips[j].Fabric == strips[i].Fabric && strips[j].Width == strips[i].Width {
			j++
		}
		name := strips[i].Fabric.Role.Text
		if j-i > 1 {
			name = fmt.Sprintf("%d x %s", j-i, name)
		}
		out = append(out, name)
		i = j
	}
	return strings.Join(out, ", ")
}

// listedPieces counts pieces that are alike.
func listedPieces(pieces []Piece) say.Sentence {
	var out []say.Sentence
	for i := 0; i < len(pieces); {
		c, n := pieces[i], int64(0)
		for ; i < len(pieces) && pieces[i].Fabric == c.Fabric && pieces[i].Width == c.Width && pieces[i].Height == c.Height && pieces[i].What == c.What; i++ {
			n += pieces[i].Count
		}
		size := say.AsCut(c.Width)
		if c.Width != c.Height {
			size = say.CutBy(c.Width, c.Height)
		}
		out = append(out, say.That("%s %s of %s%s", say.Many(n, c.What), size, c.Fabric.Role.Text, Halved(c.Halving)))
	}
	return say.List(" and ", out...)
}

// Halved says how each square is cut into triangles, if it is.
func Halved(h plan.Halving) string {
	switch h {
	case plan.CutOnce:
		return ", each cut once diagonally"
	case plan.CutTwice:
		return ", each cut twice diagonally"
	case plan.Whole:
	}
	return ""
}

// Joining says how strips are joined end to end.
func Joining(j plan.Joins) string {
	if j == plan.Straight {
		return "join the strips straight"
	}
	return "join the strips on the diagonal"
}

// spare says what so many pieces take of a length, and what it leaves.
func spare(what string, y Yield) say.Sentence {
	text := say.That("the %s %s %s of %s: %s to spare", say.Many(y.Each, what), say.Goes(y.Each, "takes", "take"), say.AsCut(y.Used), say.AsThere(y.Length), say.AsThere(y.Rest()))
	if y.Joined < 2 || y.Rest() == 0 {
		return text
	}
	return text.And(say.That(", %s of each set", say.AsThere(y.Slack())))
}

// MirrorNote says how many of a part are mirror images; nothing where none are, or
// where one looks like the part itself.
func (p *Part) MirrorNote() string {
	if p.Mirrored == 0 || !p.Room.Traits().Handed {
		return ""
	}
	note := fmt.Sprintf("%d of them as mirror images", p.Mirrored)
	if p.Unit != nil && p.Unit.Hands {
		return note
	}
	return note + ", sewn the other way round"
}

// KindOf is the kind of a square, to be said after its name.
func KindOf(kind plan.SquareKind) string {
	if kind == plan.EitherKind {
		return ""
	}
	return " (" + kind.String() + ")"
}

// Exchange says of which tubes near and far squares are exchanged.
func (s *Size) Exchange(flips Flips) string {
	var names []string
	for _, p := range s.Parts {
		if p.Tube != nil && flips.Has(p.Tube) {
			names = append(names, p.Name.Text)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return " (near and far " + strings.Join(names, ", ") + " exchanged)"
}

// NameAt is a part at a place: what is exchanged in it, how it is turned. Of a
// square its kind says what is exchanged.
func (s *Size) NameAt(c Placed) string {
	name := c.Part.Text + KindOf(c.Kind)
	if p := s.byName[c.Part.Text]; p != nil && s.Square(p) == nil {
		name += s.Exchange(c.Flips)
	}
	if c.Mirror {
		name += " mirrored"
	}
	if c.Turn == 0 {
		return name
	}
	return fmt.Sprintf("%s turned %d°", name, c.Turn)
}

// Fit is the exact cuts, the error that the trade's cuts leave and what becomes
// of the corners cut away.
func (r unitRoom) Fit() []say.Sentence {
	p := r.p
	if p.Unit == nil {
		return nil
	}
	out := p.Unit.byGeometry()
	if left, ok := p.Left(); ok {
		out = append(out, drafted("wider", "narrower", "row", left.Width, r.s.InRow(p, false))...)
		out = append(out, drafted("higher", "lower", "column", left.Height, r.s.InRow(p, true))...)
	}
	for _, b := range p.Unit.Bonus {
		out = append(out, b.told(p))
	}
	return out
}

// byGeometry are the cut sizes that leave nothing over, of pieces that are cut
// otherwise, and the lines that those go up to.
func (u *Unit) byGeometry() (out []say.Sentence) {
	for _, c := range u.Pieces {
		if c.Width.Surd().Equal(c.Exact.Width) {
			continue
		}
		note := say.That("%s by geometry %s", c.What, say.AsCut(c.Exact.Width))
		switch {
		case c.Said || u.Lines == nil:
		case c.ToMark:
			note = note.And(say.That(", to the nearest mark"))
		default:
			note = note.And(say.That(", up to %s", u.Lines.Told()))
		}
		out = append(out, note)
	}
	return out
}

// Told says which lines a cut goes up to.
func (l *Lines) Told() say.Sentence {
	return say.That("%s lines of %s", l.whose(), say.Long(l.Apart))
}

func (l *Lines) whose() string {
	if l.Ruler != nil {
		return "the ruler's"
	}
	return "the usual"
}

// drafted is the error that one unit has, and what it comes to over all of
// them in the fullest row or column.
func drafted(more, less, line string, left measure.Surd, n int64) []say.Sentence {
	word := more
	switch left.Sign() {
	case 0:
		return nil
	case -1:
		word, left = less, left.Neg()
	}
	note := say.That("comes out %s %s than drafted", say.Long(left), word)
	if n > 1 {
		note = note.And(say.That(", %s over the %d of a %s", say.Long(left.MulInt(n)), n, line))
	}
	return []say.Sentence{note}
}

// told says what becomes of the corners cut away.
func (b Bonus) told(p *Part) say.Sentence {
	count := say.That("%s of corners cut away from the %s squares", say.Many(b.Count*p.Made, "pair"), say.AsCut(b.Square))
	if !p.Unit.Keep {
		return count.And(say.That(": waste"))
	}
	return count.And(say.That(": sew each into a bonus half-square unit, %s unfinished", say.Long(b.Side)))
}
