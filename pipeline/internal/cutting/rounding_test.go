package cutting

import (
	"errors"
	"fmt"
	"math/rand"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

// offGrid is a tiny problem in inches of which one piece, or every piece, lies
// on no ruler: cut to a root, say. It fits as it did.
func offGrid(r *rand.Rand, p []Piece, all bool, width measure.Length) {
	for i := range p {
		q := &p[i]
		q.Across, q.Along = q.Across*inch, q.Along*inch
		if all || i == 0 {
			q.Across += measure.Length(r.Intn(int(inch/2))) - inch/4
			q.Along += measure.Length(r.Intn(int(inch/2))) - inch/4
			q.Across = min(q.Across, width)
		}
	}
}

// One irrational length must not cost the others their proof: the answer is the
// shortest that trying everything finds, bounds never exceed it, and the
// certificate holds.
func TestOffGridAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(41))
	coarse, proved := 0, 0
	const rounds = 250
	for n := 0; n < rounds; n++ {
		p := tiny(r)
		p.Cloth.Width, p.Cloth.Repeat = p.Cloth.Width*inch, p.Cloth.Repeat*inch
		offGrid(r, p.Pieces, n%3 == 0, p.Cloth.Width)
		got := solved(t, p)
		want := shortest(p)
		if got.Length < want || got.Bound > want || got.Status == Proved && got.Length != want {
			t.Fatalf("%+v:\nlength %d, bound %d, shortest %d", p, got.Length, got.Bound, want)
		}
		if err := illegal(p, got.Layout); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := verify(p, got.Certificate); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if in, err := newInstance(p, exact); err == nil && in.cells.room != nil && in.unitH < fineHeight {
			coarse++
		}
		if got.Status == Proved {
			proved++
		}
	}
	if coarse < rounds/2 || proved < rounds*99/100 {
		t.Errorf("%d of %d lie off the grid, and %d are proved", coarse, rounds, proved)
	}
}

// Of quilts of which a size, or every size, lies on no grid the bound is close to the
// length, and holds.
func TestFineGridsAreBounded(t *testing.T) {
	r := rand.New(rand.NewSource(704))
	proved := 0
	const quilts = 24
	for n := range quilts {
		p := odd(r, quiltLike(r, 4), n%2 > 0)
		got := solved(t, p)
		if gap := float64(got.Length-got.Bound) / float64(got.Bound); gap > 0.002 {
			t.Errorf("%d: a gap of %.2f %%", n, 100*gap)
		}
		if got.Status == Proved {
			proved++
		}
		if err := illegal(p, got.Layout); err != nil {
			t.Errorf("%d: %v", n, err)
		}
		if err := verify(p, got.Certificate); err != nil {
			t.Errorf("%d: %v", n, err)
		}
	}
	if proved < quilts*3/4 {
		t.Errorf("%d of %d are proved", proved, quilts)
	}
}

func TestOffGridSheetsAgreeWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewSource(42))
	tried, proved := 0, 0
	for n := range 200 {
		p := tinySheets(r)
		p.Sheet.Across, p.Sheet.Along = p.Sheet.Across*inch, p.Sheet.Along*inch
		offGrid(r, p.Pieces, n%3 == 0, p.Sheet.Across)
		for i := range p.Pieces {
			p.Pieces[i].Along = min(p.Pieces[i].Along, p.Sheet.Along)
		}
		for i := range p.Strips {
			p.Strips[i].Height, p.Strips[i].Last = p.Strips[i].Height*inch, p.Strips[i].Last*inch
		}
		got, err := SolveSheets(p, Limits{})
		var unusable *Unusable
		if errors.As(err, &unusable) && p.Pieces[0].Together > 1 {
			continue // so many do not fit a sheet
		}
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		tried++
		want := fewest(contents(p, got.Certificate.Sizes), got.Certificate.Sizes)
		if got.Layout.Count < want || got.Bound > want || got.Status == Proved && got.Layout.Count != want {
			t.Fatalf("%+v:\n%d sheets, bound %d, fewest %d", p, got.Layout.Count, got.Bound, want)
		}
		if err := illegalSheets(p, got.Layout); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if got.Status == Proved {
			proved++
		}
	}
	if tried < 150 || proved < tried*98/100 {
		t.Errorf("%d of %d are proved", proved, tried)
	}
}

// Both sides of an exact fit: sixteen pieces of 2 1/2 in fill 40 in, with a
// diamond of some root in another strip. A sixty-fourth more and the sixteenth
// is lost.
func TestOneOddPieceLeavesTheOthersTheirExactFit(t *testing.T) {
	p := Problem{Cloth: Cloth{Width: 40 * inch}, Pieces: []Piece{
		{Name: "square", Across: inch * 5 / 2, Along: inch * 5 / 2, Count: 32},
		{Name: "diamond", Across: 738_419, Along: 508_001, Count: 11}, // eleven are 39.97 in
	}}
	exact := 2*inch*5/2 + 508_001
	if r := solved(t, p); r.Length != exact || r.Status != Proved {
		t.Errorf("length %d, bound %d, %v; want %d, proved", r.Length, r.Bound, r.Status, exact)
	}
	p.Pieces[0].Across += inch / 64
	if r := solved(t, p); r.Length <= exact+2*inch || r.Status != Proved {
		t.Errorf("a sixty-fourth wider: length %d, bound %d, %v", r.Length, r.Bound, r.Status)
	}
}

func TestSumsOfHeights(t *testing.T) {
	r := rand.New(rand.NewSource(43))
	for range 200 {
		var heights []int64
		for n := 1 + r.Intn(4); n > 0; n-- {
			heights = append(heights, int64(r.Intn(9)))
		}
		slices.Sort(heights)
		upTo := int64(r.Intn(40))
		s, reached := newSums(heights, upTo), map[int64]bool{0: true}
		for n := int64(1); n <= upTo; n++ {
			for _, h := range heights {
				reached[n] = reached[n] || h > 0 && h <= n && reached[n-h]
			}
		}
		for n := int64(0); n <= upTo; n++ {
			below, from := n-1, n
			for below >= 0 && !reached[below] {
				below--
			}
			for from <= upTo && !reached[from] {
				from++
			}
			if got := fmt.Sprint(s.below(n), s.from(n)); got != fmt.Sprint(below, from) {
				t.Fatalf("%v up to %d: below and from %d are %s, want %d %d", heights, upTo, n, got, below, from)
			}
		}
	}
}
