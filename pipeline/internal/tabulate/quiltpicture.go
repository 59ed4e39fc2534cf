package tabulate

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// quiltPictures are the finished top of every size and, apart from it, what it
// is made of; and the sizes whose top is not drawn.
func (in Input) quiltPictures() (all []report.Picture, undrawn []string) {
	tops, units := mostPatches, mostPatches
	for _, s := range in.Sizes {
		if in.stopped() {
			return all, undrawn
		}
		d := drafting.Of(s)
		if top, ok := d.TopOf(tops); ok {
			tops -= len(top.Patches)
			all = append(all, quiltPicture(s, d, top))
		} else {
			undrawn = append(undrawn, s.Of.Name.Text)
		}
		if units, ok := unitsPicture(s, d, &units); ok {
			all = append(all, paged(units, unitsPage)...)
		}
	}
	return all, undrawn
}

// topPrefix begins the names of pictures of tops.
const topPrefix = "quilt-"

// topTitle begins their titles.
const topTitle = "Quilt top, "

// topID names the picture of a size's top.
func topID(s *derive.Size) string { return topPrefix + s.Of.Name.Text }

// unitsID begins the names of the pictures of what a size is sewn from.
func unitsID(s *derive.Size) string { return "units-" + s.Of.Name.Text }

func quiltPicture(s *derive.Size, d *drafting.Draft, top piecing.Patchwork) report.Picture {
	u := s.Plan.Units
	k := newSketch(topID(s), topTitle+s.Called(), u)
	p := k.panel(s.Top.Finished)
	k.fabrics(s, d, top)
	p.Shapes = k.patches(top)
	p.Shapes = append(p.Shapes, report.Shape{Kind: report.Outline, Points: k.points(top.Outline)})
	p.Dimensions = append(k.edges(s, borderBands(s, false), report.Top), k.edges(s, borderBands(s, true), report.Left)...)
	k.Panels = []report.Panel{p}
	k.About = fmt.Sprintf("The finished top of size %s, %s wide and %s long, drawn to scale: %s.", s.Of.Name.Text,
		s.Top.Finished.Width.Format(u), s.Top.Finished.Height.Format(u), setting(s)) + joinsUndrawn(s)
	return k.Picture
}

// setting tells how the top is laid out.
func setting(s *derive.Size) string {
	g := s.Of.Layout.Grid
	text := say.Many(int64(g.Rows.N), "row")
	if !g.Written {
		text += " of " + say.Many(int64(g.Columns.N), "block")
	}
	if n := len(s.Top.Borders); n > 0 {
		text += " and " + say.Many(int64(n), "border")
	}
	return text
}

// borderBands are how wide each border shows, from the outside in. A border
// that is sewn with another seam than its neighbour shows wider or narrower
// than it is said to be by the difference.
func borderBands(s *derive.Size, down bool) []measure.Surd {
	var bands []measure.Surd
	outside := s.Of.Seam.Allowance.Length
	for i := len(s.Top.Borders) - 1; i >= 0; i-- {
		b := s.Top.Borders[i]
		width := b.Outer.Width.Sub(b.Inner.Width)
		if down {
			width = b.Outer.Height.Sub(b.Inner.Height)
		}
		bands = append(bands, width.DivInt(2).Add((b.Seam - outside).Surd()))
		outside = b.Seam
	}
	return bands
}

// edges are the finished sizes along one edge: each border, all that lies
// between them, and the whole; and on the opposite edge the first block.
func (k *sketch) edges(s *derive.Size, bands []measure.Surd, e report.Edge) []report.Dimension {
	whole, far := s.Top.Finished.Width, report.Bottom
	if e == report.Left {
		whole, far = s.Top.Finished.Height, report.Right
	}
	at, rest, tier := measure.Surd{}, whole, 0
	var all []report.Dimension
	for _, b := range bands {
		if b.IsZero() {
			continue // a border of the other two sides
		}
		tier = 1
		all = append(all, k.along(e, 0, at, at.Add(b)), k.along(e, 0, rest.Sub(b), rest))
		at, rest = at.Add(b), rest.Sub(b)
	}
	if tier > 0 {
		all = append(all, k.along(e, 0, at, rest))
	}
	all = append(all, k.along(e, tier, measure.Surd{}, whole))
	if block, ok := firstBlock(s, e == report.Left); ok && s.Top.Setting.OnPoint == nil && s.Top.Setting.Sashing == nil && block.Cmp(rest.Sub(at)) < 0 {
		all = append(all, k.along(far, 0, at, at.Add(block)))
	}
	return all
}

// firstBlock is the finished size of the block in the first row and column.
func firstBlock(s *derive.Size, down bool) (measure.Surd, bool) {
	c := s.Of.Layout.Grid.Cell(0, 0)
	p := s.Part(c.Part.Text)
	if p == nil || !p.Known {
		return measure.Surd{}, false
	}
	b := p.Box.Finished(s.Of.Seam.Allowance.Length)
	if down != c.Sideways() {
		return b.Height, true
	}
	return b.Width, true
}

