package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Thread is the thread of a size.
type Thread struct {
	Uses      []ThreadUse // by class, quilting last
	Unknown   []string    // parts whose seams cannot be told, so that the thread is more than Uses say
	Unclassed measure.Surd
}

// ThreadUse is the thread of all seams of one stitch class.
type ThreadUse struct {
	piecing.StitchClass
	Quilting bool // the quilting lines
	Own      bool // the ratio is the plan's or the project's
	Seams    []SeamLength
	Seam     measure.Surd // their sum
	Total    measure.Surd // with waste
	Needs    []ThreadNeed
}

// ThreadNeed is one position's thread and what it is bought as.
type ThreadNeed struct {
	piecing.ThreadNeed
	On    string         // "spool", "bobbin" or "cone"
	Holds measure.Length // 0 when nobody said
	Count int64          // rounded up for each of the position's threads
}

// sewn derives the thread from the seams.
func (s *Size) sewn() *Thread {
	t := &Thread{}
	if !s.Top.Known {
		return t
	}
	var seams []SeamLength
	seams, t.Unknown = s.seams()
	for _, class := range piecing.StitchClasses() {
		use := ThreadUse{StitchClass: class}
		for _, l := range seams {
			if l.Class == class.Class {
				use.Seams = append(use.Seams, l)
				use.Seam = use.Seam.Add(l.Length)
			}
		}
		if use.Seam.Sign() > 0 {
			t.Uses = append(t.Uses, s.used(use))
		}
	}
	for _, l := range seams {
		if l.Class == "" {
			t.Unclassed = t.Unclassed.Add(l.Length)
		}
	}
	if q := s.Of.Thread.Quilting; q.Length > 0 {
		lockstitch, _ := piecing.StitchClassOf("301")
		t.Uses = append(t.Uses, s.used(ThreadUse{StitchClass: lockstitch, Quilting: true, Seam: q.Surd()}))
	}
	return t
}

// used works out the thread of a use's seams.
func (s *Size) used(use ThreadUse) ThreadUse {
	said := s.Of.Thread
	if own := said.Ratio(use.Class); own != nil {
		use.Ratio, use.Own = measure.FromRat(own), true
	}
	var needs []piecing.ThreadNeed
	use.Total, needs = use.StitchClass.Thread(use.Seam, measure.Rational(said.Waste.BasisPoints, whole))
	for _, n := range needs {
		need := ThreadNeed{ThreadNeed: n}
		need.On, need.Holds = holder(said, use.Class, n.Position)
		need.Count = n.Spools(need.Holds)
		use.Needs = append(use.Needs, need)
	}
	return use
}

// holder is what a position's thread comes on: a lockstitch machine runs from a
// spool and a bobbin, the others from cones.
func holder(said plan.Thread, class string, p piecing.Position) (string, measure.Length) {
	switch {
	case p == piecing.Bobbin:
		return "bobbin", said.Bobbin.Length
	case class == "301":
		return "spool", said.Spool.Length
	}
	return "cone", said.Cone.Length
}

// SeamFigure is the sum of a use's seams.
func (s *Size) SeamFigure(use ThreadUse) figure.F {
	const words = "sum of the seams"
	if use.Quilting {
		q := s.Of.Thread.Quilting
		return figure.Said("", "quilting", q.Length, q.At).InWords(words).Is("seams of stitch class "+use.Class, "quilting")
	}
	var all []figure.F
	for _, l := range use.Seams {
		all = append(all, figure.Given(figure.Length, l.Length, "all seams of it").As("", l.Of))
	}
	return figure.Sum(words, all...).Is("", "seams of stitch class "+use.Class).Telling(all...)
}
