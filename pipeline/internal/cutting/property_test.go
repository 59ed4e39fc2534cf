package cutting

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"yardproof/schema/measure"
)

// describe writes a layout by names and in units, so that layouts of the same
// problem on different grids or in different order can be compared.
func describe(p Problem, l Layout, unit measure.Length) string {
	var b strings.Builder
	for _, r := range l.Rows {
		fmt.Fprintf(&b, "%d x %d:", r.Repeat, r.Height/unit)
		if r.Strip >= 0 {
			fmt.Fprintf(&b, " whole %s", p.Strips[r.Strip].Name)
		}
		for _, q := range r.Parts {
			fmt.Fprintf(&b, " part %s %d", p.Strips[q.Strip].Name, q.Width/unit)
		}
		for _, c := range r.Cuts {
			fmt.Fprintf(&b, " %d %s", c.Count, p.Pieces[c.Piece].Name)
			if c.Turned {
				b.WriteString(" turned")
			}
		}
		b.WriteString("\n")
	}
	fmt.Fprintf(&b, "length %d\n", l.Length/unit)
	return b.String()
}

func solved(t *testing.T, p Problem) Result {
	t.Helper()
	r, err := Solve(p, Limits{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// quilts are random problems with whole strips and repeats now and then.
func quilts(n int, seed int64) []Problem {
	r := rand.New(rand.NewSource(seed))
	var all []Problem
	for i := 0; i < n; i++ {
		p := quiltLike(r, 1+r.Intn(6))
		if i%3 == 0 {
			p.Strips = []WholeStrip{{Name: "binding", Height: in(20), Count: 3 + r.Intn(5), Last: in(int64(r.Intn(320)))},
				{Name: "border", Height: in(28), Count: 1 + r.Intn(4), Last: in(int64(8 * r.Intn(40)))}}
		}
		if i%7 == 0 {
			p.Cloth.Repeat = in(int64(8 + 4*r.Intn(20)))
		}
		all = append(all, p)
	}
	return all
}

func TestLayoutsAreLegalAndNeverLongerThanPlain(t *testing.T) {
	for i, p := range quilts(60, 3) {
		r := solved(t, p)
		if err := illegal(p, r.Layout); err != nil {
			t.Errorf("%d: %v", i, err)
		}
		plain, err := Plain(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := illegal(p, plain); err != nil {
			t.Errorf("%d plain: %v", i, err)
		}
		if r.Length > plain.Length || r.Length > firstFitByHand(p) {
			t.Errorf("%d: %d, plain %d, first fit %d", i, r.Length, plain.Length, firstFitByHand(p))
		}
		if err := verify(p, r.Certificate); err != nil {
			t.Errorf("%d: %v", i, err)
		}
		if r.Bound > r.Length || AreaBound(p) > r.Length || r.Bound < AreaBound(p) {
			t.Errorf("%d: length %d, bound %d, area %d", i, r.Length, r.Bound, AreaBound(p))
		}
	}
}

// firstFitByHand is first-fit decreasing height, unturned, piece by piece.
func firstFitByHand(p Problem) measure.Length {
	type strip struct{ height, room measure.Length }
	var all []Piece
	sum := measure.Length(0)
	for _, q := range p.Pieces {
		if q.Across > p.Cloth.Width {
			q.Across, q.Along = q.Along, q.Across
		}
		for n := 0; n < q.Count; n++ {
			all = append(all, q)
		}
	}
	for _, s := range p.Strips {
		full, part := s.split(p.Cloth.Width)
		sum += p.Cloth.whole(s.Height) * measure.Length(full)
		if part > 0 {
			all = append(all, Piece{Across: part, Along: s.Height})
		}
	}
	slices.SortStableFunc(all, func(a, b Piece) int {
		if a.Along != b.Along {
			return int(b.Along - a.Along)
		}
		return int(b.Across - a.Across)
	})
	var strips []strip
next:
	for _, q := range all {
		for i := range strips {
			if strips[i].height >= q.Along && strips[i].room >= q.Across {
				strips[i].room -= q.Across
				continue next
			}
		}
		strips = append(strips, strip{q.Along, p.Cloth.Width - q.Across})
	}
	for _, s := range strips {
		sum += p.Cloth.whole(s.height)
	}
	return sum
}

func TestSameLayoutOnEveryGrid(t *testing.T) {
	for i, p := range quilts(25, 4) {
		want := describe(p, solved(t, p).Layout, in(1))
		for _, unit := range []measure.Length{1, 2, 8, 3175, 127} { // an eighth of an inch in these
			q := p
			scale := func(v measure.Length) measure.Length { return v / in(1) * unit }
			q.Cloth = Cloth{Width: scale(p.Cloth.Width), Repeat: scale(p.Cloth.Repeat)}
			q.Pieces, q.Strips = slices.Clone(p.Pieces), slices.Clone(p.Strips)
			for j := range q.Pieces {
				q.Pieces[j].Across, q.Pieces[j].Along = scale(q.Pieces[j].Across), scale(q.Pieces[j].Along)
			}
			for j := range q.Strips {
				q.Strips[j].Height, q.Strips[j].Last = scale(q.Strips[j].Height), scale(q.Strips[j].Last)
			}
			if got := describe(q, solved(t, q).Layout, unit); got != want {
				t.Errorf("%d in units of %d:\n%s\nwant\n%s", i, unit, got, want)
			}
		}
	}
}

func TestSameLayoutForShuffledInputAndOnRepeat(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for i, p := range quilts(25, 6) {
		want := describe(p, solved(t, p).Layout, 1)
		for n := 0; n < 3; n++ {
			if got := describe(p, solved(t, p).Layout, 1); got != want {
				t.Errorf("%d again:\n%s\nwant\n%s", i, got, want)
			}
			r.Shuffle(len(p.Pieces), func(a, b int) { p.Pieces[a], p.Pieces[b] = p.Pieces[b], p.Pieces[a] })
		}
	}
}

func TestWholeStripsShareTheirEnds(t *testing.T) {
	// A joined binding uses 10 in of its fourth strip; the other 30 in of it
	// hold the twelve 2 1/2-in squares (worked by hand).
	p := Problem{Cloth: Cloth{Width: in(320)},
		Pieces: []Piece{{Name: "square", Across: in(20), Along: in(20), Count: 12}},
		Strips: []WholeStrip{{Name: "binding", Height: in(20), Count: 4, Last: in(80)}}}
	r := solved(t, p)
	if r.Length != in(80) || r.Status != Proved {
		t.Errorf("got %+v", r)
	}
	p.Pieces[0].Count = 13
	if r = solved(t, p); r.Length != in(100) {
		t.Errorf("the thirteenth needs a strip of its own: %d", r.Length)
	}
}

func TestTwoJoinedLengthsShareAStrip(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: in(320)}, Strips: []WholeStrip{
		{Name: "binding", Height: in(20), Count: 4, Last: in(80)},
		{Name: "border", Height: in(20), Count: 2, Last: in(240)}}}
	r := solved(t, p)
	if err := illegal(p, r.Layout); err != nil || r.Length != in(100) {
		t.Errorf("five strips do: %d, %v", r.Length, err)
	}
}

func TestFineCommonGridsStillGiveLegalLayouts(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: 8_128_001}, Pieces: []Piece{
		{Name: "a", Across: 507_999, Along: 508_001, Count: 33, Turnable: true},
		{Name: "b", Across: 1_234_567, Along: 303_030, Count: 12},
		{Name: "c", Across: 8_128_001, Along: 77_777, Count: 2}}}
	r := solved(t, p)
	if err := illegal(p, r.Layout); err != nil {
		t.Error(err)
	}
	plain, _ := Plain(p)
	if err := verify(p, r.Certificate); err != nil || r.Bound < AreaBound(p) || r.Length > plain.Length {
		t.Errorf("certificate %v: %v; bound %d, length %d", r.Certificate, err, r.Bound, r.Length)
	}
	q := SheetProblem{Sheet: Sheet{3_657_601, 4_267_199}, Pieces: p.Pieces[:2]}
	s, err := SolveSheets(q, Limits{})
	if err != nil {
		t.Fatal(err)
	}
	if err := illegalSheets(q, s.Layout); err != nil {
		t.Error(err)
	}
}

