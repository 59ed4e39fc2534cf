package hostile

import (
	"encoding/json"
	"fmt"
	"strings"
)

// Plan is one plan.
type Plan struct {
	Name   string
	Text   []byte
	Export bool // it is hard on an export alone
}

type object = map[string]any
type list = []any

const (
	mostSizes   = 40
	mostWays    = 20
	mostFabrics = 60
	mostParts   = 300
	mostBlocks  = 200 // in a row, and rows of them
	mostCells   = 100 // in a row of a part, and rows of them
	mostBorders = 20
	mostPieces  = 60 // in a mosaic
	mostCount   = 10_000
	longest     = 32 // characters of a name
	mostTitle   = 120
)

// Plans are the plans at the limits, in one order.
func Plans() []Plan {
	return []Plan{
		{"near-the-area", text(near(9, 101, 1.003)), false},
		{"near-the-bound", text(near(12, 107, 1.0245)), false},
		{"many-cuts", text(cuts(64, 0)), true},
		{"many-cuts-printed", text(cuts(64, 1.02)), false},
		{"map", text(quiltMap()), true},
		{"colourways", text(colourways()), true},
		{"fabrics", text(fabrics()), false},
		{"chain", text(chain()), false},
		{"names", text(names()), true},
		{"printed", text(printed()), false},
		{"mosaics", text(mosaics()), false},
		{"smallest", text(smallest()), false},
		{"precuts", text(precuts()), false},
		{"borders", text(borders()), true},
		{"kits", text(kits()), true},
		{"widths", text(widths()), false},
		{"logs", text(logs()), true},
		{"wrong", text(wrong()), false},
	}
}

// Near is a plan of few cut sizes, another one for each seed, which prints lengths
// near what the area of its pieces takes.
func Near(pieces int, seed int64) Plan {
	p := near(pieces, seed, 1.02)
	name := fmt.Sprintf("near-%d", seed)
	p["id"], p["title"] = name, name
	return Plan{Name: name, Text: text(p)}
}

// Cuts is a plan of so many cut sizes in so many sizes of the quilt, which prints
// of each so much more than what the area takes.
func Cuts(pieces, sizes int, more float64) []byte {
	p := cuts(pieces, more)
	for _, key := range []string{"sizes", "printed"} {
		all, _ := p[key].(object)
		for n := sizes; n < mostSizes; n++ {
			delete(all, sizeName(n))
		}
	}
	return text(p)
}

// Sorted is a plan with its members in the order of their names.
func Sorted(plan []byte) ([]byte, error) {
	var value any
	if err := json.Unmarshal(plan, &value); err != nil {
		return nil, err
	}
	return json.Marshal(value)
}

func text(plan object) []byte {
	b, err := json.Marshal(plan)
	if err != nil {
		panic(err) // maps, lists, text and numbers
	}
	return b
}

// plan is what all share. Its sizes, which are to be filled, differ in the rows of
// their grid.
func plan(id string) object {
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"layout": object{"grid": object{"rows": 3 + n}}}
	}
	return object{
		"format": 1, "id": id, "title": id, "status": "testing", "skill": "beginner", "use": "throw", "units": "in",
		"seam":     object{"allowance": "1/4", "stitch": "301"},
		"cautions": list{"rotary-cutter", "iron"},
		"sizes":    sizes,
	}
}

func sizeName(n int) string { return fmt.Sprintf("size-%02d", n) }

func cloth(width string) object { return object{"yardage": object{"usable_width": width}} }

func sixteenths(n int) string {
	if n%16 == 0 {
		return fmt.Sprint(n / 16)
	}
	return fmt.Sprintf("%d %d/16", n/16, n%16)
}

func parts64(n int) string { return strings.TrimSuffix(fmt.Sprintf("%d %d/64", n/64, n%64), " 0/64") }

// inches is a printed length of fabric, to hundredths.
func inches(l float64) string { return fmt.Sprintf("%.2f in", l) }
