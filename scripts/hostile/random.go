package hostile

import (
	"fmt"
	"math/rand"
)

// Random is a plan at some of the limits at once, a different one for each seed: of
// few or many cut sizes, in blocks or mosaics, from bolts or packs, printed or not,
// with or without colourways.
func Random(seed int64) Plan {
	r := rand.New(rand.NewSource(seed))
	var p object
	switch r.Intn(4) {
	case 0:
		p = near(4+r.Intn(24), seed, 1+0.05*r.Float64())
	case 1:
		p = near(40+r.Intn(120), seed, 1+0.03*r.Float64())
	case 2:
		p = randomMosaics(r)
	default:
		p = randomPacks(r)
	}
	if r.Intn(3) == 0 {
		delete(p, "printed")
	}
	name := fmt.Sprintf("random-%d", seed)
	p["id"], p["title"] = name, name
	return Plan{Name: name, Text: text(p)}
}

// randomMosaics are of many sizes on a random grid, from cloth of random width.
func randomMosaics(r *rand.Rand) object {
	p := plan("mosaics")
	parts, said := object{}, object{}
	area, low := 0, 10+r.Intn(40)
	kinds := 1 + r.Intn(4)
	var blocks list
	for n := range kinds {
		name := fmt.Sprintf("m%d", n)
		area += mosaic(r, parts, name, "sky", 2+r.Intn(mostPieces-1), low, low+1+r.Intn(300))
		blocks = append(blocks, list{name})
	}
	width := 16*36 + r.Intn(16*30)
	p["fabrics"], p["parts"] = object{"sky": cloth(sixteenths(width))}, parts
	p["layout"] = object{"grid": object{"rows": kinds, "columns": 1, "blocks": blocks}}
	for n := range mostSizes {
		p["sizes"].(object)[sizeName(n)] = object{"layout": object{"grid": object{"columns": 1 + n}}}
		said[sizeName(n)] = object{"fabric": object{"sky": inches(float64(area*(1+n)) / float64(width) / 16 * (1.1 + 0.3*r.Float64()))}}
	}
	p["printed"] = said
	return p
}

// randomPacks cut many sizes from packs of random pieces.
func randomPacks(r *rand.Rand) object {
	p := plan("packs")
	parts, said := object{}, object{}
	wide, long := 16*8+r.Intn(16*12), 16*8+r.Intn(16*30)
	most := min(wide, long) - 1
	mosaic(r, parts, "m", "sky", 2+r.Intn(30), 12, 13+r.Intn(most-12))
	p["fabrics"] = object{"sky": object{"precut": object{"piece": list{sixteenths(wide), sixteenths(long)}, "count": 1 + r.Intn(10)}}}
	p["parts"], p["layout"] = parts, grid(3, 1, "m")
	for n := range mostSizes {
		said[sizeName(n)] = object{"precuts": object{"sky": 1 + r.Intn(40*(n+1))}}
	}
	p["printed"] = said
	return p
}
