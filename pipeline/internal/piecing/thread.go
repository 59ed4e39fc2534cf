package piecing

import "yardproof/schema/measure"

// Position is where a thread runs in the machine.
type Position string

// The positions.
const (
	Needle Position = "needle"
	Bobbin Position = "bobbin"
	Looper Position = "looper"
)

// Evidence is how well a figure is supported.
type Evidence string

// The kinds of evidence of thread figures.
const (
	Published Evidence = "published"
	Estimate  Evidence = "estimate, not published"
	Memory    Evidence = "from memory"
)

// ThreadShare is a position's part of all thread of a seam.
type ThreadShare struct {
	Position Position
	Threads  int64        // so many threads run there
	Part     measure.Surd // of the total, for all of them together
}

// StitchClass is how much thread a stitch class of ISO 4915 takes. Ratios
// depend on stitch length, thickness and tension: measure once, by unpicking
// 15 cm, and put that in place of Ratio.
type StitchClass struct {
	Class  string       // ISO 4915 number
	Name   string       // what the number means
	Ratio  measure.Surd // thread to seam, all threads together
	Shares []ThreadShare
	// How well Ratio and Shares are supported.
	RatioFrom, SharesFrom Evidence
}

// StitchClasses is the default figures, in order of class. 301 and 401, with
// their shares (401 is 40/60 in another bulletin), are in thread makers' and
// textile-engineering bulletins; 503, 504, 512 and 516 in a published
// consumption table, their shares from memory. For 514 no published figure was
// found: 17 is the three-thread formula with a second needle (OverlockRatio),
// its shares from memory.
func StitchClasses() []StitchClass {
	return []StitchClass{
		class("301", "lockstitch", ratio(5, 2), shares(Bobbin, 50, 1, 1), Published, Published),
		class("401", "two-thread chain stitch", ratio(11, 2), shares(Looper, 25, 1, 1), Published, Published),
		class("503", "two-thread overedge", ratio(12, 1), shares(Looper, 55, 1, 1), Published, Memory),
		class("504", "three-thread overedge", ratio(14, 1), shares(Looper, 20, 1, 2), Published, Memory),
		class("512", "four-thread mock safety", ratio(18, 1), shares(Looper, 25, 2, 2), Published, Memory),
		class("514", "four-thread overedge", ratio(17, 1), shares(Looper, 25, 2, 2), Estimate, Memory),
		class("516", "five-thread safety", ratio(20, 1), shares(Looper, 20, 2, 3), Published, Memory),
	}
}

func ratio(num, den int64) measure.Surd { return measure.Rational(num, den) }

func class(number, name string, r measure.Surd, s []ThreadShare, rFrom, sFrom Evidence) StitchClass {
	return StitchClass{number, name, r, s, rFrom, sFrom}
}

// shares is needles with so many hundredths of the thread, and the rest below.
func shares(below Position, percent, needles, others int64) []ThreadShare {
	return []ThreadShare{
		{Needle, needles, ratio(percent, 100)},
		{below, others, ratio(100-percent, 100)},
	}
}

// StitchClassOf is the default figures for a class of ISO 4915.
func StitchClassOf(number string) (StitchClass, bool) {
	for _, c := range StitchClasses() {
		if c.Class == number {
			return c, true
		}
	}
	return StitchClass{}, false
}

// ThreadNeed is the thread that one position takes.
type ThreadNeed struct {
	Position Position
	Threads  int64
	All      measure.Surd // length for all its threads
	Each     measure.Surd // for one of them
}

// Thread is the length of thread for a length of seam, with waste as a
// fraction (10 to 20 % in bulletins, an input): seam * ratio * (1 + waste), and
// how it divides between the positions. Seams count once, whatever their
// layers.
func (c StitchClass) Thread(seam, waste measure.Surd) (total measure.Surd, needs []ThreadNeed) {
	total = seam.Mul(c.Ratio).Mul(one().Add(waste))
	for _, share := range c.Shares {
		all := total.Mul(share.Part)
		needs = append(needs, ThreadNeed{share.Position, share.Threads, all, all.DivInt(share.Threads)})
	}
	return total, needs
}

// Spools is how many spools, cones or bobbins of a length the position takes,
// rounded up for each of its threads: each thread runs from its own. Total
// length over cone length is wrong for an overlock. A length of none gives 0.
func (n ThreadNeed) Spools(length measure.Length) int64 {
	if length <= 0 {
		return 0
	}
	return n.Threads * measure.CeilDiv(n.Each, length.Surd())
}

// RowSeams is the seam length of parts sewn into rows and the rows sewn
// together, raw edge to raw edge: in each row its height for every join, and
// the width for every join of rows. The joins of a slanted row, which is of
// 60-degree shapes, are its height x 2/sqrt3 long on the line of stitching. Derived from geometry.
func RowSeams(rows [][]Box, s measure.Length, slanted func(row int) bool) measure.Surd {
	a := Assemble(rows, s)
	var seams measure.Surd
	for r, row := range rows {
		join := a.RowHeights[r]
		if slanted(r) {
			join = join.MulInt(2).Div(measure.Root3())
		}
		seams = seams.Add(join.MulInt(int64(max(0, len(row)-1))))
	}
	return seams.Add(a.Width.MulInt(int64(max(0, len(rows)-1))))
}

// SetSeams is the seam length of a strip set of n strips of length L:
// (n-1)*L. A tube of two sets has two seams more.
func SetSeams(n int64, l measure.Length) measure.Length {
	return measure.Length(max(0, n-1)) * l
}
