package check

import (
	"maps"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// knownFigure is a printed figure and ways to print it wrong.
type knownFigure struct {
	class string   // the member that it stands under
	path  []string // below the size
	right any
	moves []knownMove
}

type knownMove struct {
	name  string // down, up or double
	value any
}

// knownFigures are the printed figures of a quilt as it was made.
type knownFigures struct {
	k    *knownPlan
	shop *knownShop
	all  []knownFigure
}

func (f *knownFigures) add(right any, down, up, double any, path ...string) {
	f.all = append(f.all, knownFigure{path[0], path, right, []knownMove{{"down", down}, {"up", up}, {"double", double}}})
}

func (f *knownFigures) count(n int64, path ...string) {
	if n > 0 {
		f.add(n, n-1, n+1, 2*n, path...)
	}
}

func (f *knownFigures) length(l, step int64, path ...string) {
	text := func(l int64) string { return knownText(l, f.k.unit) }
	f.add(text(l), text(l-step), text(l+step), text(2*l), path...)
}

// strips prints a number of strips, with the width where they have but one.
func (f *knownFigures) strips(by string) {
	n, widths := f.shop.stripsFor(by)
	if len(widths) == 1 && f.k.r.IntN(2) == 0 {
		f.count(n, "strips", by, "count")
		return
	}
	f.count(n, "strips", by)
}

// rounding is the step that finished lengths are printed in.
func (k *knownPlan) rounding() int64 {
	if k.unit == knownCm {
		return k.unit / 2
	}
	return k.unit / 4
}

// printedFigures are all figures that are known.
func (k *knownPlan) printedFigures(shop *knownShop) []knownFigure {
	f := &knownFigures{k: k, shop: shop}
	grid := k.rounding()
	f.length(shop.finish[0], grid, "finished", "0")
	f.length(shop.finish[1], grid, "finished", "1")
	for _, name := range slices.Sorted(maps.Keys(shop.made)) {
		f.count(shop.made[name], "parts", name)
	}
	for i, b := range k.blocks {
		f.block(b)
		f.length(k.side+2*k.seam, k.step, "measures", k.names[i])
	}
	for _, c := range k.cloths {
		f.cloth(shop.wants[c.role])
	}
	f.count(shop.sashes, "setting", "sashes")
	f.count(shop.stones, "setting", "cornerstones")
	for _, b := range k.borders {
		f.border(b, grid)
	}
	if k.binding != nil {
		f.strips("binding")
	}
	if k.back != "" {
		f.length(shop.backing[0], grid, "backing", "0")
		f.length(shop.backing[1], grid, "backing", "1")
	}
	return f.all
}

func (f *knownFigures) block(b knownBlock) {
	shop := f.shop
	switch b := b.(type) {
	case knownTube:
		set := b.name + "-set"
		f.count(shop.batches[b.name], "tubes", b.name)
		f.count(shop.each[b.name], "per_tube", b.name)
		f.count(shop.batches[set], "sets", set)
		f.strips(set)
	case knownColumns:
		for i, part := range []string{b.name + "-a", b.name + "-b"} {
			if i == 0 || b.role == "" {
				f.count(shop.batches[part], "sets", part)
				f.count(shop.each[part], "per_set", part)
				f.strips(part)
			}
		}
	}
}

func (f *knownFigures) cloth(w *knownWant) {
	role := w.cloth.role
	if w.cloth.pack > 0 {
		packs, left := w.packs()
		f.count(packs, "precuts", role)
		f.count(left, "left", role)
		return
	}
	if len(w.pieces)+len(w.strips) == 0 && w.panels == 0 {
		return
	}
	buy, text := w.buy(), func(l int64) string { return knownBuy(l, f.k.unit) }
	f.add(text(buy), text(buy-w.cloth.grid), text(buy+w.cloth.grid), text(2*buy), "fabric", role)
}

// border prints the cut sizes of a border. Mitred strips may be cut longer: only
// their width is printed.
func (f *knownFigures) border(b knownBorder, grid int64) {
	f.strips(b.name)
	f.length(b.width+2*f.k.seam, f.k.step, "borders", b.name, "cut")
	sides, ends := f.shop.lengths[b.name][0], f.shop.lengths[b.name][1]
	if b.corners == "mitred" {
		return
	}
	f.length(sides, grid, "borders", b.name, "sides")
	f.length(ends, grid, "borders", b.name, "ends")
}

// knownPrint lays figures into what stands below a size.
func knownPrint(figures []knownFigure, wrong int, value any) map[string]any {
	printed := map[string]any{}
	pairs := map[string][2]any{}
	for i, f := range figures {
		v := f.right
		if i == wrong {
			v = value
		}
		switch last := f.path[len(f.path)-1]; {
		case last == "0" || last == "1":
			pair := pairs[f.class]
			pair[int(last[0]-'0')] = v
			pairs[f.class] = pair
			continue
		case last == "count":
			v = map[string]any{"count": v}
		case len(f.path) == 3:
			v = map[string]any{last: v}
		}
		under, ok := printed[f.class].(map[string]any)
		if !ok {
			under = map[string]any{}
			printed[f.class] = under
		}
		name := f.path[1]
		if old, both := under[name].(map[string]any); both {
			maps.Copy(old, v.(map[string]any))
			continue
		}
		under[name] = v
	}
	for class, pair := range pairs {
		printed[class] = pair
	}
	return printed
}

// pointer is where the figure stands in the plan.
func (f knownFigure) pointer() string { return "/printed/only/" + strings.Join(f.path, "/") }

// at reports whether a place is the figure's: its own, or that of the pair or
// object that it stands in.
func (f knownFigure) at(p diag.Place) bool {
	own := f.pointer()
	return p.Pointer == own || len(f.path) > 1 && p.Pointer == own[:strings.LastIndex(own, "/")] && own[len(own)-2] == '/' ||
		strings.HasSuffix(own, "/count") && p.Pointer == strings.TrimSuffix(own, "/count")
}

// told is the gravest level of what is said at the figure, or with it as a
// second place. What is folded under a finding weighs as much as that.
func (f knownFigure) told(found []diag.Finding) diag.Level {
	worst := diag.Level(0)
	for _, x := range found {
		here := f.at(x.Place) || f.told(x.Follows) > 0
		for _, r := range x.Related {
			here = here || f.at(r.Place)
		}
		if here {
			worst = max(worst, x.Level)
		}
	}
	return worst
}

func knownFound(k *knownPlan, printed map[string]any) []diag.Finding {
	_, found := checkText(source.New("known.plan.json", k.text(printed)), nil)
	return found
}
