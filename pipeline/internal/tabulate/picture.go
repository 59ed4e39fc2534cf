package tabulate

import (
	"fmt"
	"strconv"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// sketch is a picture being drawn. Its floats are for drawing alone: what they
// stand for was derived, and proved to close, exactly.
type sketch struct {
	report.Picture
	floats map[measure.Surd]float64
	keys   map[int]int // from what a key is about to its place in the legend
}

func newSketch(id, title string, u measure.Unit) *sketch {
	return &sketch{
		Picture: report.Picture{ID: id, Title: title, Unit: u},
		floats:  map[measure.Surd]float64{}, keys: map[int]int{},
	}
}

// float is an exact length to draw with. The same few lengths come again and
// again.
func (k *sketch) float(x measure.Surd) float64 {
	f, known := k.floats[x]
	if !known {
		f = x.Float(k.Unit)
		k.floats[x] = f
	}
	return f
}

func (k *sketch) length(l measure.Length) float64 { return float64(l) / float64(k.Unit.Length()) }

// points are the corners of a polygon.
func (k *sketch) points(p piecing.Polygon) []report.Point {
	var all []report.Point
	for _, q := range p {
		all = append(all, report.Point{X: k.float(q.X), Y: k.float(q.Y)})
	}
	return all
}

// key is the place in the legend of what a number stands for, entered at its
// first use.
func (k *sketch) key(about int, enter func() report.Key) int {
	at, known := k.keys[about]
	if !known {
		at = len(k.Legend)
		k.keys[about] = at
		k.Legend = append(k.Legend, enter())
	}
	return at
}

// letter numbers with letters: A to Z, then A2, B2 and so on.
func letter(i int, first rune) string {
	const letters = 26
	name := string(first + rune(i%letters))
	if i >= letters {
		name += strconv.Itoa(i/letters + 1)
	}
	return name
}

// fabricLetter is how pictures call a fabric of a size.
func fabricLetter(i int) string { return letter(i, 'A') }

// fabrics enters in the legend, in the order of the plan, the fabrics that show
// in some work. A fabric looks alike in all pictures of a size: its tone is
// chosen among those that show anywhere in it, so that few tones are wanted; see tones.
func (k *sketch) fabrics(s *derive.Size, d *drafting.Draft, works ...piecing.Patchwork) {
	used := map[int]bool{}
	for _, w := range works {
		for _, p := range w.Patches {
			used[p.Fabric] = true
		}
	}
	shown := d.Shown()
	tones := tones(s.Fabrics, shown)
	for i := range shown {
		if used[i] {
			f := s.Fabrics[i]
			k.key(i, func() report.Key {
				return report.Key{Letter: fabricLetter(i), Name: kit.Title(f), Tone: tones[i], Colour: f.Colour.Text}
			})
		}
	}
	if used[piecing.Untold] {
		k.key(piecing.Untold, func() report.Key {
			return report.Key{Letter: "?", Name: "only the box is known: sewn or cut as the pattern draws it"}
		})
	}
}

// patches draws the patches of work, whose fabrics are in the legend.
func (k *sketch) patches(w piecing.Patchwork) []report.Shape {
	var shapes []report.Shape
	for _, p := range w.Patches {
		key := k.keys[p.Fabric]
		shapes = append(shapes, report.Shape{
			Kind: report.Patch, Key: key, Points: k.points(p.Outline), Labels: []string{k.Legend[key].Letter},
		})
	}
	return shapes
}

// along is a size along an edge.
func (k *sketch) along(e report.Edge, tier int, from, to measure.Surd) report.Dimension {
	return report.Dimension{Edge: e, Tier: tier, From: k.float(from), To: k.float(to), Text: to.Sub(from).Format(k.Unit)}
}

// panel begins a panel of exact size.
func (k *sketch) panel(b piecing.Box) report.Panel {
	return report.Panel{Width: k.float(b.Width), Height: k.float(b.Height)}
}

// paged divides a picture of many panels into several with so many each.
func paged(p report.Picture, most int) []report.Picture {
	count := (len(p.Panels) + most - 1) / most
	if count <= 1 {
		return []report.Picture{p}
	}
	var all []report.Picture
	for i := range count {
		part := p
		part.Panels = p.Panels[i*most : min(len(p.Panels), (i+1)*most)]
		part.Title += fmt.Sprintf(" (%d of %d)", i+1, count)
		if i > 0 {
			part.ID += fmt.Sprintf("-part-%d", i+1)
		}
		all = append(all, part)
	}
	return all
}
