package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// 9 in blocks, 4 by 5 on point: 32 blocks, 12 of them between the full rows,
// 14 sides from 4 squares, 50.911688 x 63.639610 in. Derived from geometry.
func TestOnPointCounts(t *testing.T) {
	o := piecing.OnPoint{Columns: 4, Rows: 5, Block: (9 * inch).Surd()}
	for _, c := range []struct {
		what      string
		got, want int64
	}{
		{"blocks", o.Blocks(), 32}, {"alternates", o.Alternates(), 12},
		{"sides", o.SideTriangles(), 14}, {"side squares", o.SideSquares(), 4},
		{"corners", o.CornerTriangles(), 4}, {"corner squares", o.CornerSquares(), 2},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, want %d", c.what, c.got, c.want)
		}
	}
	f := o.Finished()
	decimals(t, "width", f.Width, "50.911688")
	decimals(t, "height", f.Height, "63.639610")
	single := piecing.OnPoint{Columns: 1, Rows: 1, Block: o.Block}
	if single.Blocks() != 1 || single.SideSquares() != 0 {
		t.Errorf("one block: %d blocks, %d side squares", single.Blocks(), single.SideSquares())
	}
}

// Setting squares at a quarter-inch seam by block: exact, as the trade's rule
// has it (diagonal + 1 1/4 in, half the diagonal + 7/8 in, up to 1/8 in), and
// the mark that suffices. Derived from geometry; the constants are widely
// published, no authority.
func TestSettingTable(t *testing.T) {
	trade, _ := piecing.TradeAt(quarter)
	for _, c := range []struct {
		block              measure.Length
		diagonal           string
		side, sideTrade    string
		suffices           string
		corner, cornerMark string
	}{
		{6, "8.4853", "9.6924", "9 3/4", "9 3/4", "5.0962", "5 1/8"},
		{8, "11.3137", "12.5208", "12 5/8", "12 5/8", "6.5104", "6 5/8"},
		{9, "12.7279", "13.9350", "14", "14", "7.2175", "7 1/4"},
		{10, "14.1421", "15.3492", "15 1/2", "15 3/8", "7.9246", "8"},
		{12, "16.9706", "18.1777", "18 1/4", "18 1/4", "9.3388", "9 3/8"},
		{14, "19.7990", "21.0061", "21 1/8", "21 1/8", "10.7530", "10 7/8"},
		{15, "21.2132", "22.4203", "22 1/2", "22 1/2", "11.4602", "11 1/2"},
		{16, "22.6274", "23.8345", "24", "23 7/8", "12.1673", "12 1/4"},
	} {
		b := (c.block * inch).Surd()
		set := piecing.SettingTriangles(b, quarter, eighth)
		decimals(t, "diagonal", b.Mul(measure.Root2()), c.diagonal)
		decimals(t, "side", set.Side.Exact, c.side)
		decimals(t, "corner", set.Corner.Exact, c.corner)
		marks(t, "side, trade", trade.Side(b), c.sideTrade)
		marks(t, "side", set.Side.Cut, c.suffices)
		marks(t, "corner, trade", trade.Corner(b), c.cornerMark)
		marks(t, "corner", set.Corner.Cut, c.cornerMark)
	}
}

// Setting squares are too tall to go twice into 40 in: two of 24 in need 48.
func TestSettingSquareOfLargeBlock(t *testing.T) {
	trade, _ := piecing.TradeAt(quarter)
	if got := piecing.PerStrip(40*inch, trade.Side((16 * inch).Surd())); got != 1 {
		t.Errorf("%d from a strip", got)
	}
}

// Side squares 1 in over and corner squares 1 in over let the points float by
// half an inch; a short one lets nothing float. Derived from geometry.
func TestFloatingSetting(t *testing.T) {
	o := piecing.OnPoint{Columns: 2, Rows: 3, Block: (6 * inch).Surd().Mul(measure.Root2())}
	set := piecing.SettingTriangles(o.Block, quarter, eighth)
	side, corner := set.Side.Exact.CeilTo(tick), set.Corner.Exact.CeilTo(tick)
	float := set.Float(side+inch, corner+2*inch)
	if float.Cmp((inch/2).Surd()) < 0 || float.Cmp((inch/2+tick).Surd()) >= 0 {
		t.Errorf("floats %v", float)
	}
	if f := set.Float(side-tick, corner+inch); !f.IsZero() {
		t.Errorf("a side a tick short floats %v", f)
	}
	wantBox(t, "tight", o.Finished(), 24*inch, 36*inch)
	wantBox(t, "floating", o.Floating((inch / 2).Surd()), 25*inch, 37*inch)
}

