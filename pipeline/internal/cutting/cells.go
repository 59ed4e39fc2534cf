package cutting

import (
	"maps"
	"slices"
)

// cells are the columns of a knapsack's tables where the common grid of the
// sizes is too fine for a column a unit. A column stands for every room from
// itself up to the next: what fits is the same, since no pieces together are of a
// size between them.
//
// Where there are too many sums of sizes for that, columns are a coarse grid and
// stand for the rooms below them instead. A table then promises too much and never
// too little, so that bounds hold and only their proof may fail; whether pieces
// fit is decided by their sizes, not by the table, and patterns are read off a
// second one that promises too little.
type cells struct {
	room  []int // in units, ascending; nil where there is a column for each unit
	above bool  // a column stands for the rooms below it
	step  int   // of the coarse grid, or of first
	first []int // by room over step, a column to look on from; nil of a coarse grid
}

// mostCoarse is how many columns a coarse grid has: what they promise too much is
// settled by the sizes.
const mostCoarse = 4096

// pricing is how much work it is to fill a table for every class, in the unit of
// Steps.Visits. Columns that are no units are found by a search.
func (in *instance) pricing() int {
	if in.stacks != nil {
		return in.stacks.wide.pricing()
	}
	work := (in.columns() - 1) * len(in.kinds) * len(in.heights)
	if in.cells.room != nil {
		return work / 8
	}
	return work / 64
}

// filling is how much work it is to fill all tables once: of sheets, those of strips
// and of stacks, either way.
func (in *instance) filling() int {
	if in.sheets == nil {
		return in.pricing()
	}
	work := 0
	for a, axis := range in.sheets.axis {
		work += 4*axis.pricing() + int(in.sheets.limit[a])*len(axis.heights)/16
	}
	return work
}

// newCells makes columns for rooms up to width. most is the largest number of
// them.
func newCells(sizes []sized, width, most int) cells {
	if width < most {
		return cells{}
	}
	if sums, ok := attainable(sizes, width, most); ok {
		return indexed(sums, width)
	}
	c := cells{above: true, step: ceilDiv(width, min(most, mostCoarse)-1)}
	for room := 0; room < width+c.step; room += c.step {
		c.room = append(c.room, room)
	}
	return c
}

// indexed are columns at sums, which are found at once.
func indexed(sums []int, width int) cells {
	c := cells{room: sums, step: ceilDiv(width+1, len(sums))}
	n := 0
	for room := 0; room <= width; room += c.step {
		for n+1 < len(sums) && sums[n+1] <= room {
			n++
		}
		c.first = append(c.first, n)
	}
	return c
}

// sized is a size and how often it is wanted.
type sized struct{ size, count int }

// attainable are the sums of sizes, none more often than it is wanted, up to
// width; false when there are more than so many.
func attainable(sizes []sized, width, most int) ([]int, bool) {
	sums := map[int]bool{0: true}
	for _, k := range sizes {
		size := k.size
		last := slices.Collect(maps.Keys(sums))
		for n := 0; n < k.count && len(last) > 0; n++ { // what was there before has been added to already
			var next []int
			for _, s := range last {
				if s += size; s <= width && !sums[s] {
					sums[s] = true
					next = append(next, s)
				}
			}
			if len(sums) > most {
				return nil, false
			}
			last = next
		}
	}
	return slices.Sorted(maps.Keys(sums)), true
}

// columns is how many columns a table has.
func (in *instance) columns() int {
	if in.cells.room == nil {
		return in.width + 1
	}
	return len(in.cells.room)
}

// at is the column of a room.
func (c cells) at(room int) int {
	if c.room == nil {
		return room
	}
	if c.first == nil {
		if c.above {
			return ceilDiv(room, c.step)
		}
		return room / c.step
	}
	n := c.first[room/c.step]
	for n+1 < len(c.room) && c.room[n+1] <= room {
		n++
	}
	return n
}

// add allows n more of a size in a table: of each column the better of without
// and with them, in bundles of 1, 2, 4, ...
func (c cells) add(table []int64, size int, value int64, n int) {
	last := len(c.room) - 1
	n = min(n, c.room[last]/size)
	for part := 1; n > 0; part *= 2 {
		part = min(part, n)
		n -= part
		c.bundle(table, part*size, int64(part)*value)
	}
}

// bundle allows one more of a size. From the largest room down, so that none is
// counted twice; the column of what is left falls with the room.
func (c cells) bundle(table []int64, size int, value int64) {
	from := len(c.room) - 1
	for n := from; n >= 0 && c.room[n] >= size; n-- {
		left := c.room[n] - size
		if c.above {
			for from > 0 && c.room[from-1] >= left {
				from--
			}
		} else {
			for c.room[from] > left {
				from--
			}
		}
		table[n] = max(table[n], table[from]+value)
	}
}
