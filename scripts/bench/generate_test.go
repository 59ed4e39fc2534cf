package bench

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

// The plans are invented and mean nothing, but they are of different builds
// and sizes, hold together, and print what is derived of them: a run over them
// has no error to tell, as a studio's would have few.

type object = map[string]any
type list = []any

const border = 24 // finished, eighths of an inch

// build is a way to piece the blocks of a quilt.
type build struct {
	fabrics  object
	parts    object
	blocks   list
	block    string // the part that is counted
	per      int64  // of it in each place of the grid
	finished int    // eighths of an inch, of the place of the grid
	ruler    int    // inches
}

// lay makes a folder with n plans and a project file.
func lay(tb testing.TB, n int) string {
	tb.Helper()
	dir := tb.TempDir()
	write(tb, filepath.Join(dir, "yardproof.json"), object{
		"format": 1, "studio": "Bench", "currency": "EUR", "labour_rate": 18, "margin": "50%", "run": 20, "prices": "prices.csv",
	})
	prices := "sku,description,unit,price\nC-1,cloth,yd,6.00\nR-1,roll,pack,24.00\n"
	if err := os.WriteFile(filepath.Join(dir, "prices.csv"), []byte(prices), 0o666); err != nil {
		tb.Fatal(err)
	}
	for i := range n {
		write(tb, filepath.Join(dir, fmt.Sprintf("plan-%04d.plan.json", i)), planAt(i))
	}
	return dir
}

func write(tb testing.TB, path string, value object) {
	tb.Helper()
	text, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		tb.Fatal(err)
	}
	if err := os.WriteFile(path, text, 0o666); err != nil {
		tb.Fatal(err)
	}
}

// planAt is the i-th plan.
func planAt(i int) object {
	builds := []func(int) build{ninePatch, tube, halfSquares, checks, rails, pinwheel}
	b := builds[i%len(builds)](i / len(builds))
	for _, role := range []string{"edge", "back"} {
		b.fabrics[role] = cloth("Fabric of the " + role)
	}
	sizes, printed := object{}, object{}
	for k, name := range []string{"throw", "bed", "cushion"}[:1+i%3] {
		rows, columns := 2*(3+k+i%4), 2*(2+k+i%3)
		sizes[name] = object{"layout": object{"grid": object{"rows": rows, "columns": columns}}}
		printed[name] = object{
			"finished": list{eighths(columns*b.finished + 2*border), eighths(rows*b.finished + 2*border)},
			"parts":    object{b.block: b.per * int64(rows*columns)},
		}
	}
	return object{
		"format": 1, "id": fmt.Sprintf("plan-%04d", i), "title": fmt.Sprintf("Plan %d", i), "revision": "1.0",
		"description": "Made for measuring.", "status": "published", "skill": "intermediate", "use": "throw", "units": "in",
		"cautions": list{"rotary-cutter", "iron", "bias-edges"},
		"seam":     object{"allowance": "1/4", "stitch": "301", "pressing": "to one side"},
		"fabrics":  b.fabrics, "parts": b.parts,
		"tools": object{"rulers": list{object{"square": b.ruler, "angles": list{45}}, object{"size": list{6, 24}, "angles": list{45}}}},
		"layout": object{
			"grid":    object{"rows": 6, "columns": 4, "blocks": b.blocks},
			"borders": object{"frame": object{"fabric": "edge", "width": eighths(border)}},
		},
		"finish": object{
			"backing": object{"fabric": "back", "overhang": 4},
			"batting": object{"overhang": 4},
			"binding": object{"fabric": "edge", "cut": "2 1/2"},
		},
		"kit": object{
			"fabrics": list{"edge"}, "excludes": list{"backing", "batting"}, "minutes": 20 + i%10,
			"packaging": "2.25", "pattern": "2.50", "fixed": 480, "price": "57.00",
		},
		"sizes": sizes, "printed": printed,
	}
}

func eighths(n int) string {
	if n%8 == 0 {
		return fmt.Sprint(n / 8)
	}
	return fmt.Sprintf("%d %d/8", n/8, n%8)
}

func cloth(name string) object {
	return object{"name": name, "sku": "C-1", "yardage": object{"usable_width": 40}}
}

func strip(role string) object { return object{"fabric": role, "width": "2 1/2"} }

func ninePatch(i int) build {
	return build{
		fabrics: object{"dark": cloth("Dark"), "light": cloth("Light"), "plain": cloth("Plain")},
		parts: object{
			"outer":  object{"strip_set": object{"strips": list{strip("dark"), strip("light"), strip("dark")}, "segment": "2 1/2"}},
			"middle": object{"strip_set": object{"strips": list{strip("light"), strip("dark"), strip("light")}, "segment": "2 1/2"}},
			"nine":   object{"rows": list{list{"outer", "middle", "outer"}}},
			"blank":  object{"cut": object{"fabric": "plain", "square": "6 1/2"}},
			"pair":   object{"rows": list{list{"nine", "blank"}, list{"blank", "nine"}}},
		},
		blocks: list{list{"pair"}}, block: "nine", per: 2, finished: 96, ruler: 12,
	}
}

