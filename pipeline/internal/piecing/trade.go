package piecing

import "yardproof/schema/measure"

// Trade is the round figures by which the trade cuts squares for triangles: what
// it adds to a finished size, and the ruler's lines that it cuts by.
type Trade struct {
	Half    measure.Length // to a finished half-square unit, or to half of a block's diagonal
	Quarter measure.Length // to a finished quarter-square unit, or to a block's diagonal
	Grid    measure.Length
}

// TradeAt is the trade's figures for a seam allowance; ok is false where none are
// published: 7/8 and 1 1/4 in for 1/4 in, widely published, no authority; 2.5 and
// 3.5 cm for 0.75 cm, as metric tutorials print them.
func TradeAt(s measure.Length) (t Trade, ok bool) {
	switch s {
	case measure.Inch / 4:
		return Trade{Half: 7 * measure.Inch / 8, Quarter: 5 * measure.Inch / 4, Grid: measure.Inch / 8}, true
	case 3 * measure.Centimetre / 4:
		return Trade{Half: 5 * measure.Centimetre / 2, Quarter: 7 * measure.Centimetre / 2, Grid: measure.Centimetre / 2}, true
	}
	return Trade{}, false
}

// HalfSquare is the square that the trade cuts for half-square units of finished
// side f, seam s: f + Half for two at a time, twice that for eight, and for four,
// for which it has no round figure, the exact square up to its ruler's lines. ok
// is false for any other number at a time.
func (t Trade) HalfSquare(f measure.Surd, s measure.Length, atATime int) (cut measure.Surd, ok bool) {
	switch atATime {
	case 2:
		return f.Add(t.Half.Surd()), true
	case 4:
		return HalfSquareCut(plus2s(f, s), s, 4).CeilTo(t.Grid).Surd(), true
	case 8:
		return f.Add(t.Half.Surd()).MulInt(2), true
	}
	return cut, false
}

// QuarterSquare is the square that the trade cuts twice for quarter-square units
// of finished side f: f + Quarter.
func (t Trade) QuarterSquare(f measure.Surd) measure.Surd { return f.Add(t.Quarter.Surd()) }

// Side is the square that the trade cuts twice for side triangles of blocks of
// finished side b: the diagonal and Quarter, up to its ruler's lines. It can be a
// line more than is needed.
func (t Trade) Side(b measure.Surd) measure.Length {
	return b.Mul(measure.Root2()).Add(t.Quarter.Surd()).CeilTo(t.Grid)
}

// Corner is the square that the trade cuts once for corner triangles of such
// blocks: half the diagonal and Half, likewise.
func (t Trade) Corner(b measure.Surd) measure.Length {
	return b.Div(measure.Root2()).Add(t.Half.Surd()).CeilTo(t.Grid)
}
