package check

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
)

// knownPlan is an invented recipe that is small enough to be made one piece at
// a time.
type knownPlan struct {
	r            *rand.Rand
	unit, step   int64 // inch or centimetre, and the line that lengths lie on
	seam, side   int64 // side of a block, finished
	cloths       []*knownCloth
	blocks       []knownBlock
	names        []string
	rows         [][]int // which block stands where
	sash         *knownSash
	borders      []knownBorder
	binding      *knownBinding
	back         string
	over, panels int64 // overhang of the backing, and the allowance between its panels
}

type knownSash struct {
	role, stone string // no stones: the sashes between rows run through
	width       int64  // finished
	outer       bool
}

type knownBorder struct {
	name, role, corner string
	width              int64 // finished
	corners            string
	endsFirst          bool
	straight           bool // joined straight
}

type knownBinding struct {
	role     string
	cut      int64
	straight bool
}

// between is a random multiple of the plan's step.
func (k *knownPlan) between(from, to int64) int64 {
	from, to = upTo(from, k.step), to-to%k.step
	if to <= from {
		return from
	}
	return from + k.step*k.r.Int64N((to-from)/k.step+1)
}

// in is a length that is about so many eighths of an inch.
func (k *knownPlan) in(eighths int64) int64 {
	if k.unit == knownInch {
		return eighths * knownInch / 8
	}
	return eighths * knownCm / 4 // 1/4 cm is near enough to 1/8 in
}

func (k *knownPlan) role(of func(*knownCloth) bool) string {
	for {
		c := k.cloths[k.r.IntN(len(k.cloths))]
		if of == nil || of(c) {
			return c.role
		}
	}
}

func (k *knownPlan) yardage() string { return k.role(func(c *knownCloth) bool { return c.pack == 0 }) }

func newKnownPlan(seed uint64) *knownPlan {
	k := &knownPlan{r: rand.New(rand.NewPCG(seed, 11)), unit: knownInch, step: knownInch / 8, seam: knownInch / 4}
	if k.r.IntN(3) == 0 {
		k.unit, k.step, k.seam = knownCm, knownCm/10, knownCm*3/4
		if k.r.IntN(2) == 0 {
			k.seam = knownCm
		}
	}
	for i := range 2 + k.r.IntN(3) {
		k.cloths = append(k.cloths, k.cloth(string(rune('a'+i)), i > 0))
	}
	k.side = k.between(k.in(4*8), k.in(10*8))
	k.side -= k.side % (2 * k.step)
	n := 1 + k.r.IntN(3)
	for i := range n {
		k.block(fmt.Sprintf("block%d", i+1), i == 0)
	}
	k.lay(1+k.r.IntN(6), 1+k.r.IntN(6))
	k.round()
	return k
}

// cloth is yardage of some width, or a pack of strips, fat quarters or squares.
func (k *knownPlan) cloth(role string, precut bool) *knownCloth {
	c := &knownCloth{role: role}
	if precut && k.r.IntN(3) == 0 {
		c.pack = int64(1 + k.r.IntN(20))
		c.nominalLow, c.nominalLong = k.in(18*8), k.in(22*8)
		switch k.r.IntN(3) {
		case 0:
			c.nominalLow, c.nominalLong = k.in(20), k.in(42*8)
		case 1:
			c.nominalLow, c.nominalLong = k.in(80), k.in(80)
		}
		c.short, c.long = c.nominalLow, c.nominalLong
		if c.long > c.short {
			c.long -= k.in(16) // selvages, and a fat quarter cut scantily
		}
		return c
	}
	c.width, c.squaring, c.grid = k.in(8*int64(34+k.r.IntN(7))), k.in(8*int64(k.r.IntN(2))), 36*knownInch/8
	if k.unit == knownCm {
		c.grid = 10 * knownCm
	}
	c.grid *= int64(1 + k.r.IntN(2))
	if k.r.IntN(5) == 0 {
		c.lossWidth, c.lossLength = int64(k.r.IntN(4)), int64(k.r.IntN(6))
	}
	return c
}

// split parts the side of a block into n finished widths.
func (k *knownPlan) split(n int64) []int64 {
	left, least := k.side, k.in(8)
	var all []int64
	for i := n - 1; i > 0; i-- {
		w := k.between(least, left-i*least)
		all, left = append(all, w), left-w
	}
	return append(all, left)
}

