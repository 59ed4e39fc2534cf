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
// words, and a part of the sample plan that is laid out so. The part's note has
// the operation and the words.
type Lying struct {
	Operation string // as it is written, "half_squares"
	Part      string // of the sample plan
	Says      string // as the schema says it, too
}

// Lyings are all operations whose parts have a top and a bottom, in the order of
// the sample plan.
func Lyings() (all []Lying) {
	for _, p := range sample().Sizes[0].Parts {
		if p.Note.Given() {
			operation, says, _ := strings.Cut(p.Note.Text, ": ")
			all = append(all, Lying{operation, p.Name.Text, says})
		}
	}
	return all
}

// sample is the plan whose parts are drawn.
func sample() *plan.Plan {
	file := source.New("turns.plan.json", turnsPlan)
	tree, _ := jsontree.Parse(file, jsontree.DefaultLimits())
	p, _ := plan.Decode(file, tree, plan.Merge(tree), nil)
	return p
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
	p := sample()
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
