package report

import (
	"math/big"

	"yardproof/schema/measure"
)

// Sheet is a page of tables and pictures that is printed on its own.
type Sheet struct {
	ID     string // file-name safe: "cut-list-throw"
	Title  string // at most 31 characters, unique within its workbook
	Tables []Table
	Wide   bool // better printed landscape
	Again  bool // repeats the tables of another sheet for paper: of no use as data
	Aside  bool // of the second workbook: papers, checks and workings, which are not handed on with the plan
	Still  int  // first columns that stay in view while the others scroll
	Pages  int  // to be printed on so many pages if it can be read there; 0 for as many as it takes
	Share  int  // of the page's width that its narrow tables have, in per cent; 0 for 60
	Type   int  // the smallest type it may be printed in, in points; 0 for that of most paper

	Charts   []Chart   // below the tables
	Pictures []Picture // below the charts
}

// Table is columns and rows under a heading. Its data can be written as
// CSV or JSON without its looks.
type Table struct {
	ID      string
	Heading string
	Lead    []string // sentences above the table
	Columns []Column
	Rows    []Row
	Foot    []string // sentences below it

	// On paper.
	Narrow bool     // leaves the right of the page to the pictures beside it, and to those of the narrow tables above it
	Beside []Beside // pictures to its right, one below the other, if it is narrow
	Under  bool     // its columns are those of the table above it, whose titles serve both
	Begins bool     // begins a page
}

// Beside is a picture beside a table.
type Beside struct {
	Picture Picture
	Tall    float64 // how high it may be on paper, in millimetres
}

// Column says what its cells hold.
type Column struct {
	ID    string // for CSV headers and JSON keys
	Title string
	Unit  string // "in", "yd", "USD", "min"; empty for text and plain counts
	Wide  bool   // holds sentences: give it room and wrap them
	Right bool   // words among its numbers, such as "1 pack", stand to the right as they do
}

// RowStyle is the part a row plays in its table.
type RowStyle int

// The parts.
const (
	Body  RowStyle = iota
	Group          // a heading within the table
	Total          // a sum or result
	Alert          // a safety line or a mark that must not be overlooked
)

// Row is one line of a table; it may have fewer cells than there are columns.
type Row struct {
	Style RowStyle
	Cells []Cell
}

// CellKind is what a cell holds.
type CellKind int

// The kinds of cell.
const (
	Empty  CellKind = iota
	Text            // Text
	Count           // Int
	Length          // Exact, shown as the ruler reads it
	Fabric          // Exact, or Expr in yards or metres, shown as a shop sells it
	Money           // Expr or Number, in the run's currency
	Share           // Expr or Number, shown as a percentage
	Number          // Expr or Number, a plain decimal
	Box             // to be ticked on paper
)

// Cell is one cell of a table. Only the fields of its kind are set.
type Cell struct {
	Kind   CellKind
	Text   string
	Int    int64
	Exact  measure.Surd
	Unit   measure.Unit   // of Length and Fabric
	Toward measure.Toward // which way one that does not print exactly is rounded
	Number *big.Rat       // a fixed or input number
	Expr   *Expr          // a formula; its Value is what the cell shows
	Name   string         // by which expressions refer to this cell; unique within its workbook
	Input  bool           // a person may change it
	Entry  *Entry         // what may be typed into an input; nil for what goes without saying
	Mark   *Expr          // a condition, while which holds the cell stands out
	Why    *Work          // how the number came about; nil where there is nothing to say
}

// Entry is what may be typed into an input. Without one, money, numbers and
// lengths are 0 or more, a share is from 0 to less than the whole, and a count
// a whole number of 0 or more.
type Entry struct {
	Prompt  string   // said when the cell is chosen
	Whole   bool     // whole numbers only
	Choices []string // of a text; at least one
}

// Marked reports whether a cell stands out as it is now.
func (c Cell) Marked() bool {
	return c.Mark != nil && c.Mark.Value != nil && c.Mark.Value.Sign() != 0
}

// Tick is a box to be ticked on paper.
func Tick() Cell { return Cell{Kind: Box} }

// T is a text cell.
func T(text string) Cell { return Cell{Kind: Text, Text: text} }

// N is a count cell.
func N(n int64) Cell { return Cell{Kind: Count, Int: n} }

// L is a length cell.
func L(x measure.Surd, u measure.Unit) Cell { return Cell{Kind: Length, Exact: x, Unit: u} }

// F is a cell of a fabric length as sold. It is printed no less than it is: what is
// left of a fabric is not a length to buy, but one that there is (There).
func F(x measure.Length, u measure.Unit) Cell {
	return Cell{Kind: Fabric, Exact: x.Surd(), Unit: u, Toward: measure.Up}
}

// Cut is a cell of a length that is cut, which is printed no less than it is.
func Cut(x measure.Surd, u measure.Unit) Cell {
	return Cell{Kind: Length, Exact: x, Unit: u, Toward: measure.Up}
}

// There is the cell of a length that there is, which is printed no more than it is.
func (c Cell) There() Cell {
	c.Toward = measure.Down
	return c
}