func (k *knownPlan) set(widths []int64) []knownSetStrip {
	var all []knownSetStrip
	for _, w := range widths {
		all = append(all, knownSetStrip{role: k.role(nil), width: w + 2*k.seam})
	}
	return all
}

// block adds a way to make a block. A tube comes first: it says how large the
// blocks are.
func (k *knownPlan) block(name string, first bool) {
	k.names = append(k.names, name)
	kind := k.r.IntN(6)
	if kind == 0 && !first {
		kind = 1
	}
	unfinished := k.side + 2*k.seam
	var b knownBlock
	switch kind {
	case 0:
		b = k.tube(name)
	case 1:
		b = knownPlain{name, k.role(nil), unfinished}
	case 2:
		b = k.columns(name)
	case 3:
		b = k.halves(name)
	case 4:
		g := knownGeese{name: name, goose: k.role(nil), sky: k.role(nil), side: k.side, seam: k.seam}
		if k.r.IntN(2) == 0 {
			g.large = upTo(k.side+2*k.seam+root2Up(2*k.seam), k.step)
			g.small = upTo(k.side/2+2*k.seam+root2Up(k.seam), k.step)
		}
		b = g
	case 5:
		b = k.logs(name)
	}
	k.blocks = append(k.blocks, b)
}

func (k *knownPlan) tube(name string) knownTube {
	t := knownTube{name: name, seam: k.seam, ears: k.r.IntN(2) == 0, side: max(1, int64(k.r.IntN(4)))}
	width := k.between(k.in(16), k.in(32))
	packed := k.role(nil)
	if c := k.find(packed); c.pack > 0 && c.short < k.in(32) {
		width = c.short
	}
	for range 2 + k.r.IntN(2) {
		role := k.role(func(c *knownCloth) bool { return c.pack == 0 || c.short >= width })
		t.strips = append(t.strips, knownSetStrip{role, width, k.find(role).pack > 0 && k.find(role).short == width})
	}
	t.trim = root2Down(t.high())
	t.trim -= t.trim % (2 * k.step)
	k.side = t.trim - 2*k.seam
	if k.side%(2*k.step) != 0 {
		k.side -= k.side % (2 * k.step)
		t.trim = k.side + 2*k.seam
	}
	return t
}

func (k *knownPlan) find(role string) *knownCloth {
	return k.cloths[slices.IndexFunc(k.cloths, func(c *knownCloth) bool { return c.role == role })]
}

func (k *knownPlan) columns(name string) knownColumns {
	b := knownColumns{name: name, order: "ab", side: k.side + 2*k.seam}
	widths := k.split(2)
	if rest := k.side - 2*widths[0]; rest >= k.in(8) {
		b.order, widths[1] = "aba", rest
	}
	n := int64(2 + k.r.IntN(3))
	for i := range 2 {
		b.sets[i], b.segments[i] = k.set(k.split(n)), widths[i]+2*k.seam
	}
	if k.r.IntN(3) == 0 {
		b.role = k.role(nil)
	}
	return b
}

func (k *knownPlan) halves(name string) knownHalves {
	b := knownHalves{name: name, roles: [2]string{k.cloths[0].role, k.cloths[1].role}, across: 1 + k.r.IntN(2), atATime: 2 << k.r.IntN(3)}
	b.trim = k.side/int64(b.across) + 2*k.seam
	switch b.atATime {
	case 2: // sewn s to each side of the diagonal
		b.square = upTo(b.trim+root2Up(k.seam), k.step)
	case 4: // sewn all round: half the square, less the seam, times the root of 2
		b.square = upTo(root2Up(b.trim)+2*k.seam, k.step)
	case 8: // four times two at a time
		b.square = 2 * upTo(b.trim+root2Up(k.seam), k.step)
	}
	return b
}

func (k *knownPlan) logs(name string) knownLogs {
	b := knownLogs{name: name, centre: k.role(nil), seam: k.seam, rounds: int64(1 + k.r.IntN(3)), courthouse: k.r.IntN(2) == 0}
	for b.rounds > 1 && k.side < (2*b.rounds+1)*k.in(8) {
		b.rounds--
	}
	b.log = k.between(k.in(6), (k.side-k.in(8))/(2*b.rounds))
	b.core = k.side - 2*b.rounds*b.log
	for range 1 + k.r.IntN(2) {
		b.roles = append(b.roles, k.role(nil))
	}
	return b
}

