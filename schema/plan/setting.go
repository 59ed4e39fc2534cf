package plan

import "yardproof/schema/source"

// Setting is parts set together: straight, with sashing, or on point. A
// layout has one, and so has a part that is set like a small quilt top.
type Setting struct {
	Grid      *Grid
	Sashing   *Sashing   // nil without
	Triangles *Triangles // nil when the parts stand straight
}

// Ingredients implements Operation.
func (o Setting) Ingredients() []Ingredient {
	var in []Ingredient
	fabric := func(t Text) {
		if t.Given() {
			in = append(in, Ingredient{t, true})
		}
	}
	if o.Grid != nil {
		for _, row := range append(o.Grid.Blocks[:len(o.Grid.Blocks):len(o.Grid.Blocks)], o.Grid.Between...) {
			for _, c := range row {
				in = append(in, Ingredient{c.Part, false})
			}
		}
	}
	if o.Sashing != nil {
		fabric(o.Sashing.Fabric)
		fabric(o.Sashing.Cornerstones)
	}
	if o.Triangles != nil {
		fabric(o.Triangles.Sides)
		fabric(o.Triangles.Corners)
	}
	return in
}

// Make implements Operation.
func (o Setting) Make(m Maker) { m.Setting(o) }

// Grid is blocks in rows: an arrangement that repeats over rows and columns,
// or every row as written.
type Grid struct {
	Rows, Columns Count // of a layout of written rows: their number and the longest
	Blocks        [][]Cell
	Between       [][]Cell // on point, in the rows between the full ones; Blocks when absent
	Symmetry      Symmetry
	SymmetryAt    source.Range
	Tile          [2]Count // rows and columns of what has the symmetry; absent for the whole grid
	Written       bool     // Blocks is every row, and nothing repeats
	Drawn         bool     // the rows were drawn with letters, one below another
	At            source.Range
}

// Row is the cells of a row, from 0.
func (g *Grid) Row(row int) []Cell {
	if g.Written {
		return g.Blocks[row]
	}
	return g.line(g.Blocks, row, g.Rows.N, g.Columns.N)
}

// Short is the cells of a row between two full ones of a grid on point, from
// 0: there is one column less.
func (g *Grid) Short(row int) []Cell {
	blocks := g.Between
	if len(blocks) == 0 {
		blocks = g.Blocks
	}
	return g.line(blocks, row, g.Rows.N-1, g.Columns.N-1)
}

// line is a row of a repeating arrangement that has to fill rows and columns.
func (g *Grid) line(blocks [][]Cell, row, rows, columns int) []Cell {
	line := make([]Cell, columns)
	for c := range line {
		line[c] = g.cell(blocks, row, c, rows, columns)
	}
	return line
}

// Cell is the block at a row and column, both from 0.
func (g *Grid) Cell(row, column int) Cell { return g.Row(row)[column] }

func (g *Grid) cell(blocks [][]Cell, row, column, rows, columns int) Cell {
	if g.Tile[0].N > 0 && g.Tile[1].N > 0 {
		rows, columns = g.Tile[0].N, g.Tile[1].N
		row, column = row%rows, column%columns
	}
	s := spot{row: row, column: column}
	if g.Symmetry != NoSymmetry {
		s = g.Symmetry.source(s, rows, columns)
	}
	line := blocks[s.row%len(blocks)]
	return s.carry(line[s.column%len(line)])
}

// Symmetry is how the rest of a grid follows from its first part.
type Symmetry int

// The symmetries.
const (
	NoSymmetry     Symmetry = iota
	QuarterTurns            // four quarters, each the one before turned by 90 degrees about the middle
	HalfTurn                // two halves, one the other end for end
	Mirror                  // four quarters, mirrored across and down
	TurnedQuarters          // four quarters in mirrored places, their blocks turned by 90 degrees more
)

// String is the word the plan uses; without a symmetry there is none.
func (s Symmetry) String() string {
	return [...]string{"none", "quarter turns", "half turn", "mirror", "turned quarters"}[s]
}

// spot is a place of a grid and how the block of another place comes to it:
// mirrored left to right, if at all, and then turned clockwise.
type spot struct {
	row, column int
	turn        int
	mirror      bool // left to right
	flip        bool // top to bottom
}

// carry is a cell as it comes to stand at the spot. The mirror image of a
// block turned by t is its mirror image turned by -t, or by 180 - t across a
// level line.
func (s spot) carry(c Cell) Cell {
	if s.mirror {
		c.Turn, c.Mirror = 360-c.Turn, !c.Mirror
	}
	if s.flip {
		c.Turn, c.Mirror = 540-c.Turn, !c.Mirror
	}
	c.Turn = (c.Turn + s.turn) % 360
	return c
}

