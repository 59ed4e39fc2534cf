package hostile

import (
	"fmt"
	"math/rand"
)

// names has names as long as can be.
func names() object {
	p := plan("names")
	long := func(prefix string, n int) string {
		name := fmt.Sprintf("%s%03d-", prefix, n)
		for len(name) < longest {
			name += "m"
		}
		return name
	}
	title := func(n int) string {
		t := fmt.Sprintf("%03d ", n)
		for len(t) < mostTitle {
			t += "W"
		}
		return t
	}
	fabrics, parts := object{}, object{}
	var rows list
	for n := range mostFabrics {
		fabrics[long("f", n)] = object{"name": title(n), "yardage": object{}}
	}
	for n := range mostParts - 1 {
		parts[long("p", n)] = object{"cut": object{"fabric": long("f", n%mostFabrics), "square": "2 1/2"}}
	}
	for n := range 13 {
		var row list
		for c := range 23 {
			row = append(row, long("p", n*23+c))
		}
		rows = append(rows, row)
	}
	parts[long("b", 0)] = object{"rows": rows}
	p["fabrics"], p["parts"] = fabrics, parts
	p["layout"] = grid(3, 2, long("b", 0))
	sizes := object{}
	for n := range mostSizes {
		sizes[long("s", n)] = object{"layout": object{"grid": object{"rows": 3 + n}}}
	}
	p["sizes"] = sizes
	return p
}

// printed prints a figure of everything, in every size.
func printed() object {
	p := plan("printed")
	fabrics, parts := object{}, object{}
	var rows list
	for n := range mostFabrics {
		fabrics[fmt.Sprintf("f%02d", n)] = cloth("40")
	}
	for n := range 140 {
		role := fmt.Sprintf("f%02d", n%mostFabrics)
		parts[fmt.Sprintf("set-%03d", n)] = object{"strip_set": object{"segment": "2 1/2", "strips": list{
			object{"fabric": role, "width": sixteenths(24 + n%40)}, object{"fabric": fmt.Sprintf("f%02d", (n+7)%mostFabrics), "width": sixteenths(24 + (n+11)%40)}}}}
		parts[fmt.Sprintf("cut-%03d", n)] = object{"cut": object{"fabric": role, "size": list{sixteenths(16 + n), "2 1/2"}}}
	}
	for n := range 10 {
		var row list
		for c := range 14 {
			row = append(row, fmt.Sprintf("set-%03d", n*14+c), fmt.Sprintf("cut-%03d", n*14+c))
		}
		rows = append(rows, row)
	}
	parts["block"] = object{"rows": rows}
	p["fabrics"], p["parts"], p["layout"] = fabrics, parts, grid(3, 2, "block")
	said := object{}
	for s := range mostSizes {
		counts, measures, strips, sets, lengths := object{}, object{}, object{}, object{}, object{}
		for name := range parts {
			counts[name], measures[name], strips[name] = 2*(3+s), list{"3", "3"}, 4+s
			if name[0] == 's' {
				sets[name] = 1 + s/4
			}
		}
		for role := range fabrics {
			lengths[role] = fmt.Sprintf("%d 1/8 yd", 1+s/4)
		}
		said[sizeName(s)] = object{"finished": list{"60", "72"}, "parts": counts, "measures": measures, "strips": strips, "sets": sets, "fabric": lengths}
	}
	p["printed"] = said
	return p
}

