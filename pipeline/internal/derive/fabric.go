package derive

import (
	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// whole is a share of one in basis points.
const whole = 10_000

// shrunk is what a length measures after losing a share, rounded down to a
// tick.
func shrunk(l measure.Length, loss plan.Percent) measure.Length {
	return l.Surd().MulInt(whole - loss.BasisPoints).DivInt(whole).FloorTo(measure.Tick)
}

// unshrunk is the length to start from for l to be left after losing a share,
// rounded up to a tick.
func unshrunk(l measure.Length, loss plan.Percent) measure.Length {
	return l.Surd().MulInt(whole).DivInt(whole - loss.BasisPoints).CeilTo(measure.Tick)
}

// Amount is what a layout makes of a fabric. Lengths along the fabric.
type Amount struct {
	Net   measure.Length // strips, squaring up and backing panels
	Gross measure.Length // before shrinkage, rounded up to a tick
	Buy   measure.Length // up to the shop's grid, and the studio's cushion
	Told  figure.F       // Buy
}

// AmountOf is what strips of a length in all make of the fabric.
func (f *Fabric) AmountOf(strips measure.Length) Amount {
	net := f.strips(strips).Plus(f.panelsFigure()).Plus(figure.Said("squaring up", "straightening the ends", f.SquaringUp.Length, f.SquaringUp.At))
	gross := net
	if f.ShrinkLength.BasisPoints > 0 {
		gross = net.Over(left(f.ShrinkLength)).Ceil()
	}
	buy := gross.CeilTo(f.steps()).Plus(f.cushion())
	return Amount{net.Length(), gross.Length(), buy.Length(), buy}
}

func (f *Fabric) strips(l measure.Length) figure.F {
	return figure.Given(figure.Length, l.Surd(), "the strips of its layout", f.longFigure()).Where(f.At)
}

func (f *Fabric) panelsFigure() figure.F {
	return figure.Given(figure.Length, f.Panels.Surd(), "the backing's panels").As("backing", "panels").Where(f.At)
}

// wanted is how much is cut from the fabric, by what it is for.
func (f *Fabric) wanted() []figure.F {
	all := []figure.F{f.longFigure()}
	for _, n := range f.Needs {
		what := "pieces for " + n.For.Text
		if n.Strip {
			what = "strips for " + n.For.Text
		}
		all = append(all, figure.Counted("", what, n.Count, n.At))
	}
	return all
}

// steps are those that the fabric is sold in.
func (f *Fabric) steps() figure.F {
	return figure.Said("grid", "lengths are sold in steps of", f.Grid, f.At).AsSold()
}

func (f *Fabric) cushion() figure.F {
	return figure.Said("cushion", "and a cushion of", f.Cushion, f.At).AsSold()
}

// BuyFigure is how much of a fabric is bought: a length, or packs.
func (f *Fabric) BuyFigure() figure.F {
	if !f.bought.Known() {
		f.bought = f.toBuy()
	}
	return f.bought
}

func (f *Fabric) toBuy() figure.F {
	if f.Form == plan.Precut {
		pieces := figure.Given(figure.Count, measure.Rational(int64(f.Sheets.Count), 1), "pieces of the layout").Telling(f.wanted()...).As("N", "pieces cut into").Where(f.At)
		each := figure.Counted("each", "from one", int64(f.Pack.N), f.Pack.At)
		return pieces.Over(each).Ceil().Is(f.Role.Text, "packs")
	}
	strips := say.Many(int64(f.Layout.Strips()), "strip") + " across the fabric"
	var told []figure.F
	add := func(when bool, term figure.F) {
		if when {
			told = append(told, term)
		}
	}
	add(f.Layout.Length > 0, f.strips(f.Layout.Length).Telling(f.wanted()...).As("strips", strips))
	add(f.Repeat.Length > 0, figure.Said("", "of which each is a whole number of the print's repeats", f.Repeat.Length, f.Repeat.At))
	add(f.SquaringUp.Length > 0, figure.Said("squaring up", "straightening the ends", f.SquaringUp.Length, f.SquaringUp.At))
	add(f.Panels > 0, f.panelsFigure())
	add(f.ShrinkLength.BasisPoints > 0, figure.Given(figure.Length, f.Gross.Surd(), "what is left is enough").As("", "before shrinkage").Where(f.ShrinkLength.At))
	add(true, f.steps())
	add(f.Cushion > 0, f.cushion().As("", "and a cushion of"))
	words := "(strips + squaring up + backing) / (1 - shrinkage), up to the grid"
	return f.Told.AsSold().InWords(words).Is(f.Role.Text, "to buy").Telling(told...)
}

// KitFigure is how much of a fabric goes into the kit: a length, or packs.
func (s *Size) KitFigure(f *Fabric, length measure.Length) figure.F {
	buy := f.BuyFigure()
	if length == 0 || length == f.Buy {
		return buy
	}
	more := s.Of.Kit.Allowance
	return buy.As("buy", "what the pattern takes, as sold").Where(f.At).Plus(figure.Said("generous cut", "cut longer by", more.Length, more.At)).Is(f.Role.Text, "in the kit")
}

// Printed is the length of the fabric that the pattern says to buy, 0 where it
// says none.
func (f *Fabric) Printed() measure.Length { return f.printed }

// With is what to buy where the pattern cuts so much more in strips.
func (f *Fabric) With(strips measure.Length) measure.Length {
	if strips == 0 {
		return f.Buy
	}
	return f.AmountOf(f.Layout.Length + strips).Buy
}

// Bare is what a layout of strips of a length in all, and the backing's panels,
// take of the fabric before shrinkage, with nothing for squaring up.
func (f *Fabric) Bare(strips measure.Length) measure.Length {
	return unshrunk(strips+f.Panels, f.ShrinkLength)
}

// cut lays out all that is needed of a fabric by the method of the pattern's
// instructions and works out what to buy.
func (f *Fabric) cut() {
	if f.Form == plan.Precut {
		f.cutPacks()
		return
	}
	f.stripsOnBias()
	f.Plain, f.Err = cutting.Plain(f.problem())
	if f.Err != nil || !f.Used() {
		return
	}
	f.Layout, f.Amount = f.Plain, f.AmountOf(f.Plain.Length)
	f.Least = f.least()
	if f.Cuts == plan.PackedCuts {
		f.Layout, f.Amount = f.Packed().Layout, f.Packed().Amount
	}
}

// problem is all that is to be cut from a bolt.
func (f *Fabric) problem() cutting.Problem {
	return f.problemOf(func(Need) bool { return true })
}

// problemOf is what is to be cut from a bolt of some of the needs; the others
// count nothing.
func (f *Fabric) problemOf(want func(Need) bool) cutting.Problem {
	pieces, strips := f.splitOf(want)
	return cutting.Problem{
		Cloth:  cutting.Cloth{Width: f.Width, SquaringUp: f.SquaringUp.Length, Repeat: f.Repeat.Length},
		Pieces: pieces,
		Strips: strips,
	}
}

// AcrossOf is the width that a piece of a layout is cut to along its strip.
func (f *Fabric) AcrossOf(c cutting.Cut) measure.Length {
	pieces, _ := f.split()
	if c.Turned {
		return pieces[c.Piece].Along
	}
	return pieces[c.Piece].Across
}

// split sorts needs into pieces and whole strips.
func (f *Fabric) split() (pieces []cutting.Piece, strips []cutting.WholeStrip) {
	return f.splitOf(func(Need) bool { return true })
}

// splitOf is split of some of the needs; the others count nothing.
func (f *Fabric) splitOf(want func(Need) bool) (pieces []cutting.Piece, strips []cutting.WholeStrip) {
	for _, n := range f.Needs {
		if !want(n) {
			n.Count = 0
		}
		if n.Strip {
			strips = append(strips, cutting.WholeStrip{Name: n.For.Text, Height: n.Along, Count: int(n.Count), Last: n.Last})
			continue
		}
		pieces = append(pieces, cutting.Piece{
			Name: n.For.Text, Across: n.Across, Along: n.Along, Count: int(n.Count), Turnable: f.Turnable(n), Together: n.Alike, Lengthwise: n.First, InLengths: n.InLengths,
		})
	}
	return pieces, strips
}

// cutPacks lays the needs out on precut pieces, strips along their longer
// side, and counts whole packs.
func (f *Fabric) cutPacks() {
	f.PlainSheets, f.Err = cutting.PlainPieces(f.sheetProblem())
	if f.Err != nil {
		return
	}
	f.Sheets = f.PlainSheets
	if f.Cuts == plan.PackedCuts {
		f.Sheets = f.PackedSheets().Layout
	}
	f.Packs, f.Left = f.PacksOf(f.Sheets.Count)
}

// sheetProblem is all that is to be cut from precut pieces.
func (f *Fabric) sheetProblem() cutting.SheetProblem {
	return f.sheetProblemOf(func(Need) bool { return true })
}

// sheetProblemOf is sheetProblem of some of the needs; the others count nothing.
func (f *Fabric) sheetProblemOf(want func(Need) bool) cutting.SheetProblem {
	pieces, strips := f.splitOf(want)
	for i := range pieces {
		pieces[i].Along = f.Reserved(pieces[i].Along)
	}
	for i := range strips {
		strips[i].Height = f.Reserved(strips[i].Height)
	}
	return cutting.SheetProblem{
		Sheet:  cutting.Sheet{Across: f.StripLength().Length, Along: f.StripWidth().Length},
		Pieces: pieces,
		Strips: strips,
	}
}

// PacksOf are the whole packs that hold so many pieces, and what is left over.
func (f *Fabric) PacksOf(pieces int) (packs, left int64) {
	packs = piecing.Batches(int64(pieces), int64(f.Pack.N))
	return packs, packs*int64(f.Pack.N) - int64(pieces)
}
