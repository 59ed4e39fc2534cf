package hostile

import (
	"fmt"
	"math/rand"
)

func grid(rows, columns int, blocks ...any) object {
	return object{"grid": object{"rows": rows, "columns": columns, "blocks": list{blocks}}}
}

// mosaic is a part of so many pieces of random sizes that are cut from one
// fabric, and the parts they are.
func mosaic(r *rand.Rand, parts object, name, fabric string, pieces, low, high int) (area int) {
	counts := object{}
	for n := range pieces {
		piece := fmt.Sprintf("%s-%02d", name, n)
		w, h, count := low+r.Intn(high-low), low+r.Intn(high-low), 1+r.Intn(9)
		parts[piece] = object{"cut": object{"fabric": fabric, "size": list{sixteenths(w), sixteenths(h)}}}
		counts[piece] = count
		area += count * (w - 8) * (h - 8)
	}
	side := 1
	for side*side < area {
		side++
	}
	parts[name] = object{"mosaic": object{"pieces": counts, "finished": list{sixteenths(side), sixteenths(side)}, "edges": "trimmed"}}
	return area
}

// rowsOf is a block of rows of two, every row equally wide and the two of a row
// equally high, no two pieces of one size.
func rowsOf(r *rand.Rand, parts object, name, fabric string, rows int) (area, wide, high int) {
	wide = 16 * 34
	var block list
	for n := range rows {
		left, h := 40+r.Intn(wide/2-60), 24+r.Intn(90)
		a, b := fmt.Sprintf("%s-%02d-a", name, n), fmt.Sprintf("%s-%02d-b", name, n)
		parts[a] = object{"cut": object{"fabric": fabric, "size": list{sixteenths(left), sixteenths(h)}}}
		parts[b] = object{"cut": object{"fabric": fabric, "size": list{sixteenths(wide - left), sixteenths(h)}}}
		block = append(block, list{a, b})
		area += wide * h
		high += h - 8
	}
	parts[name] = object{"rows": block}
	return area, wide, high + 8
}

// near has few cut sizes in many sizes of the quilt, and prints of each a length
// that only a search tells is enough or not: so much more than the area of its
// pieces takes, with an inch for squaring up, and a little more with each size.
func near(pieces int, seed int64, more float64) object {
	r := rand.New(rand.NewSource(seed))
	p := plan("near")
	parts := object{}
	area, _, _ := rowsOf(r, parts, "block", "sky", (pieces+1)/2)
	p["fabrics"] = object{"sky": cloth("41 5/8")}
	p["parts"] = parts
	p["layout"] = grid(3, 2, "block")
	said := object{}
	for n := range mostSizes {
		total := float64(area) * float64(2*(3+n)) / 16 / 41.625 / 16
		said[sizeName(n)] = object{"fabric": object{"sky": inches(total*(more+0.0001*float64(n)) + 1)}}
	}
	p["printed"] = said
	return p
}

// cuts has so many cut sizes in many sizes of the quilt. It prints nothing where
// more is 0.
func cuts(pieces int, more float64) object {
	p := near(pieces, 107, more)
	p["id"], p["title"] = "many-cuts", "many-cuts"
	if more == 0 {
		delete(p, "printed")
	}
	return p
}

// letters stand for parts in a map.
const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz01234567"

// quiltMap is as many blocks as can be, no two neighbours alike, in every size.
func quiltMap() object {
	p := plan("map")
	parts, key, fabrics := object{}, object{}, object{}
	for n := range mostFabrics {
		role := fmt.Sprintf("f%02d", n)
		fabrics[role] = cloth("40")
		name := fmt.Sprintf("p%02d", n)
		parts[name] = object{"cut": object{"fabric": role, "square": "2 1/2"}}
		key[letters[n:n+1]] = name
	}
	p["fabrics"], p["parts"] = fabrics, parts
	p["layout"] = object{"map": object{"rows": mapRows(rand.New(rand.NewSource(109)), mostBlocks), "key": key}}
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"fabrics": object{"f00": object{"yardage": object{"usable_width": sixteenths(16*40 + n)}}}}
	}
	p["sizes"] = sizes
	return p
}

func mapRows(r *rand.Rand, rows int) list {
	var all list
	for range rows {
		row := make([]byte, mostBlocks)
		for i := range row {
			row[i] = letters[r.Intn(len(letters))]
		}
		all = append(all, string(row))
	}
	return all
}

// colourways is every size in as many colourways as can be.
func colourways() object {
	p := near(8, 113, 1.02)
	p["id"], p["title"] = "colourways", "colourways"
	ways := object{}
	for n := range mostWays {
		ways[fmt.Sprintf("way-%02d", n)] = object{"fabrics": object{"sky": object{"sku": fmt.Sprintf("C-%d", n), "yardage": object{"usable_width": sixteenths(16*41 + n)}}}}
	}
	p["colourways"] = ways
	p["kit"] = object{"fabrics": list{"sky"}, "minutes": 10, "price": "60.00", "packaging": "1.00"}
	delete(p, "printed")
	return p
}