// precuts has as many packs as can be, and as many sizes of pieces from each.
func precuts() object {
	r := rand.New(rand.NewSource(139))
	p := plan("precuts")
	fabrics, parts, said := object{}, object{}, object{}
	var blocks list
	for n := range 20 {
		role, name := fmt.Sprintf("f%02d", n), fmt.Sprintf("b%02d", n)
		fabrics[role] = object{"precut": object{"piece": list{"18", sixteenths(16*21 + n)}, "count": 1, "assorted": n%2 == 0}}
		counts := object{}
		for c := range 12 {
			piece := fmt.Sprintf("%s-%02d", name, c)
			parts[piece] = object{"cut": object{"fabric": role, "size": list{sixteenths(20 + r.Intn(110)), sixteenths(20 + r.Intn(110))}}}
			counts[piece] = 1 + r.Intn(4)
		}
		parts[name] = object{"mosaic": object{"pieces": counts, "finished": list{"24", "24"}, "edges": "trimmed"}}
		blocks = append(blocks, list{name})
	}
	p["fabrics"], p["parts"] = fabrics, parts
	p["layout"] = object{"grid": object{"rows": 20, "columns": 1, "blocks": blocks}}
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"layout": object{"grid": object{"columns": 1 + n}}}
		packs := object{}
		for role := range fabrics {
			packs[role] = 2 + n
		}
		said[sizeName(n)] = object{"precuts": packs}
	}
	p["sizes"], p["printed"] = sizes, said
	return p
}

// kits are of as many fabrics and things as can be, in every size and colourway.
func kits() object {
	p := fabrics()
	p["id"], p["title"] = "kits", "kits"
	var roles, things list
	label, ways := object{}, object{}
	for n := range mostFabrics {
		role := fmt.Sprintf("f%02d", n)
		roles = append(roles, role)
		label[role] = "1 yd"
		p["fabrics"].(object)[role].(object)["sku"] = fmt.Sprintf("S-%d", n)
	}
	for n := range 40 {
		things = append(things, object{"name": fmt.Sprintf("Thing %d", n), "price": "0.40"})
	}
	for n := range mostWays {
		changed := object{}
		for f := range mostFabrics {
			changed[fmt.Sprintf("f%02d", f)] = object{"sku": fmt.Sprintf("C-%d-%d", n, f)}
		}
		ways[fmt.Sprintf("way-%02d", n)] = object{"fabrics": changed}
	}
	p["kit"] = object{"fabrics": roles, "things": things, "label": label, "price": "60.00"}
	p["colourways"] = ways
	delete(p, "printed")
	return p
}

// wrong has something wrong in every place.
func wrong() object {
	p := plan("wrong")
	parts := object{}
	for n := range 100 {
		parts[fmt.Sprintf("p%03d", n)] = object{"cut": object{"fabric": "sky", "size": list{sixteenths(40 + n), sixteenths(50 + n)}}}
	}
	var blocks list
	for row := range mostBlocks {
		var cells list
		for c := range mostBlocks {
			cells = append(cells, fmt.Sprintf("p%03d", (row*7+c*3)%100))
		}
		blocks = append(blocks, cells)
	}
	p["fabrics"], p["parts"] = object{"sky": cloth("40")}, parts
	p["layout"] = object{"grid": object{"rows": mostBlocks, "columns": mostBlocks, "blocks": blocks}}
	sizes := object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"layout": object{"grid": object{"rows": mostBlocks - n}}}
	}
	p["sizes"] = sizes
	return p
}

// smallest cuts the smallest of pieces from the widest of cloths.
func smallest() object {
	p := plan("smallest")
	parts, counts := object{}, object{}
	r := rand.New(rand.NewSource(137))
	for n := range mostPieces {
		name := fmt.Sprintf("p%02d", n)
		parts[name] = object{"cut": object{"fabric": "sky", "size": list{parts64(33 + r.Intn(90)), parts64(33 + r.Intn(90))}}}
		counts[name] = mostCount - n
	}
	parts["dust"] = object{"mosaic": object{"pieces": counts, "finished": list{"400", "400"}, "edges": "trimmed"}}
	p["fabrics"], p["parts"], p["layout"] = object{"sky": cloth("2000 1/64")}, parts, grid(1, 1, "dust")
	sizes, said := object{}, object{}
	for n := range mostSizes {
		sizes[sizeName(n)] = object{"fabrics": object{"sky": cloth(fmt.Sprintf("%d 1/64", 2000-n))}}
		said[sizeName(n)] = object{"fabric": object{"sky": inches(216 + 2*float64(n))}}
	}
	p["sizes"], p["printed"] = sizes, said
	return p
}