// A tube square's block on point can finish on the ruler: 6*sqrt2 in blocks
// are 12 in across, exactly.
func TestOnPointOfDiagonalBlocks(t *testing.T) {
	o := piecing.OnPoint{Columns: 3, Rows: 4, Block: (6 * inch).Surd().Mul(measure.Root2())}
	wantBox(t, "top", o.Finished(), 36*inch, 48*inch)
}

// 3 x 4 blocks of 10 in, sashes 2 in with the outer ring: 38 x 50 in, 31
// sashes, 20 cornerstones; without the ring 17 and 6. Derived from geometry.
func TestSashing(t *testing.T) {
	for _, c := range []struct {
		outer                         bool
		wide, high                    measure.Length
		upright, level, sashes, stone int64
	}{
		{true, 38 * inch, 50 * inch, 16, 15, 31, 20},
		{false, 34 * inch, 46 * inch, 8, 9, 17, 6},
	} {
		g := piecing.Sashing{Rows: 4, Columns: 3, Block: box(10*inch, 10*inch), Width: 2 * inch, Outer: c.outer}
		wantBox(t, "top", g.Finished(), c.wide, c.high)
		if g.Upright() != c.upright || g.Level() != c.level || g.Sashes() != c.sashes || g.Cornerstones() != c.stone {
			t.Errorf("outer %v: %d upright, %d level, %d cornerstones", c.outer, g.Upright(), g.Level(), g.Cornerstones())
		}
	}
	g := piecing.Sashing{Rows: 4, Columns: 3, Block: box(10*inch, 8*inch), Width: 2 * inch}
	upright, level, stone := g.Pieces(quarter)
	wantBox(t, "upright", upright, inch*5/2, inch*17/2)
	wantBox(t, "level", level, inch*21/2, inch*5/2)
	wantBox(t, "cornerstone", stone, inch*5/2, inch*5/2)
}

// Round a 30 x 40 in inner quilt, 3 in wide: corner squares leave strips of
// W+2s and H+2s and squares g+2s; mitres need W+2g+1.207107 in. Derived from geometry.
func TestBorderKinds(t *testing.T) {
	inner := box(inch*61/2, inch*81/2)
	squares := piecing.CorneredBorder(inner, 3*inch, quarter)
	wantSurd(t, "ends", squares.Ends, inch*61/2)
	wantSurd(t, "sides", squares.Sides, inch*81/2)
	wantSurd(t, "all", squares.Needed, 142*inch)
	marks(t, "squares", squares.Cut, "3 1/2")
	wantBox(t, "outer", squares.Outer, inch*73/2, inch*93/2)

	mitred := piecing.MitredBorder(inner, 3*inch, quarter)
	decimals(t, "ends", mitred.Ends.Sub((36 * inch).Surd()), "1.207107")
	decimals(t, "sides", mitred.Sides.Sub((46 * inch).Surd()), "1.207107")
	if !mitred.Needed.Equal(mitred.Ends.Add(mitred.Sides).MulInt(2)) {
		t.Error("the four strips are not the sum of the four strips")
	}
}

// 198 in of border cut 5 1/2 in: continuous and diagonal six strips, straight
// five exactly. Side by side, four sides of 49 1/2 in need two strips each.
func TestJoinedPerSide(t *testing.T) {
	var sides []measure.Surd
	for range 4 {
		sides = append(sides, (inch * 99 / 2).Surd())
	}
	for _, loss := range []measure.Length{inch * 11 / 2, 2 * quarter} {
		k, ok := piecing.JoinedPerSide(sides, 40*inch, loss)
		one, _ := piecing.JoinedStrips(measure.Sum(sides...), 40*inch, loss)
		if !ok || k != 8 || one > k {
			t.Errorf("loss %v: %d per side, %d continuous", loss.Format(measure.In), k, one)
		}
	}
	if k, ok := piecing.JoinedPerSide(sides, inch, inch); ok || k != 0 {
		t.Error("strips no longer than their joins reach")
	}
}

