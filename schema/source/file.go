package source

import (
	"sort"
	"sync"
	"unicode/utf8"
)

// File is one file as it was read. Its bytes must not change after [New]; any
// number of goroutines may then ask it at the same time.
type File struct {
	Name  string // as it should be printed, with forward slashes
	Bytes []byte

	cell               func(offset int) string // nil for a file of text
	lineOnce, markOnce sync.Once
	lineIndex          []line
	markIndex          []mark
}

// New makes a file of bytes that somebody has read. The index of its lines is
// built when the first place is asked for, so a file without problems costs
// nothing.
func New(name string, b []byte) *File { return &File{Name: name, Bytes: b} }

// NewSheet makes a file of a sheet of a workbook: b is its rows written as
// text, and cell gives the address of the cell that an offset of it lies in.
func NewSheet(name string, b []byte, cell func(offset int) string) *File {
	return &File{Name: name, Bytes: b, cell: cell}
}

// Cell is the address of the cell at an offset, like "Sheet1!D17"; empty where
// the file is a text, which has lines and columns instead.
func (f *File) Cell(offset int) string {
	if f.cell == nil {
		return ""
	}
	return f.cell(offset)
}

// line is where a line begins and where its text ends, before the line ending.
type line struct{ start, end int }

func (f *File) lines() []line {
	f.lineOnce.Do(func() { f.lineIndex = scanLines(f.Bytes) })
	return f.lineIndex
}

func scanLines(b []byte) []line {
	lines := []line{}
	start := 0
	for i := 0; i < len(b); i++ {
		if b[i] != '\n' && b[i] != '\r' {
			continue
		}
		end := i
		if b[i] == '\r' && i+1 < len(b) && b[i+1] == '\n' {
			i++
		}
		lines = append(lines, line{start, end})
		start = i + 1
	}
	return append(lines, line{start, len(b)})
}

// mark notes how many code points stand before an offset, once every
// markEvery bytes, so that a column far along a line that is megabytes long is
// counted from the nearest mark.
type mark struct{ offset, points int }

const markEvery = 1024

func (f *File) marks() []mark {
	f.markOnce.Do(func() { f.markIndex = scanMarks(f.Bytes) })
	return f.markIndex
}

func scanMarks(b []byte) []mark {
	marks := []mark{{}}
	offset, points := 0, 0
	for offset < len(b) {
		offset += runeLen(b[offset:])
		points++
		if offset-marks[len(marks)-1].offset >= markEvery {
			marks = append(marks, mark{offset, points})
		}
	}
	return marks
}

// runeLen is the length of the first code point, or 1 for a byte that is not
// part of one.
func runeLen(b []byte) int {
	if b[0] < utf8.RuneSelf {
		return 1
	}
	_, n := utf8.DecodeRune(b)
	return n
}

// Position is the line and column of a byte offset. Lines end with \n, \r\n or
// a lone \r; a column is a code point, and so is a tab, and so is each byte
// that is not UTF-8. An offset in the middle of a code point has that code
// point's column; one outside the file is moved to its nearer end.
func (f *File) Position(offset int) Position {
	offset = f.clamp(offset)
	n := f.lineAt(offset)
	return Position{Line: n + 1, Column: f.points(f.lines()[n].start, offset) + 1}
}

func (f *File) clamp(offset int) int { return max(0, min(offset, len(f.Bytes))) }

// lineAt is the index of the line that holds the offset; a line's ending
// belongs to the line.
func (f *File) lineAt(offset int) int {
	lines := f.lines()
	return sort.Search(len(lines), func(i int) bool { return lines[i].start > offset }) - 1
}

// points is the number of whole code points between the start of a line and an
// offset in it.
func (f *File) points(start, offset int) int {
	if offset-start <= 2*markEvery {
		return f.count(mark{offset: start}, offset)
	}
	return f.count(f.markBefore(offset), offset) - f.count(f.markBefore(start), start)
}

// count goes on from a place with a known number of code points before it.
func (f *File) count(from mark, offset int) int {
	for from.offset < offset {
		from.offset += runeLen(f.Bytes[from.offset:])
		if from.offset <= offset {
			from.points++
		}
	}
	return from.points
}

func (f *File) markBefore(offset int) mark {
	marks := f.marks()
	return marks[sort.Search(len(marks), func(i int) bool { return marks[i].offset > offset })-1]
}

// Lines is the number of lines. An empty file has one, and text after the last
// line ending is a line even if it is empty, as editors number them.
func (f *File) Lines() int { return len(f.lines()) }

// Line is the text of line n, counted from 1, without its ending; empty for a
// line that the file does not have.
func (f *File) Line(n int) string {
	lines := f.lines()
	if n < 1 || n > len(lines) {
		return ""
	}
	return string(f.Bytes[lines[n-1].start:lines[n-1].end])
}

// Slice is the text of a range, the part of it that lies in the file.
func (f *File) Slice(r Range) string {
	start, end := f.clamp(r.Start), f.clamp(r.End)
	if start >= end {
		return ""
	}
	return string(f.Bytes[start:end])
}