func TestNothingWanted(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: 8}, Pieces: []Piece{{Name: "none", Across: 9, Along: 9}}}
	if r := solved(t, p); r.Length != 0 || r.Status != Proved {
		t.Errorf("got %+v", r)
	}
	s, err := SolveSheets(SheetProblem{Sheet: Sheet{8, 8}}, Limits{})
	if err != nil || s.Layout.Count != 0 || s.Status != Proved {
		t.Errorf("got %+v, %v", s, err)
	}
	l, err := SolveLengths(LengthProblem{Stocks: []Stock{{Length: 8, Cost: 1, Count: Unlimited}}}, Limits{})
	if err != nil || l.Cost != 0 || len(l.Stocks) > 0 || l.Status != Proved {
		t.Errorf("got %+v, %v", l, err)
	}
}

// A certificate that claims one unit too much, or whose numbers are changed,
// must be refused: otherwise the verifier proves nothing.
func TestVerifierRefusesFalseCertificates(t *testing.T) {
	refused, tried := 0, 0
	for _, n := range readStrips(t)[:4] {
		r := solved(t, n.problem)
		c := *r.Certificate
		c.Claim += c.Unit
		if verify(n.problem, &c) == nil {
			t.Errorf("%s: a claim beyond the optimum is accepted", n.name)
		}
		c = *r.Certificate
		c.Sizes = slices.Clone(c.Sizes)
		c.Sizes[0].Count++
		if verify(n.problem, &c) == nil {
			t.Errorf("%s: another demand is accepted", n.name)
		}
		walk(r.Certificate.Root, func(p *Proof) {
			if p.Kind != ProofDuals {
				return
			}
			tried++
			old := p.Item[0]
			p.Item[0] += 1 << 40
			if verify(n.problem, r.Certificate) != nil {
				refused++
			}
			p.Item[0] = old
		})
	}
	if tried == 0 || refused == 0 {
		t.Errorf("%d of %d spoilt leaves refused", refused, tried)
	}
}

