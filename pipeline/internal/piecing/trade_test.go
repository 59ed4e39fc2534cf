package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// What the trade's figures are larger than geometry asks for. In inches 7/8 and
// 1 1/4 in are widely published, no authority, and safe; a published metric
// tutorial has 2.5 and 3.5 cm at a seam of 0.75 cm, both too little.
// The exact figures, (2 + sqrt2)s and (2 + 2 sqrt2)s, are derived from geometry.
func TestTradeAgainstGeometry(t *testing.T) {
	for _, c := range []struct {
		seam          measure.Length
		unit          measure.Unit
		half, quarter string
	}{
		{measure.Inch / 4, measure.In, "0.021447", "0.042893"},
		{3 * measure.Centimetre / 4, measure.Cm, "-0.060660", "-0.121320"},
	} {
		trade, ok := piecing.TradeAt(c.seam)
		if !ok {
			t.Fatalf("no figures for a seam of %s", c.seam.Format(c.unit))
		}
		if got := trade.Half.Surd().Sub(piecing.HalfSquareAdd(c.seam)).Decimal(c.unit, 6); got != c.half {
			t.Errorf("half-square: %s, want %s", got, c.half)
		}
		if got := trade.Quarter.Surd().Sub(piecing.QuarterSquareAdd(c.seam)).Decimal(c.unit, 6); got != c.quarter {
			t.Errorf("quarter-square: %s, want %s", got, c.quarter)
		}
	}
	for _, seam := range []measure.Length{0, measure.Inch/4 - 1, measure.Inch/4 + 1, 7 * measure.Millimetre, measure.Centimetre} {
		if _, ok := piecing.TradeAt(seam); ok {
			t.Errorf("figures for a seam of %s", seam.Format(measure.In))
		}
	}
}

// The trade's squares for units of 4 in finished: 4 7/8 in for two at a time,
// 9 3/4 in for eight; four at a time has no round figure and goes up to 1/8 in.
// 7/8 and 1 1/4 in are widely published, no authority; the rest is derived from
// geometry.
func TestTradeSquares(t *testing.T) {
	trade, _ := piecing.TradeAt(measure.Inch / 4)
	four := (4 * measure.Inch).Surd()
	for atATime, want := range map[int]string{2: "4.875", 4: "6.875", 8: "9.750"} {
		cut, ok := trade.HalfSquare(four, measure.Inch/4, atATime)
		if got := cut.Decimal(measure.In, 3); !ok || got != want {
			t.Errorf("%d at a time: %s, want %s", atATime, got, want)
		}
	}
	if _, ok := trade.HalfSquare(four, measure.Inch/4, 3); ok {
		t.Error("three at a time")
	}
	if got := trade.QuarterSquare(four).Decimal(measure.In, 3); got != "5.250" {
		t.Errorf("quarter-square: %s", got)
	}
}

// Metric setting squares by the trade's figures, up to 0.5 cm: blocks of 25 cm get
// 35.355 + 3.5, so 39 cm, where 38.977 are needed. The rounding up hides that 3.5
// is too little, but not always: blocks of 12 cm get 16.971 + 3.5, so 20.5 cm, where
// 20.592 are needed. The figures are those of a published metric tutorial, the rest is
// derived from geometry.
func TestMetricTradeSetting(t *testing.T) {
	trade, _ := piecing.TradeAt(3 * measure.Centimetre / 4)
	for _, c := range []struct {
		block                measure.Length
		side, over           string
		corner, cornerLarger string
	}{
		{25, "39.0", "0.0233", "20.5", "0.2617"},
		{20, "32.0", "0.0944", "17.0", "0.2972"},
		{12, "20.5", "-0.0919", "11.0", "-0.0459"},
	} {
		b := (c.block * measure.Centimetre).Surd()
		exact := piecing.SettingTriangles(b, 3*measure.Centimetre/4, measure.Millimetre)
		for _, x := range []struct {
			got  measure.Surd
			n    int
			want string
		}{
			{trade.Side(b).Surd(), 1, c.side}, {trade.Side(b).Surd().Sub(exact.Side.Exact), 4, c.over},
			{trade.Corner(b).Surd(), 1, c.corner}, {trade.Corner(b).Surd().Sub(exact.Corner.Exact), 4, c.cornerLarger},
		} {
			if got := x.got.Decimal(measure.Cm, x.n); got != x.want {
				t.Errorf("block of %d cm: %s, want %s", c.block, got, x.want)
			}
		}
	}
}
