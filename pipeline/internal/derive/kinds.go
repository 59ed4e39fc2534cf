package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// The triangles of a tube are cut from its two edges in turn. One whose tip lies
// towards the far edge opens along the near seam, with the sets' near strips
// along its diagonal and the far ones in two corners; the next opens along the
// far seam, with the far strips along it. So half of the squares are of either
// kind, whatever the layout would like. Derived from geometry.

// Look is how the two kinds of squares of a tube compare.
type Look int

// The ways they compare.
const (
	Alike       Look = iota // nothing tells them apart
	AlikeTurned             // one turned by half looks like the other
	Different               // the strips tell them apart, however they are turned
)

// Kinds is the two kinds of squares of a tube: how they compare, and how many of
// each are wanted.
type Kinds struct {
	Look     Look
	Assorted bool  // strips of an assorted precut, which differ though they have one role
	Said     bool  // some place says which kind stands there
	Near     int64 // wanted; the squares that nothing asks a kind of are Free
	Far      int64
	Free     int64
	First    int64 // tubes that are cut with a near square first, the others with a far one
}

// Matter reports whether one kind may not stand for the other.
func (k Kinds) Matter() bool { return k.Look == Different || k.Assorted && k.Said }

// TakeTurns reports whether near and far squares stand in turn, for want of any
// word where either goes.
func (k Kinds) TakeTurns() bool { return k.Look == Different && !k.Said }

// kinds is how many of a part are to be squares of a kind. All others are not
// said; of these, some are free to be either.
type kinds struct{ near, far, free int64 }

// want counts n places that say a kind, or none.
func (k *kinds) want(kind plan.SquareKind, n int64) {
	switch kind {
	case plan.NearKind:
		k.near = min(k.near+n, countless)
	case plan.FarKind:
		k.far = min(k.far+n, countless)
	}
}

// add counts what one of a number of things says.
func (k *kinds) add(of kinds, times int64) {
	k.near = min(k.near+of.near*times, countless)
	k.far = min(k.far+of.far*times, countless)
	k.free = min(k.free+of.free*times, countless)
}

// passKinds tells the one part that a part is made of, of which it stays a
// square, the kinds wanted of it.
func (s *Size) passKinds(p *Part) {
	carrier, ok := p.Room.(Carrier)
	if !ok {
		return
	}
	of := carrier.Carries()
	q := s.byName[of.Part.Text]
	switch {
	case q == nil:
	case of.Kind != plan.EitherKind:
		q.kinds.want(of.Kind, p.Needed)
	default:
		q.kinds.add(p.kinds, 1)
	}
}

// SquareOf is the part, made as a tube, whose opened square a part is, or is made
// of alone with its kind open; nil for any other part.
func (s *Size) SquareOf(p *Part) *Part {
	for range len(s.Of.Parts) + 1 { // a ring of parts has no end
		if p == nil {
			return nil
		}
		if _, ok := p.Room.(twofold); ok {
			return p
		}
		carrier, ok := p.Room.(Carrier)
		if !ok || carrier.Carries().Kind != plan.EitherKind {
			return nil
		}
		p = s.byName[carrier.Carries().Part.Text]
	}
	return nil
}

// Square is SquareOf where the tube could be worked out.
func (s *Size) Square(p *Part) *Part {
	if q := s.SquareOf(p); q != nil && q.Tube != nil {
		return q
	}
	return nil
}

// settleKinds works out how many of either kind a tube has to give. A place that
// says nothing takes turns with the others or, where any of them says its kind,
// is near.
func (p *Part) settleKinds() {
	t, k := p.Tube, p.kinds
	t.Kinds = Kinds{Look: p.look(), Assorted: t.assorted(), Said: k.near+k.far > 0}
	free := min(k.free, p.Needed-k.near-k.far)
	unsaid := p.Needed - k.near - k.far - free
	switch {
	case !t.Kinds.Matter():
		t.Kinds.Free = p.Needed
	case t.Kinds.Said:
		t.Kinds.Near, t.Kinds.Far, t.Kinds.Free = k.near+unsaid, k.far, free
	default:
		t.Kinds.Near, t.Kinds.Far = piecing.Orientations(unsaid)
		t.Kinds.Free = free
	}
}

