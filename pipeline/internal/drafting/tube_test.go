package drafting_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// layer is one strip set of a tube as it lies on the table, y = 0 on the near
// raw edge and x along the strips, in inches: what shows of each strip on the
// right side. Nothing of it comes from the functions under test.
type layer []geom.Geometry // by fabric

// table is a tube lying flat.
type table struct {
	width, seam, beyond, length float64
	layers                      [2]layer
}

// lay lays two sets of strips, given from the near edge, on the table.
func lay(strips [2][]strip, seam, beyond, length float64) table {
	t := table{seam: seam, beyond: beyond, length: length}
	for i, set := range strips {
		t.layers[i] = make(layer, fabrics)
		edge := 0.0
		for j, s := range set {
			upper := edge + s.width - seam // the seam to the next strip
			if j == len(set)-1 {
				upper += seam
			}
			low := edge
			if j > 0 {
				low += seam
			}
			shown := box(-length, low, 2*length, upper)
			if old := t.layers[i][s.fabric]; !old.IsEmpty() {
				shown = must(geom.Union(old, shown))
			}
			t.layers[i][s.fabric] = shown
			edge = upper - seam
			t.width = upper
		}
	}
	return t
}

const fabrics = 5

type strip struct {
	fabric int
	width  float64
}

func must(g geom.Geometry, err error) geom.Geometry {
	if err != nil {
		panic(err)
	}
	return g
}

func outline(corners ...geom.XY) geom.Geometry {
	var flat []float64
	for _, c := range append(corners, corners[0]) {
		flat = append(flat, c.X, c.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(flat, geom.DimXY))}).AsGeometry()
}

func box(x0, y0, x1, y1 float64) geom.Geometry {
	return outline(geom.XY{X: x0, Y: y0}, geom.XY{X: x1, Y: y0}, geom.XY{X: x1, Y: y1}, geom.XY{X: x0, Y: y1})
}

// cut is the triangles that the ruler cuts from the tube, tips towards the far
// edge and the near one in turn, as far left as each goes, until no more fit.
// Only the corners on the opening seam have to lie on the cloth.
func (t table) cut(nearFirst bool) (far []bool, squares []layer) {
	h := t.width - 2*t.seam + t.beyond
	for tip, i := h, 0; tip+h <= t.length+1e-9; i++ {
		up := (i%2 == 0) == nearFirst // the tip lies towards the far edge
		seam, to := t.seam, t.width-t.seam+t.beyond
		if !up {
			seam, to = t.width-t.seam, t.seam-t.beyond
		}
		far, squares = append(far, !up), append(squares, t.open(tip, seam, to))
		tip += math.Abs(to-seam) + t.beyond // the next sloping cut is shared
	}
	return far, squares
}

// open is a triangle with its base on a seam and its tip at a height, cut through
// both layers, and the second layer folded open over the seam.
func (t table) open(x, seam, tip float64) layer {
	h := math.Abs(tip - seam)
	triangle := outline(geom.XY{X: x - h, Y: seam}, geom.XY{X: x + h, Y: seam}, geom.XY{X: x, Y: tip})
	square := make(layer, fabrics)
	for i, of := range t.layers {
		for fabric, cloth := range of {
			if cloth.IsEmpty() {
				continue
			}
			piece := must(geom.Intersection(cloth, triangle))
			if i == 1 {
				piece = piece.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.X, Y: 2*seam - p.Y} })
			}
			// The first set above: a square whose tip lies below the seam is turned
			// end for end. Then the seam is laid from the bottom left to the top
			// right, y downwards as in pictures.
			flip := 1.0
			if tip < seam {
				flip = -1
			}
			piece = piece.TransformXY(func(p geom.XY) geom.XY {
				a, b := flip*(p.X-x), flip*(p.Y-seam)
				return geom.XY{X: (a - b + h) / math.Sqrt2, Y: (h - a - b) / math.Sqrt2}
			})
			if !square[fabric].IsEmpty() {
				piece = must(geom.Union(square[fabric], piece))
			}
			square[fabric] = piece
		}
	}
	return square
}

// trimmed is a square of side s trimmed alike on all sides.
func (l layer) trimmed(s, to float64) layer {
	frame := box((s-to)/2, (s-to)/2, (s+to)/2, (s+to)/2)
	out := make(layer, fabrics)
	for i, g := range l {
		if !g.IsEmpty() {
			out[i] = must(geom.Intersection(g, frame)).TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.X - (s-to)/2, Y: p.Y - (s-to)/2} })
		}
	}
	return out
}

// drawnAs compares a square that was cut and opened with a drawing of one, fabric
// by fabric: as much of each, and in the same place.
func drawnAs(t *testing.T, what string, cut layer, drawn piecing.Patchwork) {
	t.Helper()
	for fabric, g := range cut {
		var pieces []geom.Geometry
		for _, p := range drawn.Patches {
			if p.Fabric == fabric {
				var corners []geom.XY
				for _, c := range p.Outline {
					corners = append(corners, geom.XY{X: c.X.Float(measure.In), Y: c.Y.Float(measure.In)})
				}
				pieces = append(pieces, outline(corners...))
			}
		}
		whole := must(geom.UnionMany(pieces))
		area, shared := 0.0, 0.0
		if !g.IsEmpty() {
			area, shared = g.Area(), must(geom.Intersection(g, whole)).Area()
		}
		if math.Abs(area-whole.Area()) > 1e-6 || math.Abs(area-shared) > 1e-6 {
			t.Errorf("%s, fabric %d: %.4f sq in come out, %.4f are drawn, %.4f of them in place", what, fabric, area, whole.Area(), shared)
		}
	}
}