// How many parts are drawn apart: in all, and in one picture.
const (
	mostUnits = 48
	unitsPage = 12
)

// unitsPicture shows each sewn part with the size it should measure,
// of as many as there are patches left to draw.
func unitsPicture(s *derive.Size, d *drafting.Draft, left *int) (report.Picture, bool) {
	name := s.Of.Name.Text
	k := newSketch(unitsID(s), "What the quilt top is sewn from, "+s.Called(), s.Plan.Units)
	k.About = fmt.Sprintf("Each sewn part of size %s by itself with the size it should measure, seam allowances included; dashed lines show where it will be sewn on.", name)
	var units []sketched
	var works []piecing.Patchwork
	variants := s.Variants()
	for _, p := range s.Parts {
		if p.Needed == 0 || !p.Room.Traits().Sewn {
			continue
		}
		for _, v := range drawnVariants(s, p, variants[p]) {
			w, ok := d.Exchanged(p.Name.Text, v.flips)
			if ok && len(works) < mostUnits && len(w.Patches) <= *left {
				*left -= len(w.Patches)
				v.Patchwork, v.joins = w, joinCaption(s, p)
				works, units = append(works, w), append(units, v)
			}
		}
	}
	k.fabrics(s, d, works...)
	for _, v := range units {
		k.Panels = append(k.Panels, k.unit(v))
	}
	return k.Picture, len(k.Panels) > 0
}

// sketched is a part to be drawn apart.
type sketched struct {
	piecing.Patchwork
	part  *derive.Part
	flips derive.Flips
	name  string
	made  int64
	joins string // what is said of joins that are not drawn
}

// drawnVariants is a part as it is drawn: both kinds of squares of a tube where
// they differ, and whatever is made with them exchanged.
func drawnVariants(s *derive.Size, p *derive.Part, variants []derive.Variant) []sketched {
	if square := s.Square(p); len(variants) < 2 || square != nil && square.Tube.Kinds.Look != derive.Different {
		one := sketched{part: p, name: p.Name.Text, made: p.Made}
		if len(variants) == 1 {
			one.flips = variants[0].Flips
		}
		return []sketched{one}
	}
	var all []sketched
	for _, v := range variants {
		all = append(all, sketched{part: p, flips: v.Flips, name: variantName(s, p, v.Flips), made: v.Count})
	}
	if p.Tube != nil {
		all[0].made, all[1].made = p.Tube.Makes(p.Tube.Count)
	}
	return all
}

// unit is one sewn part. A strip set that is used whole is drawn short: it is
// many times as long as it is wide.
func (k *sketch) unit(v sketched) report.Panel {
	p, w := v.part, v.Patchwork
	b, says := w.Size(), "should measure "+measured(p.Box, k.Unit)
	short := false
	if p.Set != nil && p.Set.Cut == nil {
		end := b.Height.MulInt(3).DivInt(2)
		if short = end.Cmp(b.Width) < 0; short {
			b.Width = end
			w = w.CutTo(piecing.Rectangle(piecing.Point{}, b))
			says += "; drawn short"
		}
	}
	if p.Set != nil && p.Set.Slant != nil {
		says += " from end to end"
	}
	panel := k.panel(b)
	panel.Caption = []string{v.name + ", make " + fmt.Sprint(v.made), says}
	if v.joins != "" {
		panel.Caption = append(panel.Caption, v.joins)
	}
	panel.Shapes = k.patches(w)
	if _, ok := p.Room.(derive.InOrder); ok {
		number(panel.Shapes)
	}
	if inner, ok := w.Outline.Inset(p.Seam.Allowance.Length); ok && !short {
		panel.Shapes = append(panel.Shapes, report.Shape{Kind: report.Seam, Points: k.points(inner)})
	}
	panel.Shapes = append(panel.Shapes, report.Shape{Kind: report.Outline, Points: k.points(w.Outline)})
	if !short {
		panel.Dimensions = append(panel.Dimensions, k.along(report.Top, 0, measure.Surd{}, b.Width))
	}
	panel.Dimensions = append(panel.Dimensions, k.along(report.Left, 0, measure.Surd{}, b.Height))
	return panel
}

// number numbers patches in the order in which they are sewn on to the first.
func number(shapes []report.Shape) {
	for i := 1; i < len(shapes); i++ {
		shapes[i].Labels = []string{fmt.Sprintf("%s %d", shapes[i].Labels[0], i), fmt.Sprint(i)}
	}
}

// measured is a size in words.
func measured(b piecing.Box, u measure.Unit) string {
	if b.Width.Equal(b.Height) {
		return b.Width.Format(u) + " square"
	}
	return b.Width.Format(u) + " x " + b.Height.Format(u)
}
