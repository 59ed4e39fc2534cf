package csvtable

import (
	"bytes"
	"encoding/csv"
	"math/big"
	"strings"
	"testing"
	"unicode"

	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

func table(t *testing.T, id string) report.Table {
	t.Helper()
	for _, s := range sample.Plan().Sheets {
		for _, table := range s.Tables {
			if table.ID == id {
				return table
			}
		}
	}
	t.Fatalf("no table %s", id)
	return report.Table{}
}

func TestBytes(t *testing.T) {
	for _, id := range []string{"cut-list", "fabrics", "inputs", "costing"} {
		golden.Check(t, id+".csv", Bytes(table(t, id), Style{Currency: sample.Dollars()}))
	}
}

// A reader that follows RFC 4180 gets as many fields in every row as there
// are columns, and the text that went in.
func TestBytesReadBack(t *testing.T) {
	words := []string{"plain", `with "quotes"`, "two\nlines", "comma, and more", " led by a blank", "", "港の帯"}
	given := report.Table{Columns: []report.Column{{ID: "word"}, {ID: "never"}}}
	for _, w := range words {
		given.Rows = append(given.Rows, report.Row{Cells: []report.Cell{report.T(w)}})
	}
	b := Bytes(given, Style{})
	if bare := bytes.ReplaceAll(b, []byte("\r\n"), nil); bytes.ContainsAny(bare, "\r\n") {
		t.Error("a line does not end in CR LF (RFC 4180, section 2.1)")
	}
	records, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range words {
		if got := records[i+1]; len(got) != 3 || got[0] != "body" || got[1] != w || got[2] != "" {
			t.Errorf("%q came back as %q", w, got)
		}
	}
}

// What is said about a table stands in rows that say what they are, and are as long
// as the others.
func TestWordsAboutTheTable(t *testing.T) {
	given := report.Table{
		Heading: "Tubes", Lead: []string{"Sew them.", "", "=Cut them."}, Columns: []report.Column{{ID: "part"}, {ID: "pieces"}},
		Rows: []report.Row{{Cells: []report.Cell{report.T("step"), report.N(90)}}}, Foot: []string{"4 pieces left over"},
	}
	want := "row,part,pieces\r\nheading,Tubes,\r\nlead,Sew them.,\r\nlead,'=Cut them.,\r\nbody,step,90\r\nfoot,4 pieces left over,\r\n"
	if got := string(Bytes(given, Style{})); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := string(Bytes(report.Table{Heading: "Empty"}, Style{})); got != "row\r\n" {
		t.Errorf("without columns %q", got)
	}
}

// A spreadsheet program takes a field that begins like these for a formula.
func TestFormulasAreNeutralised(t *testing.T) {
	for _, text := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\r\n=1", " =1", " \n\u00a0@x", "\nplain", "--", "-a", "- ", " -", "-\n1", "+", "="} {
		given := report.Table{
			Columns: []report.Column{{ID: text}},
			Rows: []report.Row{
				{Cells: []report.Cell{report.T(text)}},
				{Cells: []report.Cell{{Kind: report.Number, Expr: &report.Expr{Text: text}}}},
			},
		}
		for i, record := range [][]string{header(given), Style{}.record(given, given.Rows[0]), Style{}.record(given, given.Rows[1])} {
			if record[1] != "'"+text {
				t.Errorf("record %d: %q", i, record)
			}
		}
	}
	if got := (Style{}).field(report.T("-"), ""); got != "-" {
		t.Errorf("a dash is written %q", got)
	}
	negative := report.Cell{Kind: report.Number, Number: big.NewRat(-3, 2)}
	if got := (Style{}).field(negative, ""); got != "-1.5" {
		t.Errorf("the number -1.5 is written %q", got)
	}
}

// No control character but tabs and line breaks gets into a file.
func TestControlsAreReplaced(t *testing.T) {
	if got := neutral("a\x00b\x1b[2J\u009b\t\n=\xff"); got != "a\ufffdb\ufffd[2J\ufffd\t\n=\ufffd" {
		t.Errorf("it became %q", got)
	}
}