// fabrics has as many fabrics as can be, each with pieces of its own.
func fabrics() object {
	r := rand.New(rand.NewSource(127))
	p := plan("fabrics")
	fabrics, parts, said := object{}, object{}, object{}
	var blocks list
	for n := range mostFabrics {
		role, name := fmt.Sprintf("f%02d", n), fmt.Sprintf("b%02d", n)
		fabrics[role] = cloth(sixteenths(16*40 + n))
		rowsOf(r, parts, name, role, 2)
		blocks = append(blocks, list{name})
	}
	p["fabrics"], p["parts"] = fabrics, parts
	p["layout"] = object{"grid": object{"rows": mostFabrics, "columns": 3, "blocks": blocks}}
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"layout": object{"grid": object{"columns": 3 + n}}}
		lengths := object{}
		for role := range fabrics {
			lengths[role] = fmt.Sprintf("%d yd", 1+n/4)
		}
		said[sizeName(n)] = object{"fabric": lengths}
	}
	p["sizes"], p["printed"] = sizes, said
	return p
}

// chain has as many parts as can be, each made of the one before.
func chain() object {
	p := plan("chain")
	parts := object{"p000": object{"cut": object{"fabric": "sky", "square": "2 1/2"}}}
	for n := 1; n < mostParts; n++ {
		before, now := fmt.Sprintf("p%03d", n-1), fmt.Sprintf("p%03d", n)
		if n%3 == 0 {
			parts[now] = object{"rows": list{list{before, object{"part": before, "turn": 180}}}}
			if n > 24 {
				parts[now] = object{"trim": object{"part": before, "down_to": "1/64"}}
			}
			continue
		}
		parts[now] = object{"rows": list{list{before}}}
	}
	p["fabrics"], p["parts"] = object{"sky": cloth("40")}, parts
	p["layout"] = grid(3, 2, fmt.Sprintf("p%03d", mostParts-1))
	return p
}

// mosaics have as many pieces of as many sizes as can be.
func mosaics() object {
	r := rand.New(rand.NewSource(131))
	p := plan("mosaics")
	parts := object{}
	area := 0
	for n := range 4 {
		area += mosaic(r, parts, fmt.Sprintf("m%d", n), "sky", mostPieces, 20, 300)
	}
	p["fabrics"], p["parts"] = object{"sky": cloth("43 13/16")}, parts
	p["layout"] = object{"grid": object{"rows": 4, "columns": 2, "blocks": list{list{"m0"}, list{"m1"}, list{"m2"}, list{"m3"}}}}
	said := object{}
	for n := range mostSizes {
		said[sizeName(n)] = object{"fabric": object{"sky": fmt.Sprintf("%d yd", 20+3*n)}}
	}
	p["printed"] = said
	return p
}

// logs has as many rounds of logs, and as many blocks of them, as can be.
func logs() object {
	p := plan("logs")
	var rounds list
	fabrics := object{}
	for n := range 40 {
		role := fmt.Sprintf("f%02d", n)
		fabrics[role] = cloth("40")
		rounds = append(rounds, role)
	}
	p["fabrics"] = fabrics
	p["parts"] = object{
		"cabin": object{"logs": object{"centre": object{"fabric": "f00", "finished": "2"}, "log": "1", "rounds": 40, "fabrics": object{"rounds": rounds}}},
	}
	p["layout"] = grid(3, mostBlocks, "cabin")
	return p
}

// borders has as many borders as can be about as many blocks, in every size.
func borders() object {
	p := plan("borders")
	fabrics, around := object{}, object{}
	for n := range mostBorders {
		role := fmt.Sprintf("f%02d", n)
		fabrics[role] = object{"print": "one-way", "yardage": object{"usable_width": "40"}}
		around[fmt.Sprintf("border-%02d", n)] = object{"fabric": role, "width": sixteenths(16 + n), "corners": []string{"butted", "corner squares", "mitred"}[n%3], "corner_fabric": nil}
	}
	for n := range mostBorders {
		b := around[fmt.Sprintf("border-%02d", n)].(object)
		delete(b, "corner_fabric")
	}
	fabrics["sky"] = cloth("40")
	layout := grid(mostBlocks, mostBlocks, "plain")
	layout["borders"] = around
	layout["sashing"] = object{"fabric": "sky", "width": "1", "cornerstones": "f00", "outer": true}
	p["fabrics"], p["layout"] = fabrics, layout
	p["parts"] = object{"plain": object{"cut": object{"fabric": "sky", "square": "2 1/2"}}}
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"layout": object{"grid": object{"rows": mostBlocks - n}}}
	}
	p["sizes"] = sizes
	p["finish"] = object{"backing": object{"fabric": "sky", "overhang": "4"}, "batting": object{"overhang": "4"}, "binding": object{"fabric": "sky", "cut": "2 1/2"}}
	return p
}

// widths has many sizes of piece that share one height, which may be cut from
// common strips, and prints their strips.
func widths() object {
	r := rand.New(rand.NewSource(149))
	p := plan("widths")
	parts, counts, strips := object{}, object{}, object{}
	for n := range mostPieces {
		name := fmt.Sprintf("p%02d", n)
		parts[name] = object{"cut": object{"fabric": "sky", "size": list{parts64(100 + 37*n + r.Intn(30)), "2 1/2"}}}
		counts[name] = 1 + r.Intn(9)
		strips[name] = 2 + n%5
	}
	parts["row"] = object{"mosaic": object{"pieces": counts, "finished": list{"60", "60"}, "edges": "trimmed"}}
	p["fabrics"], p["parts"], p["layout"] = object{"sky": cloth("41 63/64")}, parts, grid(3, 2, "row")
	said := object{}
	for n := range mostSizes {
		said[sizeName(n)] = object{"strips": strips, "fabric": object{"sky": inches(104 * float64(3+n))}}
	}
	p["printed"] = said
	return p
}