// lay puts every block somewhere and sashes between them.
func (k *knownPlan) lay(rows, columns int) {
	k.rows = make([][]int, rows)
	for y := range k.rows {
		for x := range columns {
			k.rows[y] = append(k.rows[y], (x+y*columns+k.r.IntN(2))%len(k.blocks))
		}
	}
	if k.r.IntN(3) == 0 {
		k.sash = &knownSash{role: k.yardage(), width: k.between(k.in(8), k.in(20)), outer: k.r.IntN(2) == 0}
		if k.r.IntN(3) > 0 {
			k.sash.stone = k.role(nil)
		}
	}
}

// round adds borders, backing and binding.
func (k *knownPlan) round() {
	for i := range k.r.IntN(3) {
		b := knownBorder{name: fmt.Sprintf("border%d", i+1), role: k.yardage(), width: k.between(k.in(8), k.in(40)), straight: k.r.IntN(3) == 0}
		b.corners = []string{"butted", "corner squares", "mitred"}[k.r.IntN(3)]
		if i > 0 && k.borders[i-1].corners == b.corners {
			b.corners = "butted" // two mitred borders in a row are sewn as one
		}
		b.corner, b.endsFirst = k.yardage(), b.corners == "butted" && k.r.IntN(2) == 0
		k.borders = append(k.borders, b)
	}
	if k.r.IntN(4) > 0 {
		least := max(k.in(16), 6*k.seam+k.in(3)) // six layers of seam, and the fold
		k.binding = &knownBinding{k.yardage(), k.between(least, least+k.in(6)), k.r.IntN(2) == 0}
	}
	if k.r.IntN(2) == 0 {
		k.back, k.over, k.panels = k.yardage(), k.in(8*int64(2+k.r.IntN(3))), k.in(4)
	}
}

// text writes the plan with its printed figures.
func (k *knownPlan) text(printed map[string]any) []byte {
	units, cloths, parts := map[int64]string{knownInch: "in", knownCm: "cm"}[k.unit], map[string]any{}, map[string]any{}
	for _, c := range k.cloths {
		cloths[c.role] = c.plan(k.unit)
	}
	for _, b := range k.blocks {
		for name, part := range b.parts(k.unit) {
			parts[name] = part
		}
	}
	var blocks [][]string
	for _, row := range k.rows {
		var names []string
		for _, b := range row {
			names = append(names, k.names[b])
		}
		blocks = append(blocks, names)
	}
	layout := map[string]any{"grid": map[string]any{"rows": len(k.rows), "columns": len(k.rows[0]), "blocks": blocks}}
	k.frame(layout)
	text, err := json.Marshal(map[string]any{
		"format": 1, "id": "known", "title": "Known", "status": "draft", "units": units, "skill": "beginner", "use": "table",
		"cautions": []string{"rotary-cutter", "iron"}, "seam": map[string]any{"allowance": knownText(k.seam, k.unit), "stitch": "301"},
		"fabrics": cloths, "parts": parts, "layout": layout, "finish": k.finish(), "sizes": map[string]any{"only": map[string]any{}},
		"printed": map[string]any{"only": printed},
	})
	if err != nil {
		panic(err)
	}
	return text
}

func knownJoins(straight bool) string {
	if straight {
		return "straight"
	}
	return "diagonal"
}

func (k *knownPlan) frame(layout map[string]any) {
	if s := k.sash; s != nil {
		sashing := map[string]any{"fabric": s.role, "width": knownText(s.width, k.unit), "outer": s.outer}
		if s.stone != "" {
			sashing["cornerstones"] = s.stone
		}
		layout["sashing"] = sashing
	}
	borders := map[string]any{}
	for _, b := range k.borders {
		border := map[string]any{"fabric": b.role, "width": knownText(b.width, k.unit), "corners": b.corners, "joins": knownJoins(b.straight)}
		if b.corners == "corner squares" {
			border["corner_fabric"] = b.corner
		}
		if b.endsFirst {
			border["first"] = "ends"
		}
		borders[b.name] = border
	}
	if len(borders) > 0 {
		layout["borders"] = borders
	}
}

func (k *knownPlan) finish() map[string]any {
	finish := map[string]any{}
	if b := k.binding; b != nil {
		allowance := knownText(k.in(80), k.unit)
		finish["binding"] = map[string]any{"fabric": b.role, "cut": knownText(b.cut, k.unit), "joins": knownJoins(b.straight), "allowance": allowance}
	}
	if k.back != "" {
		finish["backing"] = map[string]any{"fabric": k.back, "overhang": knownText(k.over, k.unit), "seam": knownText(k.panels, k.unit)}
	}
	return finish
}
