package cutting

import (
	"slices"

	"yardproof/schema/measure"
)

// SheetResult is a layout of fixed pieces with what is known about fewer.
// Bound counts sheets that no layout of strips can do without, first cuts
// across or along. A Bound above the claim of the Certificate is
// [SheetAreaBound] or [StraightSheets].
type SheetResult struct {
	Layout      SheetLayout
	Bound       int
	Status      Status
	Certificate *SheetCertificate
	Steps       Steps
	Spent       Spent
}

// SheetCertificate proves a bound on sheets as [Certificate] does one on
// length: there is one class, the sheet, whose cost is Scale, and Z is the
// number of sheets. A maximal sheet is one that no other sheet contains.
type SheetCertificate struct {
	Claim int
	Sizes []Size
	Scale int64
	Root  *Proof
}

// SolveSheets finds a layout with few sheets and a lower bound on their number:
// never more than [PlainPieces], and proved fewest where the limits allow. The
// error is that of PlainPieces.
func SolveSheets(p SheetProblem, limits Limits) (SheetResult, error) {
	plain, err := PlainPieces(p)
	if err != nil {
		return SheetResult{}, err
	}
	in := newSheetInstance(p, up)
	limits = limits.withDefaults(len(in.kinds))
	var r SheetResult
	best, bound, scaling := solveStrips(in, limits, known{}, &r.Steps, &r.Spent)
	r.Layout = in.sheetLayout(p, best)
	if plain.Count < r.Layout.Count {
		r.Layout = plain
	}
	if in.coarse {
		in, bound, scaling = r.relax(p, limits)
	}
	r.Bound = SheetAreaBound(p)
	if !in.sheets.axis[0].empty() && !in.sheets.axis[1].empty() {
		r.Bound = max(r.Bound, int(bound.bound))
		r.Certificate = in.sheetCertificate(bound, scaling)
	}
	if r.Bound < r.Layout.Count { // what the limits have left open may be settled without a search
		if limits.Visits = 0; limits.Allowance > 0 {
			limits.Allowance = max(1, limits.Allowance-r.Spent.Work)
		}
		bound, _, spent := StraightSheets(p, limits)
		r.Spent.add(spent)
		r.Bound = max(r.Bound, bound)
	}
	if r.Bound == r.Layout.Count {
		r.Status = Proved
	}
	return r, nil
}

// relax bounds a problem whose sizes share too fine a grid, as [Result.relax]
// does: here heights are rounded down too, as they are stacked in a sheet.
func (r *SheetResult) relax(p SheetProblem, limits Limits) (*instance, proved, scaling) {
	in := newSheetInstance(p, down)
	if in.sheets.axis[0].empty() || in.sheets.axis[1].empty() {
		return in, proved{}, scaling{}
	}
	best, bound, scaling := solveStrips(in, limits, known{}, &r.Steps, &r.Spent)
	if l := in.sheetLayout(p, best); l.Count < r.Layout.Count && l.fits(p) {
		r.Layout = l
	}
	return in, bound, scaling
}

// fits reports whether every strip lies within its sheet, and all of a sheet do.
func (l SheetLayout) fits(p SheetProblem) bool {
	for _, s := range l.Sheets {
		across, along := p.Sheet.Across, p.Sheet.Along
		used := func(r Row) measure.Length { return r.used(p.Pieces) }
		if s.Turned {
			across, along = along, across
			used = func(r Row) measure.Length { return r.usedAlong(p) }
		}
		for _, r := range s.Rows {
			along -= r.Height * measure.Length(r.Repeat)
			if used(r) > across {
				return false
			}
		}
		if along < 0 {
			return false
		}
	}
	return true
}

// usedAlong is [Row.used] of a row that runs along its sheet: pieces and strips
// lie in it by their other sides.
func (r Row) usedAlong(p SheetProblem) measure.Length {
	sum := measure.Length(0)
	for _, c := range r.Cuts {
		_, width := p.Pieces[c.Piece].sides(c.Turned)
		sum += width * measure.Length(c.Count)
	}
	for _, q := range r.Parts {
		sum += p.Strips[q.Strip].Height
	}
	return sum
}