// source finds the place in the first part of a field of rows and columns that
// a place follows from.
func (s Symmetry) source(at spot, rows, columns int) spot {
	right, below := at.column >= (columns+1)/2, at.row >= (rows+1)/2
	switch s {
	case QuarterTurns:
		return quarterTurned(at, max(rows, columns))
	case HalfTurn:
		if 2*(at.row*columns+at.column) >= rows*columns {
			at = spot{row: rows - 1 - at.row, column: columns - 1 - at.column, turn: 180}
		}
		return at
	}
	if right {
		at.column = columns - 1 - at.column
	}
	if below {
		at.row = rows - 1 - at.row
	}
	if s == Mirror {
		at.mirror, at.flip = right, below
		return at
	}
	switch {
	case right && below:
		at.turn = 180
	case right:
		at.turn = 90
	case below:
		at.turn = 270
	}
	return at
}

// quarterTurned turns a place of an n by n field back, a quarter at a time,
// until it lies in the top left quarter or in the very middle.
func quarterTurned(at spot, n int) spot {
	for range 3 {
		middle := n%2 == 1 && at.row == n/2 && at.column == n/2
		if middle || at.row < (n+1)/2 && at.column < n/2 {
			break
		}
		at.row, at.column, at.turn = n-1-at.column, at.row, at.turn+90
	}
	return at
}

// Sashing is strips between blocks.
type Sashing struct {
	Fabric       Text
	Width        Length // finished
	Cornerstones Text   // fabric of the squares where strips meet; absent when strips run through
	Outer        bool   // also round the outside
	RowsOnly     bool   // none beside the blocks; those between the rows run through
	Joins        Joins  // of strips that run through
	At           source.Range
}

// Triangles is the setting triangles round blocks on point.
type Triangles struct {
	Sides, Corners     Text // fabrics
	SideCut, CornerCut TriangleCut
	Float              Length // of the blocks' points inside the outer seam, finished
	At                 source.Range
}

// TriangleCut is the square that setting triangles come from, as the pattern
// states it.
type TriangleCut struct {
	Square  Length  // absent when it is derived
	Halving Halving // Whole when the plan does not say
	At      source.Range
}

// Bordered is a part with borders about it.
type Bordered struct {
	Part    Text
	Kind    SquareKind
	Borders []Border // from the inside out
}

// Ingredients implements Operation.
func (o Bordered) Ingredients() []Ingredient {
	in := []Ingredient{{o.Part, false}}
	for _, b := range o.Borders {
		in = append(in, b.Ingredients()...)
	}
	return in
}

// Make implements Operation.
func (o Bordered) Make(m Maker) { m.Bordered(o) }

// Corners is how the corners of a border meet.
type Corners int

// The kinds of corners.
const (
	Butted Corners = iota
	CornerSquares
	Mitred
)

// String is the word the plan uses.
func (c Corners) String() string { return [...]string{"butted", "corner squares", "mitred"}[c] }

// Pairs are the sides of the quilt that a border has strips on.
type Pairs int

// The pairs of sides.
const (
	AllRound Pairs = iota
	SidesOnly
	EndsOnly // top and bottom
)

// String is the word the plan uses.
func (p Pairs) String() string { return [...]string{"all round", "sides", "ends"}[p] }

// Border is a frame around everything inside it, sewn on in two pairs, or
// one pair of strips.
type Border struct {
	Name         Text
	Fabric       Text      // absent when it is pieced
	Part         Text      // that a pieced border repeats
	Width        Length    // finished; absent with To
	To           [2]Length // finished width and length that coping strips bring the quilt to
	On           Pairs     // where it has strips; coping strips lie where something is missing
	EndsOn       bool      // top and bottom are sewn on first; otherwise the sides are
	Corners      Corners
	Allowance    Length // that mitred strips are cut longer by
	CornerFabric Text
	CornerPart   Text       // a block in each corner, in place of a square of fabric
	Kind         SquareKind // of Part
	CornerKind   SquareKind // of CornerPart
	Joins        Joins
	Lengthwise   bool // strips are cut along the fabric, each in one piece
	EachSide     bool // strips are joined for each side by itself
	Seam         *Seam
	At           source.Range
}

// Copes reports whether the border brings what is inside to a size.
func (b *Border) Copes() bool { return b.To[0].Given() }

// Ingredients are the fabrics and parts that the border names.
func (b *Border) Ingredients() []Ingredient {
	var in []Ingredient
	for _, i := range []Ingredient{{b.Fabric, true}, {b.Part, false}, {b.CornerFabric, true}, {b.CornerPart, false}} {
		if i.Name.Given() {
			in = append(in, i)
		}
	}
	return in
}