// A pieced border's unit divides the side or leaves a remainder, exactly.
func TestPiecedCount(t *testing.T) {
	unit := (4 * inch).Surd()
	for _, c := range []struct {
		side  measure.Length
		count int64
		rest  measure.Length
	}{
		{36 * inch, 9, 0}, {36*inch - tick, 8, 4*inch - tick}, {36*inch + tick, 9, tick}, {3 * inch, 0, 3 * inch},
	} {
		count, rest := piecing.PiecedCount(c.side.Surd(), unit)
		if wantSurd(t, "rest", rest, c.rest); count != c.count {
			t.Errorf("%v: %d units", c.side.Format(measure.In), count)
		}
	}
	// On point nothing divides: 4 blocks of 9 in are 50.911688 in.
	top := piecing.OnPoint{Columns: 4, Rows: 5, Block: (9 * inch).Surd()}.Finished()
	if count, rest := piecing.PiecedCount(top.Width, unit); count != 12 || rest.IsZero() {
		t.Errorf("%d and %v", count, rest)
	}
	if count, rest := piecing.PiecedCount(unit, measure.Surd{}); count != 0 || !rest.Equal(unit) {
		t.Errorf("units of no length: %d, %v", count, rest)
	}
}

// A spacer border brings both sides to whole units when they differ by whole
// units: 50 x 62 in to 52 x 64 with 1 in all round for 4 in units.
func TestSpacer(t *testing.T) {
	unit := (4 * inch).Surd()
	for _, c := range []struct {
		wide, high, spacer measure.Length
		ok                 bool
	}{
		{50 * inch, 62 * inch, inch, true},
		{48 * inch, 60 * inch, 0, true},
		{50 * inch, 61 * inch, 0, false},
		{50 * inch, 62*inch + tick, 0, false},
	} {
		g, ok := piecing.Spacer(box(c.wide, c.high), unit)
		if ok != c.ok {
			t.Errorf("%v x %v: %v", c.wide.Format(measure.In), c.high.Format(measure.In), ok)
		}
		if ok {
			wantSurd(t, "spacer", g, c.spacer)
		}
	}
	// On point 3 by 3, the irrational remainder is one spacer, exactly.
	top := piecing.OnPoint{Columns: 3, Rows: 3, Block: (9 * inch).Surd()}.Finished()
	g, ok := piecing.Spacer(top, unit)
	if !ok || !top.Width.Add(g.MulInt(2)).Equal((40 * inch).Surd()) {
		t.Errorf("spacer %v, %v", g, ok)
	}
	if g, ok := piecing.Spacer(top, measure.Surd{}); ok || !g.IsZero() {
		t.Error("units of no length divide a side")
	}
}

// A panel measured 23 1/4 x 42 1/2 in finishes 22 3/4 x 42; brought to 24 x 45
// its coping strips finish 5/8 and 1 1/2 in. Invented panel.
func TestCoping(t *testing.T) {
	sides, ends := piecing.Coping(box(inch*93/4, inch*85/2), box(24*inch, 45*inch), quarter)
	wantSurd(t, "sides", sides, inch*5/8)
	wantSurd(t, "ends", ends, inch*3/2)
	if sides, _ := piecing.Coping(box(25*inch, 25*inch), box(24*inch, 24*inch), quarter); sides.Sign() >= 0 {
		t.Errorf("too large a panel: %v", sides)
	}
}

// Four border strips of 6 1/2 in go side by side along 40 in of fabric and
// leave U - 4*border = 14 in; at 10 in they just fit, a tick wider only three
// do, and the shortest needs a length of its own.
func TestLengthwise(t *testing.T) {
	lengths := []measure.Surd{(50 * inch).Surd(), (50 * inch).Surd(), (44 * inch).Surd(), (44 * inch).Surd()}
	for _, c := range []struct {
		cut      measure.Length
		side     int64
		long     measure.Length
		leftOver measure.Length
	}{
		{inch * 13 / 2, 4, 50 * inch, 14 * inch},
		{10 * inch, 4, 50 * inch, 0},
		{10*inch + tick, 3, 94 * inch, 10*inch - 3*tick},
		{20 * inch, 2, 94 * inch, 0},
		{20*inch + tick, 1, 188 * inch, 20*inch - tick},
		{inch, 4, 50 * inch, 36 * inch},
	} {
		l, ok := piecing.LengthwiseStrips(lengths, c.cut, 40*inch)
		if wantSurd(t, "length", l.Length, c.long); !ok || l.Side != c.side || l.LeftOver != c.leftOver {
			t.Errorf("cut %v: %+v, %v", c.cut.Format(measure.In), l, ok)
		}
	}
	if _, ok := piecing.LengthwiseStrips(lengths, 40*inch+tick, 40*inch); ok {
		t.Error("a strip wider than the fabric fits")
	}
	if l, ok := piecing.LengthwiseStrips(nil, inch, 40*inch); !ok || !l.Length.IsZero() {
		t.Errorf("no strips: %+v, %v", l, ok)
	}
}
