package source

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Excerpt is what a report prints under a complaint: a line of the file, or
// the window of a long line, and which of its columns to underline.
//
// Text is safe to print: every code point of the line gives exactly one of the
// Text, but those that a terminal would act on (control characters, marks that
// turn the direction of writing), other invisible ones, and bytes that are not
// UTF-8 are shown as U+FFFD. Tabs stay.
type Excerpt struct {
	Line       int    // from 1
	Text       string // of the line, without its ending
	Column     int    // the column of the line at which Text begins: 1 unless CutLeft
	Start, End int    // columns of Text to underline, from 1, End excluded; never empty
	CutLeft    bool   // the line goes on before Text
	CutRight   bool   // the line goes on after Text
}

// A plan may be a single line of 100 KB, so a window of it is shown
// that fits a terminal of 100 columns beside a line number.
const (
	excerptWidth = 88
	excerptLead  = 24 // columns kept before the place
)

// Excerpt shows where a range begins. A range over several lines is underlined
// to the end of its first line only, and an empty one, a place where something
// is missing, on the column it stands before.
func (f *File) Excerpt(r Range) Excerpt {
	start, end := f.clamp(r.Start), f.clamp(r.End)
	n := f.lineAt(start)
	l := f.lines()[n]
	start, end = f.boundary(l, min(start, l.end)), min(max(start, end), l.end)
	column := f.points(l.start, start)
	from, before := f.back(l, start, excerptLead)
	to, shown := f.forward(l, from, excerptWidth)
	if to == l.end { // near the end of the line there is room for more of what comes before
		from, before = f.back(l, start, excerptWidth-shown+before)
	}
	return Excerpt{
		Line:     n + 1,
		Text:     printable(f.Bytes[from:to]),
		Column:   column - before + 1,
		Start:    before + 1,
		End:      before + 1 + max(1, f.count(mark{offset: start}, min(end, to))),
		CutLeft:  from > l.start,
		CutRight: to < l.end,
	}
}

// boundary is the start of the code point that an offset lies in.
func (f *File) boundary(l line, offset int) int {
	for at := max(l.start, offset-utf8.UTFMax+1); at < offset; at++ {
		if at+runeLen(f.Bytes[at:]) > offset {
			return at
		}
	}
	return offset
}

// back goes up to n code points back from an offset in a line; it gives the
// offset it comes to and how many they were.
func (f *File) back(l line, offset, n int) (int, int) {
	done := 0
	for ; done < n && offset > l.start; done++ {
		_, size := utf8.DecodeLastRune(f.Bytes[l.start:offset])
		offset -= size
	}
	return offset, done
}

// forward is the same in the other direction.
func (f *File) forward(l line, offset, n int) (int, int) {
	done := 0
	for ; done < n && offset < l.end; done++ {
		offset += runeLen(f.Bytes[offset:])
	}
	return offset, done
}

// printable keeps one code point for one, so that columns stay true.
func printable(b []byte) string {
	var s strings.Builder
	for len(b) > 0 {
		r, n := utf8.DecodeRune(b)
		b = b[n:]
		if r != '\t' && unsafeToPrint(r) {
			r = utf8.RuneError
		}
		s.WriteRune(r)
	}
	return s.String()
}

func unsafeToPrint(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp)
}

// Underline is the line to print below Text: blanks up to Start, then carets.
// It repeats the tabs of Text, so that it lines up however wide a tab is.
func (e Excerpt) Underline() string {
	var s strings.Builder
	column := 1
	for _, r := range e.Text {
		if column >= e.Start {
			break
		}
		if r != '\t' {
			r = ' '
		}
		s.WriteRune(r)
		column++
	}
	s.WriteString(strings.Repeat("^", e.End-e.Start))
	return s.String()
}