// tubePlan is a plan of one tube, its second set as said.
func tubePlan(first, second []strip, lie, tip, trim string, wide float64) string {
	set := func(strips []strip) string {
		var all []string
		for _, s := range strips {
			all = append(all, fmt.Sprintf(`{"fabric": "f%d", "width": %v}`, s.fabric, s.width))
		}
		return strings.Join(all, ", ")
	}
	return fmt.Sprintf(`{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"f0": {"yardage": {"usable_width": %[6]v}}, "f1": {"yardage": {"usable_width": %[6]v}}, "f2": {"yardage": {"usable_width": %[6]v}}, "f3": {"yardage": {"usable_width": %[6]v}}, "f4": {"yardage": {"usable_width": %[6]v}}},
  "parts": {
    "one": {"strip_set": {"strips": [%[1]s]}}, "two": {"strip_set": {"strips": [%[2]s]}},
    "step": {"tube": {"sets": ["one", "two"], "lay": %[3]q, "tip": %[4]q%[5]s}}
  },
  "layout": {"grid": {"rows": 1, "columns": 2, "blocks": [[{"part": "step", "kind": "near"}, {"part": "step", "kind": "far"}]]}},
  "sizes": {"only": {}}
}`, set(first), set(second), lie, tip, trim, wide)
}

// A tube is drawn on the table, cut into triangles through both layers and each
// of them opened, with a geometry library; the squares that come out are the
// near and far ones that are drafted, in this order, and as many as are derived.
// For sets of two and three strips of one fabric order and of two, of unequal
// widths, the second set as it is and turned, both tips, trimmed and not, odd
// and even yields. Derived from geometry.
func TestTubeCutAndOpened(t *testing.T) {
	pair, other := []strip{{0, 2}, {1, 2}}, []strip{{2, 2}, {3, 2}}
	trio, uneven := []strip{{0, 1.75}, {1, 1.75}, {2, 1.75}}, []strip{{3, 1.25}, {1, 2.5}, {4, 1.5}}
	seen := map[string]bool{}
	for _, sets := range [][2][]strip{{pair, pair}, {pair, other}, {trio, trio}, {trio, uneven}, {uneven, uneven}} {
		for _, lie := range []string{"strip for strip", "end for end"} {
			for _, tip := range []string{"far seam", "raw edge"} {
				for _, wide := range []float64{34, 38, 40, 42.5} {
					for _, trim := range []string{"", "4"} {
						seen[compareTube(t, sets, lie, tip, trim, wide)] = true
					}
				}
			}
		}
	}
	for _, want := range []string{"odd", "even"} {
		if !seen[want] {
			t.Errorf("no tube gave an %s number of squares", want)
		}
	}
}

func compareTube(t *testing.T, sets [2][]strip, lie, tip, trim string, wide float64) string {
	t.Helper()
	said := ""
	if trim != "" {
		said = fmt.Sprintf(`, "trim": %q`, trim)
	}
	what := fmt.Sprintf("%d and %d strips, %s, tip at the %s, trimmed to %q, %v in", len(sets[0]), len(sets[1]), lie, tip, trim, wide)
	all := sizes("tube.plan.json", []byte(tubePlan(sets[0], sets[1], lie, tip, said, wide)))
	if len(all) == 0 {
		t.Fatalf("%s: the plan is not in order", what)
	}
	s := all[0]
	step := s.Part("step")
	if lie == "end for end" {
		sets[1] = append([]strip(nil), sets[1]...)
		for i, j := 0, len(sets[1])-1; i < j; i, j = i+1, j-1 {
			sets[1][i], sets[1][j] = sets[1][j], sets[1][i]
		}
	}
	beyond := map[string]float64{"far seam": 0, "raw edge": 0.25}[tip]
	for _, nearFirst := range []bool{true, false} {
		far, squares := lay(sets, 0.25, beyond, wide).cut(nearFirst)
		if len(far) == 0 || int64(len(far)) != step.Tube.Yield.Each {
			t.Fatalf("%s: %d triangles are cut, %d squares derived", what, len(far), step.Tube.Yield.Each)
		}
		counts := map[bool]int64{}
		for i, square := range squares {
			counts[far[i]]++
			side := step.Tube.Side().Float(measure.In)
			if trim != "" {
				square = square.trimmed(side, 4)
			}
			w, ok := drafted(s, far[i])
			if !ok {
				t.Fatalf("%s: not drafted", what)
			}
			drawnAs(t, what, square, w)
		}
		if more, less := piecing.Orientations(int64(len(far))); counts[!nearFirst] != more || counts[nearFirst] != less {
			t.Errorf("%s: %d near and %d far squares, want %d and %d", what, counts[false], counts[true], more, less)
		}
	}
	return [...]string{"even", "odd"}[step.Tube.Yield.Each%2]
}

// drafted is the near or far square as the layout places it.
func drafted(s *derive.Size, far bool) (piecing.Patchwork, bool) {
	full, _ := s.WalkTop().Setting(s.Of.Layout.Setting)
	c := full[0][0]
	if far {
		c = full[0][1]
	}
	return drafting.Of(s).Exchanged("step", c.Flips)
}

// Every part of the sample that holds near or far squares is drafted, has
// exactly its derived size, and closes.
func TestTubeDrawerCloses(t *testing.T) {
	const path = "../../../schema/testdata/tube-drawer.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sizes(path, text) {
		closes(t, s.Of.Name.Text, s)
	}
}