func (in *instance) sheetCertificate(b proved, s scaling) *SheetCertificate {
	c := &SheetCertificate{Claim: int(b.bound), Scale: s.scale, Root: b.proof}
	for _, k := range in.kinds {
		c.Sizes = append(c.Sizes, Size{Across: k.across, Along: k.along, Count: k.demand, Turnable: k.turnable, Together: k.together})
	}
	return c
}

// wholeKinds are whole strips as pieces as wide as what they are cut from.
func wholeKinds(strips []WholeStrip, across measure.Length) []kind {
	var kinds []kind
	for i, s := range strips {
		if full, _ := s.split(across); full > 0 {
			kinds = append(kinds, kind{demand: full, together: 1, across: across, along: s.Height,
				from: []source{{index: i, count: full, name: s.Name, strip: true, width: across}}})
		}
	}
	return kinds
}

// newSheetInstance normalises a sheet problem. Every piece must fit.
func newSheetInstance(p SheetProblem, round rounding) *instance {
	raw := slices.Concat(pieceKinds(p.Pieces, true), partKinds(p.Strips, p.Sheet.Across), wholeKinds(p.Strips, p.Sheet.Across))
	across := make([][]oriented, len(raw))
	along := make([][]oriented, len(raw))
	both := make([][]oriented, len(raw))
	for i, k := range raw {
		across[i] = k.lie(Cloth{Width: p.Sheet.Across}, p.Sheet.Along)
		k.across, k.along = k.along, k.across
		along[i] = k.lie(Cloth{Width: p.Sheet.Along}, p.Sheet.Across)
		both[i] = slices.Concat(along[i], across[i])
	}
	kinds, order := distinct(raw, both)
	in := &instance{width: 1, heights: []int64{1}, unitH: 1, kinds: kinds, sheets: &sheetAxes{}}
	for a, lying := range [][][]oriented{across, along} {
		width, height := p.Sheet.Across, p.Sheet.Along
		if a == 1 {
			width, height = height, width
		}
		axis := assemble(width, height, kinds, pickLying(lying, order), round)
		in.sheets.axis[a] = axis
		in.coarse = in.coarse || axis.coarse
		if len(kinds) > 0 {
			in.sheets.limit[a] = int64(height / axis.unitH)
		}
	}
	return in
}

// ownSheet is the fullest sheet of kind i alone.
func (in *instance) ownSheet(i int, demand []int) pattern {
	var best pattern
	most := 0
	for a, axis := range in.sheets.axis {
		for _, s := range axis.kinds[i].shapes {
			per, rows := axis.width/s.width, int(in.sheets.limit[a]/axis.heights[s.class])
			if per*rows <= most {
				continue
			}
			most = per * rows
			q := pattern{class: s.class, count: make([]int, len(in.kinds))}
			q.count[i] = per
			best = in.sheet(a, slices.Repeat([]pattern{q}, min(rows, ceilDiv(demand[i], per))), demand)
		}
	}
	return best
}

// startSheets is the better of own sheets for every kind and first-fit
// decreasing height, strips across or along.
func (in *instance) startSheets(demand []int) plan {
	var p plan
	for i, d := range demand {
		if d > 0 {
			q := in.ownSheet(i, demand)
			p = append(p, run{q, ceilDiv(d, q.count[i])})
		}
	}
	best := in.tidy(p, demand)
	for a, axis := range in.sheets.axis {
		p := in.tidy(in.stackStrips(a, axis.startPlan(demand), demand), demand)
		if in.covers(p, demand) && in.length(p) < in.length(best) {
			best = p
		}
	}
	return best
}

// pile is a run of equal sheets being filled.
type pile struct {
	strips []pattern
	times  int
	room   int64
}

// stackStrips packs strips into sheets, first-fit decreasing height.
func (in *instance) stackStrips(axis int, strips plan, demand []int) plan {
	var piles []pile
	for _, r := range strips { // tallest first
		piles = stack(piles, r, in.sheets.axis[axis].heights[r.class], in.sheets.limit[axis])
	}
	var p plan
	for _, q := range piles {
		p = append(p, run{in.sheet(axis, q.strips, demand), q.times})
	}
	return p
}

