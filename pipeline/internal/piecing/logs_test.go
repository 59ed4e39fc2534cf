package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func logBlock(c0, g measure.Length, rounds int) piecing.Logs {
	return piecing.Logs{Centre: box(c0, c0), Widths: [4]measure.Length{g, g, g, g}, Rounds: rounds}
}

// Centre 2 in, logs 1 in, 4 rounds: finishes 10 in; the logs total 96 in
// finished and 104 in cut, either way of sewing. Derived from geometry.
func TestLogBlock(t *testing.T) {
	for _, courthouse := range []bool{false, true} {
		l := logBlock(2*inch, inch, 4)
		l.Courthouse = courthouse
		wantBox(t, "block", l.Finished(), 10*inch, 10*inch)
		list := l.List(quarter)
		var finished, cut measure.Surd
		for _, log := range list {
			finished, cut = finished.Add(log.Finished), cut.Add(log.Cut)
		}
		wantSurd(t, "logs finished", finished, 96*inch)
		wantSurd(t, "logs cut", cut, 104*inch)
		if len(list) != 16 || list[0].CutWidth != inch*3/2 {
			t.Errorf("%d logs, cut %v wide", len(list), list[0].CutWidth.Format(measure.In))
		}
	}
}

// Round j of a spiral is c0+(2j-2)g, c0+(2j-1)g twice, c0+2jg; of courthouse
// steps c0+(2j-2)g twice and c0+2jg twice; each sums to 4c0 + (8j-4)g. Derived
// from geometry.
func TestLogRounds(t *testing.T) {
	const c0, g = inch * 5 / 2, inch * 3 / 4
	for _, courthouse := range []bool{false, true} {
		l := logBlock(c0, g, 5)
		l.Courthouse = courthouse
		list := l.List(quarter)
		for j := measure.Length(1); j <= 5; j++ {
			first, middle, last := c0+(2*j-2)*g, c0+(2*j-1)*g, c0+2*j*g
			want := []measure.Length{first, middle, middle, last}
			if courthouse {
				want = []measure.Length{first, first, last, last}
			}
			var sum measure.Surd
			for i, log := range list[4*(j-1) : 4*j] {
				wantSurd(t, "log", log.Finished, want[i])
				wantSurd(t, "log, cut", log.Cut, want[i]+2*quarter)
				if log.Round != int(j) {
					t.Errorf("log of round %d in round %d", log.Round, j)
				}
				sum = sum.Add(log.Finished)
			}
			wantSurd(t, "round", sum, 4*c0+(8*j-4)*g)
		}
	}
}

func TestLogOrder(t *testing.T) {
	const top, right, bottom, left = piecing.TopSide, piecing.RightSide, piecing.BottomSide, piecing.LeftSide
	for _, c := range []struct {
		first              piecing.Side
		courthouse, handed bool
		want               [4]piecing.Side
	}{
		{top, false, false, [4]piecing.Side{top, right, bottom, left}},
		{bottom, false, false, [4]piecing.Side{bottom, left, top, right}},
		{right, false, false, [4]piecing.Side{right, bottom, left, top}},
		{left, false, false, [4]piecing.Side{left, top, right, bottom}},
		{top, false, true, [4]piecing.Side{top, left, bottom, right}},
		{left, false, true, [4]piecing.Side{left, bottom, right, top}},
		{right, false, true, [4]piecing.Side{right, top, left, bottom}},
		{top, true, false, [4]piecing.Side{top, bottom, right, left}},
		{left, true, false, [4]piecing.Side{left, right, top, bottom}},
		{right, true, false, [4]piecing.Side{right, left, bottom, top}},
	} {
		l := logBlock(2*inch, inch, 1)
		l.First, l.Courthouse, l.LeftHanded = c.first, c.courthouse, c.handed
		for i, log := range l.List(quarter) {
			if log.Side != c.want[i] {
				t.Errorf("first %v, courthouse %v, left-handed %v: log %d on side %v, want %v",
					c.first, c.courthouse, c.handed, i, log.Side, c.want[i])
			}
		}
	}
}

// What logs and centre cover is the block, for oblong centres and logs of two
// widths too; no rounds are the centre alone.
func TestLogAreas(t *testing.T) {
	l := piecing.Logs{
		Centre: box(3*inch, 2*inch), Rounds: 3,
		Widths: [4]measure.Length{inch, inch / 2, inch, inch / 2},
	}
	area := measure.Area(l.Centre.Width, l.Centre.Height)
	for _, log := range l.List(quarter) {
		area = area.Add(log.Finished.Mul(l.Widths[log.Side].Surd()))
	}
	f := l.Finished()
	wantBox(t, "off-centre block", f, 6*inch, 8*inch)
	if !area.Equal(measure.Area(f.Width, f.Height)) {
		t.Errorf("pieces cover %s", measure.FormatArea(area, measure.In))
	}
	none := logBlock(2*inch, inch, 0)
	if wantBox(t, "centre", none.Finished(), 2*inch, 2*inch); len(none.List(quarter)) != 0 {
		t.Error("logs in no rounds")
	}
}
