package sheet

import (
	"bytes"
	"fmt"
	"sort"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
	"github.com/xuri/nfp"

	"yardproof/schema/source"
)

// What no list of a studio reaches. They keep a hostile workbook from taking
// all memory: its parts are small as packed.
const (
	maxUnpacked = 64 << 20
	maxRows     = 50_000
	maxColumns  = 256
)

// Is reports whether bytes look like a workbook, which is a zip archive, or like
// one of another kind, of which [Text] says what it is.
func Is(b []byte) bool { return bytes.HasPrefix(b, []byte("PK\x03\x04")) || foreign(b) != nil }

// Text writes a sheet of a workbook as CSV (RFC 4180), every row of it on a
// line of its own up to its last filled cell, and gives it as a file that knows
// the cell of every byte. An empty sheet takes the first one.
//
// A number is written as the shortest decimal that the stored binary number
// stands for, which is what was typed, up to 15 digits, with the given mark
// before its decimals, so that it reads as numbers that the sheet holds as
// text; a date as ISO 8601; a
// formula as the value that is stored with it. The error says what is wrong
// with the workbook, in words for a person.
func Text(name string, b []byte, sheet, mark string) (_ *source.File, err error) {
	if err := foreign(b); err != nil {
		return nil, err
	}
	defer func() { // the library is known to panic on parts that contradict each other
		if p := recover(); p != nil {
			err = fmt.Errorf("it cannot be read as a workbook: %v", p)
		}
	}()
	book, err := excelize.OpenReader(bytes.NewReader(b), excelize.Options{
		UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxUnpacked, RawCellValue: true,
	})
	if err != nil {
		return nil, fmt.Errorf("it cannot be read as a workbook: %w", err)
	}
	defer book.Close()
	if sheet == "" {
		sheet = book.GetSheetName(0)
	}
	if i, err := book.GetSheetIndex(sheet); err != nil || i < 0 {
		return nil, fmt.Errorf("it has no sheet %q; it has %s", sheet, strings.Join(book.GetSheetList(), ", "))
	}
	w := writer{book: book, sheet: sheet, mark: mark}
	if err := w.rows(); err != nil {
		return nil, err
	}
	return source.NewSheet(name, w.text.Bytes(), w.cell), nil
}

// writer writes rows and remembers where each cell begins.
type writer struct {
	book   *excelize.File
	sheet  string
	mark   string
	text   bytes.Buffer
	starts []int
	names  []string // of the cells that begin at starts
}

func (w *writer) rows() error {
	rows, err := w.book.Rows(w.sheet)
	if err != nil {
		return fmt.Errorf("its sheet %q cannot be read: %w", w.sheet, err)
	}
	defer rows.Close()
	for n := 1; rows.Next(); n++ {
		cells, err := rows.Columns(excelize.Options{RawCellValue: true})
		switch {
		case err != nil:
			return fmt.Errorf("row %d of its sheet %q cannot be read: %w", n, w.sheet, err)
		case n > maxRows:
			return fmt.Errorf("its sheet %q has more than %d rows", w.sheet, maxRows)
		case len(cells) > maxColumns:
			return fmt.Errorf("row %d of its sheet %q has more than %d columns", n, w.sheet, maxColumns)
		}
		if err := w.row(n, cells); err != nil {
			return err
		}
	}
	return rows.Error()
}

func (w *writer) row(n int, cells []string) error {
	for i, raw := range cells {
		address, err := excelize.CoordinatesToCellName(i+1, n)
		if err != nil {
			return err
		}
		value, err := w.value(address, raw)
		if err != nil {
			return fmt.Errorf("cell %s of its sheet %q: %w", address, w.sheet, err)
		}
		if i > 0 {
			w.text.WriteByte(',')
		}
		w.begin(address)
		w.text.WriteString(quoted(value))
	}
	if len(cells) == 0 {
		w.begin("A" + strconv.Itoa(n))
	}
	w.text.WriteByte('\n')
	return nil
}

func (w *writer) begin(address string) {
	w.starts = append(w.starts, w.text.Len())
	w.names = append(w.names, address)
}

// cell is the address of the cell at an offset of the text.
func (w *writer) cell(offset int) string {
	i := sort.SearchInts(w.starts, offset+1) - 1
	if i < 0 {
		return w.sheet + "!A1"
	}
	return w.sheet + "!" + w.names[i]
}

// value is what a person reads in a cell, without its format's rounding.
func (w *writer) value(address, raw string) (string, error) {
	kind, err := w.book.GetCellType(w.sheet, address)
	if err != nil || raw == "" {
		return raw, err
	}
	number, err := strconv.ParseFloat(raw, 64)
	if err != nil || kind != excelize.CellTypeNumber && kind != excelize.CellTypeUnset && kind != excelize.CellTypeFormula {
		return raw, nil
	}
	if w.dated(address) {
		return w.date(number)
	}
	return strings.Replace(strconv.FormatFloat(number, 'f', -1, 64), ".", w.mark, 1), nil
}

// dated reports whether a number is shown as a date.
func (w *writer) dated(address string) bool {
	id, err := w.book.GetCellStyle(w.sheet, address)
	if err != nil {
		return false
	}
	style, err := w.book.GetStyle(id)
	if err != nil || style == nil {
		return false
	}
	if style.CustomNumFmt != nil {
		return dateFormat(*style.CustomNumFmt)
	}
	return 14 <= style.NumFmt && style.NumFmt <= 22 || 27 <= style.NumFmt && style.NumFmt <= 36 || 50 <= style.NumFmt && style.NumFmt <= 58
}

// dateFormat reports whether a number format (ECMA-376, part 1, 18.8.31) shows a
// year or a day.
func dateFormat(format string) bool {
	parser := nfp.NumberFormatParser()
	for _, section := range parser.Parse(format) {
		for _, token := range section.Items {
			if token.TType == nfp.TokenTypeDateTimes && strings.ContainsAny(token.TValue, "yYdD") {
				return true
			}
		}
	}
	return false
}

func (w *writer) date(serial float64) (string, error) {
	from1904 := false
	if props, err := w.book.GetWorkbookProps(); err == nil && props.Date1904 != nil {
		from1904 = *props.Date1904
	}
	day, err := excelize.ExcelDateToTime(serial, from1904)
	if err != nil {
		return "", err
	}
	return day.Format(time.DateOnly), nil
}

// quoted puts a value in quotation marks where CSV needs them. A line break
// within a cell becomes a blank, so that a row stays a line.
func quoted(value string) string {
	value = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ").Replace(value)
	if strings.ContainsAny(value, "\",") || strings.TrimSpace(value) != value {
		return `"` + strings.ReplaceAll(value, `"`, `""`) + `"`
	}
	return value
}