func FuzzBytesReadBack(f *testing.F) {
	f.Add("=x", "a\"b\nc")
	f.Fuzz(func(t *testing.T, id, text string) {
		given := report.Table{Columns: []report.Column{{ID: id}}, Rows: []report.Row{{Cells: []report.Cell{report.T(text)}}}}
		records, err := csv.NewReader(bytes.NewReader(Bytes(given, Style{}))).ReadAll()
		if err != nil || len(records) != 2 {
			t.Fatalf("%v %q", err, records)
		}
		// The reader turns CR LF within a field into LF, and so do we into CR LF.
		got := strings.TrimPrefix(records[1][1], "'")
		if strings.ContainsFunc(got, func(r rune) bool { return unicode.IsControl(r) && !strings.ContainsRune("\t\r\n", r) }) {
			t.Errorf("%q came back as %q", text, got)
		}
		if strings.ContainsRune(got, unicode.ReplacementChar) {
			return // for what cannot be told from it
		}
		want := strings.ReplaceAll(strings.ReplaceAll(strings.TrimPrefix(text, "'"), "\r\n", "\n"), "\r", "")
		if strings.ReplaceAll(got, "\r", "") != want {
			t.Errorf("%q came back as %q", text, got)
		}
	})
}

func sheet(id string, tables ...string) report.Sheet {
	s := report.Sheet{ID: id}
	for _, t := range tables {
		s.Tables = append(s.Tables, report.Table{ID: t})
	}
	return s
}

func TestName(t *testing.T) {
	named, err := Name([]report.Sheet{sheet("cut-throw", "cutting", "tools"), sheet("cut-wall", "Cutting")})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"cut-throw-cutting", "tools", "cut-wall-Cutting"}
	for i, n := range named {
		if n.Name != want[i] {
			t.Errorf("table %d is named %s, want %s", i, n.Name, want[i])
		}
	}
	if _, err := Name([]report.Sheet{sheet("a", "x", "x")}); err == nil || !strings.Contains(err.Error(), "a-x") {
		t.Errorf("two tables of one name: %v", err)
	}
}

// Thirds of a yard are sold, and 1/3 is no decimal.
func TestFieldSaysAboutAndTheUnit(t *testing.T) {
	third := report.F(12*measure.Inch, measure.In)
	tests := []struct {
		cell       report.Cell
		unit, want string
	}{
		{third, "yd", "about 0.334"},
		{third, "", "about 0.334 yd"},
		{report.F(27*measure.Inch, measure.In), "yd", "0.75"},
		{report.F(110*measure.Centimetre, measure.Cm), "m", "1.1"},
		{report.L(measure.Root2().MulInt(int64(6*measure.Inch)), measure.In), "in", "about 8.4853"},
		{report.L((measure.Inch / 64).Surd(), measure.In), "in", "0.015625"},
		{report.L((65 * measure.Millimetre).Surd(), measure.Cm), "in", "6.5 cm"},
		{report.Cell{Kind: report.Money, Number: big.NewRat(6, 1)}, "USD", "6.00"},
		{report.Cell{Kind: report.Money, Number: big.NewRat(85, 1000)}, "USD", "0.085"},
		{report.Cell{Kind: report.Share, Number: big.NewRat(1, 3)}, "%", "about 33.33"},
		{report.Cell{Kind: report.Share, Number: big.NewRat(1, 4)}, "% of price", "25"},
		{report.N(12), "min", "12"},
		{report.Cell{}, "in", ""},
	}
	for _, test := range tests {
		if got := (Style{Currency: sample.Dollars()}).field(test.cell, test.unit); got != test.want {
			t.Errorf("in a column of %q: %q, want %q", test.unit, got, test.want)
		}
	}
}

// A cut list of a plan with errors says so in its first row, in every file.
func TestUnproved(t *testing.T) {
	given := report.Table{Columns: []report.Column{{ID: "a"}, {ID: "b"}}, Rows: []report.Row{{Cells: []report.Cell{report.N(1)}}}}
	got := string(Bytes(given, Style{Unproved: true}))
	if rows := strings.Split(got, "\r\n"); !strings.Contains(rows[1], "NOT PROVED") || !strings.HasPrefix(rows[2], "body,1") {
		t.Errorf("got\n%s", got)
	}
	if got := string(Bytes(given, Style{})); strings.Contains(got, "NOT PROVED") {
		t.Errorf("a proved table is marked:\n%s", got)
	}
}
