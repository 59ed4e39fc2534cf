package cutting

import (
	"math/rand"
	"slices"
	"testing"
)

// A column is the largest that is no more than the room, or of a coarse grid that
// promises too much the least that is no less.
func TestColumnsOfRooms(t *testing.T) {
	r := rand.New(rand.NewSource(23))
	for range 200 {
		var kinds []sized
		for range 1 + r.Intn(4) {
			kinds = append(kinds, sized{count: 1 + r.Intn(5), size: 1 + r.Intn(400)})
		}
		width := 400 + r.Intn(2000)
		c := newCells(kinds, width, 2+r.Intn(300))
		below := c
		below.above = false
		for room := 0; room <= width && c.room != nil; room++ {
			n, exact := slices.BinarySearch(c.room, room)
			if exact || c.above {
				if got := c.at(room); got != n {
					t.Fatalf("room %d is in column %d, want %d of %v", room, got, n, c)
				}
			}
			if !exact {
				n--
			}
			if got := below.at(room); got != n {
				t.Fatalf("room %d is in column %d from below, want %d of %v", room, got, n, c)
			}
		}
	}
}
