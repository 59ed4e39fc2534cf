package pipeline

import (
	_ "embed"
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

//go:embed turns.plan.json
var turnsPlan []byte

// Lying is how the parts of an operation lie where they are not turned: the
// words, and a part of a sample plan that is laid out so.
type Lying struct {
	Operation string // as it is written, "half_squares"
	Part      string // of the sample plan
	Says      string // as the schema says it, too
}

// Lyings are all operations whose parts have a top and a bottom.
func Lyings() []Lying {
	return []Lying{
		{"half_squares", "half-squares", "At turn 0 the first fabric lies at the top left and the second at the bottom right."},
		{"triangle_square", "triangle-square", "At turn 0 the first of two triangles lies at the top left; of four the first lies on top."},
		{"triangle_square", "four-triangles", ""},
		{"hourglass", "hourglass", "At turn 0 the first fabric lies at the top and the bottom, the second at the right and the left."},
		{"flying_geese", "flying-geese", "At turn 0 the goose points up: its long side is the bottom edge, and the sky fills the top corners."},
		{"flip_corners", "flip-corners", "Corners are named as they lie at turn 0."},
		{"logs", "logs", "Sides are named as they lie at turn 0."},
		{"strip_set", "segment", "At turn 0 the first strip lies on top, and the strips run from left to right."},
		{"strip_set", "slanted", "Segments cut at an angle lean to the right at the top."},
		{"tube", "near-square", "At turn 0 the seam that a square opens along runs from the bottom left to the top right, with the first set above it. In a near square the strips of the near edge lie along that seam."},
		{"tube", "far-square", "In a far square the strips of the far edge do."},
		{"loop", "loop", "At turn 0 the rings stand side by side from the left, and the strip after the seam that is opened lies on top."},
		{"shape", "triangles", "At turn 0 the first triangle of a row points up."},
		{"rows", "rows", "At turn 0 the first row lies on top, and the first part of a row at the left."},
		{"recut", "recut", "Pieces are counted as they lie at turn 0, from the top left."},
		{"turn 90", "quarter-turn", "Turned by 90, what lay on top stands at the right."},
		{"mirror", "mirror", "A mirror image has left and right exchanged before it is turned."},
	}
}

// Turns is the words and a picture of each, as this program lays it out.
func Turns() string {
	var b strings.Builder
	b.WriteString("How parts lie that are not turned, as yardproof draws them. Letters are fabrics,\n" +
		"a for the first that the plan names in the part, then b, c and d.\n")
	before := ""
	for _, l := range Lyings() {
		if l.Operation != before {
			fmt.Fprintf(&b, "\n%s\n", l.Operation)
		} else {
			b.WriteString("\n")
		}
		before = l.Operation
		if l.Says != "" {
			fmt.Fprintf(&b, "  %s\n", l.Says)
		}
		for _, row := range Lies(l.Part) {
			fmt.Fprintf(&b, "    %s\n", strings.TrimRight(row, " "))
		}
	}
	return b.String()
}

// pictureRows is how many rows of letters a picture has; two letters are as wide
// as a row is high.
const pictureRows = 8

// Lies draws a part of the sample plan as it is sewn, without its outer seam
// allowance, a letter for the fabric at each place; nil where there is none.
func Lies(part string) []string {
	file := source.New("turns.plan.json", turnsPlan)
	tree, _ := jsontree.Parse(file, jsontree.DefaultLimits())
	p, _ := plan.Decode(file, tree, plan.Merge(tree), nil)
	size := derive.Of(p, &p.Sizes[0])
	w, ok := drafting.Of(size).Part(part)
	if !ok {
		return nil
	}
	if w, ok = w.Finished(p.Sizes[0].Seam.Allowance.Length); !ok {
		return nil
	}
	return letters(w.AtOrigin(), size)
}

func letters(w piecing.Patchwork, s *derive.Size) []string {
	box := w.Size()
	step := box.Height.DivInt(pictureRows)
	columns := measure.FloorDiv(box.Width.MulInt(2), step)
	dot := piecing.Box{Width: measure.Tick.Surd(), Height: measure.Tick.Surd()}
	var rows []string
	for r := range int64(pictureRows) {
		var row strings.Builder
		for c := range columns {
			at := piecing.Point{X: box.Width.MulInt(5*c + 2).DivInt(5 * columns), Y: step.MulInt(5*r + 2).DivInt(5)}
			row.WriteByte(letter(w, s, piecing.Rectangle(at, dot)))
		}
		rows = append(rows, row.String())
	}
	return rows
}

// letter is that of the fabric at a place, its role's.
func letter(w piecing.Patchwork, s *derive.Size, at piecing.Polygon) byte {
	for _, p := range w.Patches {
		if p.Outline.Overlap(at) != nil && p.Fabric != piecing.Untold {
			return s.Fabrics[p.Fabric].Role.Text[0]
		}
	}
	return ' '
}
