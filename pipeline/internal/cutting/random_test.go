package cutting

import (
	"fmt"
	"math/rand"

	"yardproof/schema/measure"
)

// odd makes the first size, or every one, up to 1/64 in less each way than it was, so
// that it lies on no grid.
func odd(r *rand.Rand, p Problem, all bool) Problem {
	for i := range p.Pieces {
		across, along := measure.Length(1+r.Intn(3000)), measure.Length(1+r.Intn(3000))
		if all || i == 0 {
			p.Pieces[i].Across -= across
			p.Pieces[i].Along -= along
		}
	}
	return p
}

// quiltLike is an invented problem of the kind quilts pose: squares and
// rectangles in half inches with their seams, some in eighths, a few long
// borders or big setting squares, from 40 to 42 in of cloth.
func quiltLike(r *rand.Rand, sizes int) Problem {
	const eighth = 203200 / 8
	p := Problem{Cloth: Cloth{Width: measure.Length(320+4*r.Intn(5)) * eighth}}
	turnable := r.Intn(4) > 0
	for i := 0; i < sizes; i++ {
		w, h := 12+4*r.Intn(30), 12+4*r.Intn(16)
		switch r.Intn(8) {
		case 0, 1:
			h = w
		case 2:
			w, h = w+r.Intn(4), h+r.Intn(4)
		case 3:
			w = 80 + 4*r.Intn(55)
		}
		count := 4 + r.Intn(80)
		if w*h > 60*60 {
			count = 1 + r.Intn(12)
		}
		p.Pieces = append(p.Pieces, Piece{Name: fmt.Sprintf("piece %d", i+1), Across: measure.Length(min(w, 320)) * eighth,
			Along: measure.Length(h) * eighth, Count: count, Turnable: turnable})
	}
	return p
}