func tube(i int) build {
	return build{
		fabrics: object{"roll": object{
			"name": "Strips", "sku": "R-1",
			"precut": object{"piece": list{"2 1/2", 42}, "usable": list{"2 1/2", eighths(328 + i%9)}, "count": 40, "assorted": true},
		}},
		parts: object{
			"trio": object{"strip_set": object{"strips": list{"roll", "roll", "roll"}}},
			"step": object{"tube": object{"sets": list{"trio", "trio"}, "tip": "far seam", "trim": "8 3/8"}},
		},
		blocks: list{list{"step", object{"part": "step", "turn": 90}}}, block: "step", per: 1, finished: 63, ruler: 12,
	}
}

func halfSquares(i int) build {
	atATime := []int{2, 4, 8}[i%3]
	f := 3 + i%4
	// f + 7/8, sqrt2 f + 1.207107 up to the next eighth, and 2 (f + 7/8), in eighths.
	square := map[int]int{2: 8*f + 7, 4: (8*(1_414_214*f+1_207_107) + 999_999) / 1_000_000, 8: 16*f + 14}[atATime]
	return build{
		fabrics: object{"navy": cloth("Navy"), "cream": cloth("Cream")},
		parts: object{"gull": object{"half_squares": object{
			"fabrics": list{"navy", "cream"}, "square": eighths(square), "at_a_time": atATime, "trim": eighths(8*f + 4),
		}}},
		blocks: list{list{"gull", object{"part": "gull", "turn": 90}}, list{object{"part": "gull", "turn": 270}, object{"part": "gull", "turn": 180}}},
		block:  "gull", per: 1, finished: 8 * f, ruler: 12,
	}
}

func checks(i int) build {
	side := 8 * (3 + i%5)
	b := build{fabrics: object{}, parts: object{}, block: "check-0", ruler: 12}
	const colours = 6
	var cells list
	for c := range colours {
		role, part := fmt.Sprintf("colour-%d", c), fmt.Sprintf("check-%d", c)
		b.fabrics[role] = cloth("Colour")
		b.parts[part] = object{"cut": object{"fabric": role, "square": eighths(side + 4)}}
		cells = append(cells, part)
	}
	b.parts["field"] = object{"rows": list{cells[:3], cells[3:]}}
	b.parts["pair"] = object{"rows": list{list{"field"}, list{"field"}}}
	b.parts["block"] = object{"rows": list{list{"pair", "pair"}, list{"field", "field"}}}
	b.blocks, b.per, b.finished = list{list{"block"}}, 6, 6*side
	return b
}

func rails(i int) build {
	n := 3 + i%3
	b := build{fabrics: object{}, block: "rails", per: 1, finished: 16 * n, ruler: 12}
	var strips list
	for c := range n {
		role := fmt.Sprintf("rail-%d", c)
		b.fabrics[role] = cloth("Rail")
		strips = append(strips, strip(role))
	}
	b.parts = object{"rails": object{"strip_set": object{"strips": strips, "segment": eighths(16*n + 4)}}}
	b.blocks = list{list{"rails", object{"part": "rails", "turn": 90}}, list{object{"part": "rails", "turn": 90}, "rails"}}
	return b
}

func pinwheel(i int) build {
	f := 3 + i%3
	return build{
		fabrics: object{"red": cloth("Red"), "white": cloth("White"), "ground": cloth("Ground")},
		parts: object{
			"dark":   object{"cut": object{"fabric": "red", "square": eighths(8*f + 7), "halved": "once"}},
			"light":  object{"cut": object{"fabric": "white", "square": eighths(8*f + 7), "halved": "once"}},
			"vane":   object{"triangle_square": object{"of": list{"dark", "light"}, "trim": eighths(8*f + 4)}},
			"wheel":  object{"rows": list{list{"vane", turned("vane", 90)}, list{turned("vane", 270), turned("vane", 180)}}},
			"ground": object{"cut": object{"fabric": "ground", "square": eighths(16*f + 4)}},
			"four":   object{"rows": list{list{"wheel", "ground"}, list{"ground", "wheel"}}},
		},
		blocks: list{list{"four"}}, block: "vane", per: 8, finished: 32 * f, ruler: 12,
	}
}

func turned(part string, degrees int) object { return object{"part": part, "turn": degrees} }
