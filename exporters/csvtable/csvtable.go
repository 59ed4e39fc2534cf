package csvtable

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// Style is what a table's cells do not say themselves.
type Style struct {
	Currency measure.Currency // of money
	Unproved bool             // the plan has errors: the first row says so
}

// rowColumn heads the first column, which tells the rows of a total or a
// heading from those of the data. The three are of rows that hold nothing but
// words about the table, in the column after it.
const (
	rowColumn  = "row"
	headingRow = "heading"
	leadRow    = "lead"
	footRow    = "foot"
)

// Bytes is the table as a file.
//
// The header names the columns' IDs and units. The table's heading, what is said
// above it and what is said below it are rows of their own. A number is a plain decimal in
// its column's unit, one that decimals cannot hold is "about 8.4853", and one in
// another unit than its column says so: "2.5 in". Rows are padded to the
// header's length. Lines end in CR LF: RFC 4180 asks for it, and the programs
// that do not need it accept it.
func Bytes(t report.Table, style Style) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	w.Write(header(t))
	if style.Unproved {
		mark := make([]string, len(t.Columns)+1)
		mark[0] = figure.Role(report.Alert)
		mark[len(mark)-1] = figure.Unproved("this plan")
		w.Write(mark)
	}
	said := func(role string, words ...string) {
		for _, text := range words {
			if text != "" && len(t.Columns) > 0 {
				record := make([]string, len(t.Columns)+1)
				record[0], record[1] = role, neutral(text)
				w.Write(record)
			}
		}
	}
	said(headingRow, t.Heading)
	said(leadRow, t.Lead...)
	for _, row := range t.Rows {
		w.Write(style.record(t, row))
	}
	said(footRow, t.Foot...)
	w.Flush() // a bytes.Buffer takes everything
	return b.Bytes()
}

func header(t report.Table) []string {
	names := []string{rowColumn}
	for _, c := range t.Columns {
		name := c.ID
		if c.Unit != "" {
			name += " (" + c.Unit + ")"
		}
		names = append(names, neutral(name))
	}
	return names
}

func (s Style) record(t report.Table, row report.Row) []string {
	fields := make([]string, 1, len(t.Columns)+1)
	fields[0] = figure.Role(row.Style)
	for i, c := range t.Columns {
		field := ""
		if i < len(row.Cells) {
			field = s.field(row.Cells[i], c.Unit)
		}
		fields = append(fields, field)
	}
	return fields
}

func (s Style) field(c report.Cell, columnUnit string) string {
	if !figure.IsNumber(c) {
		return neutral(figure.Words(c))
	}
	text := figure.Decimal(c, s.Currency)
	unit := figure.Unit(c, s.Currency)
	if said, _, _ := strings.Cut(columnUnit, " "); unit != said && unit != "" { // "% of price" says "%"
		text += " " + unit
	}
	return text
}

// neutral keeps a spreadsheet program from taking text for a formula: text
// that begins as one, or does so behind blanks and line breaks, gets an
// apostrophe in front, which such programs show as text. It is common practice
// against what is known as CSV injection. A dash by itself stands for what there is
// none of: nothing follows that could be worked out. Control characters, such as NUL, with
// which some programs end a file, become U+FFFD.
func neutral(text string) string {
	text = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\t' && r != '\n' && r != '\r' {
			return unicode.ReplacementChar
		}
		return r
	}, text)
	if text == "-" {
		return text
	}
	begins := strings.TrimLeftFunc(text, unicode.IsSpace)
	if text != "" && strings.ContainsRune("\t\r\n", rune(text[0])) || begins != "" && strings.ContainsRune("=+-@", rune(begins[0])) {
		return "'" + text
	}
	return text
}

// Named is a table and the name of its file, without the ending.
type Named struct {
	Name  string
	Table report.Table
}

// Name names the tables of some sheets by their IDs; tables that share one are
// told apart by their sheets' IDs, as in "cutting-throw". It is an error if they
// still are the same, however upper and lower case are compared.
func Name(sheets []report.Sheet) ([]Named, error) {
	shared := map[string]int{}
	sheets = slices.DeleteFunc(slices.Clone(sheets), func(s report.Sheet) bool { return s.Again })
	for _, s := range sheets {
		for _, t := range s.Tables {
			shared[strings.ToLower(t.ID)]++
		}
	}
	var all []Named
	taken := map[string]bool{}
	for _, s := range sheets {
		for _, t := range s.Tables {
			name := t.ID
			if shared[strings.ToLower(t.ID)] > 1 {
				name = s.ID + "-" + t.ID
			}
			if folded := strings.ToLower(name); taken[folded] {
				return nil, fmt.Errorf("two tables are named %s", name)
			} else {
				taken[folded] = true
			}
			all = append(all, Named{Name: name, Table: t})
		}
	}
	return all, nil
}