func stack(piles []pile, r run, tall, limit int64) []pile {
	n := r.times
	var out []pile
	put := func(q pile, each, times int) {
		if times > 0 {
			strips := append(slices.Clone(q.strips), slices.Repeat([]pattern{r.pattern}, each)...)
			out = append(out, pile{strips, times, q.room - int64(each)*tall})
		}
	}
	for _, q := range piles {
		per := int(q.room / tall)
		full := 0
		if per > 0 {
			full = min(q.times, n/per)
		}
		put(q, per, full)
		n -= full * per
		rest := q.times - full
		if rest > 0 && n > 0 && per > 0 {
			put(q, n, 1)
			n, rest = 0, rest-1
		}
		put(q, 0, rest)
	}
	per := int(limit / tall)
	put(pile{room: limit}, per, n/per)
	if n%per > 0 {
		put(pile{room: limit}, n%per, 1)
	}
	return out
}

// sheetWaste is the area of a sheet that its pieces leave, in units of the
// first axis.
func (in *instance) sheetWaste(q pattern) int64 {
	axis := in.sheets.axis[0]
	area := int64(axis.width) * in.sheets.limit[0]
	for i, n := range q.count {
		s := axis.kinds[i].shapes[0]
		area -= int64(n) * int64(s.width) * axis.heights[s.class]
	}
	return area
}

// sheetLayout deals a plan of sheets back to the caller's pieces.
func (in *instance) sheetLayout(p SheetProblem, best plan) SheetLayout {
	d := newDealer(in)
	var l SheetLayout
	for _, r := range best {
		for n := 0; n < r.times; n++ {
			l.append(in.cutSheet(p, d, r.pattern))
		}
	}
	return l
}

// append adds a sheet, or repeats the last one if it is cut alike.
func (l *SheetLayout) append(s CutSheet) {
	l.Count += s.Repeat
	if n := len(l.Sheets); n > 0 && alike(l.Sheets[n-1], s) {
		l.Sheets[n-1].Repeat += s.Repeat
		return
	}
	l.Sheets = append(l.Sheets, s)
}

func alike(a, b CutSheet) bool {
	return a.Turned == b.Turned && slices.EqualFunc(a.Rows, b.Rows, alikeRows)
}

func alikeRows(x, y Row) bool {
	return x.Height == y.Height && x.Repeat == y.Repeat && x.Strip == y.Strip &&
		slices.Equal(x.Cuts, y.Cuts) && slices.Equal(x.Parts, y.Parts) &&
		slices.EqualFunc(x.Stacks, y.Stacks, func(s, t Stack) bool {
			return s.Width == t.Width && s.Count == t.Count && slices.Equal(s.Cuts, t.Cuts)
		})
}

// cutSheet names the pieces of one sheet: the strips behind the pattern, less
// the pieces that the plan has trimmed.
func (in *instance) cutSheet(p SheetProblem, d *dealer, q pattern) CutSheet {
	axis := in.sheets.axis[q.strips.axis]
	s := CutSheet{Repeat: 1, Turned: q.strips.axis == 1}
	left := slices.Clone(q.count)
	var strips plan
	for _, strip := range q.strips.strip {
		c := capped(strip, left)
		for i, n := range c.count {
			left[i] -= n
		}
		if pieces(c.count) > 0 {
			c.class = axis.lowest(c)
			strips = append(strips, run{c, 1})
		}
	}
	for _, r := range merged(strips) {
		for n := 0; n < r.times; n++ {
			s.Rows = appendRow(s.Rows, d.sheetRow(p, axis, s.Turned, r.pattern))
		}
	}
	return s
}

func appendRow(rows []Row, r Row) []Row {
	if n := len(rows); n > 0 && alikeRows(rows[n-1], withRepeat(r, rows[n-1].Repeat)) {
		rows[n-1].Repeat++
		return rows
	}
	return append(rows, r)
}

func withRepeat(r Row, n int) Row {
	r.Repeat = n
	return r
}

// sheetRow names the pieces of one strip of a sheet.
func (d *dealer) sheetRow(p SheetProblem, axis *instance, along bool, q pattern) Row {
	row := Row{Height: axis.rowHeight(q), Repeat: 1, Strip: -1}
	for i, c := range q.count {
		if c == 0 {
			continue
		}
		width := axis.fit(i, q.class).across
		turned := func(q Piece) bool {
			if along {
				return q.Along != width
			}
			return q.Across != width
		}
		d.deal(p.Pieces, &row, i, c, 1, turned)
	}
	if len(row.Parts) == 1 && !along && row.Parts[0].Width == p.Sheet.Across {
		row.Strip, row.Parts = row.Parts[0].Strip, nil
	}
	return row
}