func walk(p *Proof, visit func(*Proof)) {
	if p == nil {
		return
	}
	visit(p)
	walk(p.Low, visit)
	walk(p.High, visit)
}

func FuzzSolve(f *testing.F) {
	f.Add([]byte{40, 1, 0, 5, 5, 9, 1, 13, 13, 4, 0, 3, 40, 2, 1})
	f.Add([]byte{10, 0, 3, 9, 2, 30, 1, 2, 9, 30, 0})
	f.Add([]byte{40, 0, 6, 5, 5, 60, 4, 2, 3, 3, 39, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		p, ok := problemFrom(data)
		if !ok {
			return
		}
		r, err := Solve(p, Limits{Visits: 300_000, Rounds: 10})
		if err != nil {
			if _, plain := Plain(p); plain == nil {
				t.Fatalf("%+v: Plain solves it, Solve says %v", p, err)
			}
			return
		}
		if err := illegal(p, r.Layout); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		plain, err := Plain(p)
		if err != nil || r.Length > plain.Length || r.Bound > r.Length || AreaBound(p) > r.Length {
			t.Fatalf("%+v: length %d, bound %d, area %d, plain %d, %v", p, r.Length, r.Bound, AreaBound(p), plain.Length, err)
		}
		if l, _, saves := SolveStacked(p, r, 7, 0, Limits{Visits: 300_000, Rounds: 10}); saves {
			if err := illegal(p, l); err != nil || l.Length >= r.Length || l.Length < AreaBound(p) {
				t.Fatalf("%+v stacked: %v, %d", p, err, l.Length)
			}
		}
		fuzzSheets(t, SheetProblem{Sheet: Sheet{p.Cloth.Width, p.Cloth.Width + 3}, Pieces: p.Pieces, Strips: p.Strips})
	})
}