// CountAt is how many tubes there have to be if each gave so many squares.
func (t *Tube) CountAt(each int64) int64 {
	return piecing.TubesFor(t.Kinds.Near, t.Kinds.Far, t.Kinds.Free, each)
}

// Makes is how many squares of either kind a number of tubes gives, begun so
// that what is wanted comes out if it can.
func (t *Tube) Makes(tubes int64) (near, far int64) {
	near, far, _ = t.MakesAt(tubes, t.Yield.Each)
	return near, far
}

// MakesAt is the same where each tube gives so many squares; ok is false where
// what is wanted does not come out.
func (t *Tube) MakesAt(tubes, each int64) (near, far int64, ok bool) {
	first, ok := piecing.Starts(tubes, t.Kinds.Near, t.Kinds.Far, each)
	more, less := piecing.Orientations(each)
	near, far = first*more+(tubes-first)*less, first*less+(tubes-first)*more
	return near, far, ok && near+far >= t.Kinds.Near+t.Kinds.Far+t.Kinds.Free
}

// Leading is the kind most wanted, and how many of it.
func (k Kinds) Leading() (plan.SquareKind, int64) {
	if k.Far > k.Near {
		return plan.FarKind, k.Far
	}
	return plan.NearKind, k.Near
}

func (t *Tube) assorted() bool {
	for _, strips := range t.Lie {
		for _, strip := range strips {
			if strip.Fabric.Assorted {
				return true
			}
		}
	}
	return false
}

// Opened is a square of a kind as it is trimmed, seen from its right side: the
// first set above the diagonal from the bottom left. Patches are in the fabrics
// that number gives. ok is false where there is none as large.
func (p *Part) Opened(kind plan.SquareKind, number func(*Fabric) int) (w piecing.Patchwork, ok bool) {
	t := p.Tube
	if t.Yield.Each == 0 {
		return w, false
	}
	var layers [2]piecing.Patchwork
	for i, strips := range t.Lie {
		layers[i] = Sewn(strips, t.Yield.Length.Surd(), t.Sets[i].Seam.Allowance.Length, number)
		if kind == plan.FarKind {
			layers[i] = layers[i].Turned(2)
		}
	}
	w = piecing.DraftTubeSquare(t.Tube, layers[0], layers[1])
	size := w.Size()
	if size.Width.Cmp(p.Width) < 0 || size.Height.Cmp(p.Height) < 0 {
		return w, false
	}
	return w.Trimmed(p.Box), true
}

// Sewn is strips side by side, the first at the top, in the fabrics that number
// gives.
func Sewn(strips []Strip, length measure.Surd, seam measure.Length, number func(*Fabric) int) piecing.Patchwork {
	var widths []measure.Length
	var fabrics []int
	for _, strip := range strips {
		widths = append(widths, strip.Width)
		fabrics = append(fabrics, number(strip.Fabric))
	}
	return piecing.StripSet(widths, length, seam).InFabrics(fabrics...)
}

// look compares the two kinds by what they show. Sets that read the same from
// both ends are the same turned by half, and so then are the squares: nothing
// has to be drawn.
func (p *Part) look() Look {
	if mirrored(p.Tube.Lie[0]) && mirrored(p.Tube.Lie[1]) {
		return Alike
	}
	numbers := map[*Fabric]int{}
	number := func(f *Fabric) int {
		if _, known := numbers[f]; !known {
			numbers[f] = len(numbers)
		}
		return numbers[f]
	}
	near, ok := p.Opened(plan.NearKind, number)
	far, known := p.Opened(plan.FarKind, number)
	switch {
	case !ok || !known || near.LooksLike(far):
		return Alike // or none as large, which is another matter
	case near.LooksLike(far.Turned(2)):
		return AlikeTurned
	}
	return Different
}

// mirrored reports whether strips have the same fabrics and widths from the last to
// the first.
func mirrored(strips []Strip) bool {
	for i, strip := range strips[:len(strips)/2] {
		if other := strips[len(strips)-1-i]; strip.Fabric != other.Fabric || strip.Width != other.Width {
			return false
		}
	}
	return true
}