func fuzzSheets(t *testing.T, p SheetProblem) {
	plain, err := PlainPieces(p)
	r, solveErr := SolveSheets(p, Limits{Visits: 300_000, Rounds: 10})
	if (err == nil) != (solveErr == nil) {
		t.Fatalf("%+v: PlainPieces says %v, SolveSheets %v", p, err, solveErr)
	}
	if err != nil {
		return
	}
	if err := illegalSheets(p, r.Layout); err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	if err := illegalSheets(p, plain); err != nil {
		t.Fatalf("%+v plain: %v", p, err)
	}
	if r.Layout.Count > plain.Count || r.Bound > r.Layout.Count || SheetAreaBound(p) > r.Bound {
		t.Fatalf("%+v: %d sheets, bound %d, plain %d", p, r.Layout.Count, r.Bound, plain.Count)
	}
}

// problemFrom reads a small problem out of bytes.
func problemFrom(data []byte) (Problem, bool) {
	if len(data) < 6 || len(data) > 40 {
		return Problem{}, false
	}
	p := Problem{Cloth: Cloth{Width: measure.Length(data[0]), Repeat: measure.Length(data[1] % 16), SquaringUp: 1}}
	if n := int(data[2] % 8); n > 0 {
		p.Strips = []WholeStrip{{Name: "s", Height: measure.Length(1 + data[2]%5), Count: n, Last: measure.Length(data[3])}}
	}
	for d := data[3:]; len(d) >= 4; d = d[4:] {
		p.Pieces = append(p.Pieces, Piece{Name: "p", Across: measure.Length(d[0]), Along: measure.Length(d[1]),
			Count: int(d[2] % 40), Turnable: d[3]&1 == 1, Lengthwise: d[3]&3 == 2})
	}
	return p, true
}

func TestCertificatesHoldWhereTheGapIsOpen(t *testing.T) {
	r := rand.New(rand.NewSource(10))
	gaps := 0
	for i := 0; i < 25; i++ {
		p := quiltLike(r, 5+r.Intn(4))
		got, err := Solve(p, Limits{Visits: 1 + r.Intn(60_000), Rounds: 5})
		if err != nil {
			t.Fatal(err)
		}
		if got.Status == Gap {
			gaps++
		}
		if err := illegal(p, got.Layout); err != nil {
			t.Errorf("%d: %v", i, err)
		}
		if err := verify(p, got.Certificate); err != nil {
			t.Errorf("%d: %v", i, err)
		}
		if full := solved(t, p); got.Bound > full.Length || full.Length > got.Length {
			t.Errorf("%d: bound %d and length %d with little work, %d with more", i, got.Bound, got.Length, full.Length)
		}
	}
	if gaps == 0 {
		t.Error("no gap was left open: nothing is tested")
	}
}

func TestSettleAnswersOneQuestionOnBothSides(t *testing.T) {
	for _, n := range readStrips(t) {
		for _, ask := range []measure.Length{n.optimum - 1, n.optimum, n.optimum + in(4)} {
			r, err := Solve(n.problem, Limits{Settle: ask})
			if err != nil {
				t.Fatal(err)
			}
			if enough := r.Length <= ask; enough != (n.optimum <= ask) || !enough && r.Bound <= ask {
				t.Errorf("%s: is %d enough? length %d, bound %d, optimum %d", n.name, ask, r.Length, r.Bound, n.optimum)
			}
			if err := verify(n.problem, r.Certificate); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
		}
	}
	for _, n := range readSheets(t) {
		for _, ask := range []int{n.optimum - 1, n.optimum} {
			r, err := SolveSheets(n.problem, Limits{Settle: measure.Length(ask)})
			if err != nil {
				t.Fatal(err)
			}
			if enough := r.Layout.Count <= ask; enough != (n.optimum <= ask) || !enough && r.Bound <= ask {
				t.Errorf("%s: are %d enough? %d sheets, bound %d", n.name, ask, r.Layout.Count, r.Bound)
			}
		}
	}
}
