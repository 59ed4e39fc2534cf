package xlsx

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// maxSheetName is the file format's limit, in UTF-16 code units.
const maxSheetName = 31

// sheetNames holds the names given so far, folded: programs do not tell case
// apart.
type sheetNames map[string]bool

// unique makes a title a valid name that no other sheet of the book has.
func (s sheetNames) unique(title string) string {
	base := validSheetName(title)
	name := base
	for n := 2; s[strings.ToLower(name)]; n++ {
		mark := " " + strconv.Itoa(n)
		name = cut(base, maxSheetName-len(mark)) + mark
	}
	s[strings.ToLower(name)] = true
	return name
}

func validSheetName(title string) string {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) || r < ' ' {
			return ' '
		}
		return r
	}, title)
	name = strings.Join(strings.Fields(name), " ")
	name = strings.Trim(cut(strings.Trim(name, "'"), maxSheetName), " '")
	switch strings.ToLower(name) {
	case "":
		return "Sheet"
	case "history": // kept by spreadsheet programs for themselves
		return name + " sheet"
	}
	return name
}

// cut shortens text to at most n UTF-16 code units.
func cut(text string, n int) string {
	used := 0
	for i, r := range text {
		used += utf16.RuneLen(r)
		if used > n {
			return text[:i]
		}
	}
	return text
}

// quoted is a sheet's name as formulas write it.
func quoted(sheet string) string {
	return "'" + strings.ReplaceAll(sheet, "'", "''") + "'"
}

// absolute is a cell's address within its sheet: $B$5.
func absolute(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column, row, true)
	if err != nil {
		return "" // a column beyond the file format's 16,384; no table has as many
	}
	return name
}

// relative is a cell's address as people write it: B5.
func relative(column, row int) string { return strings.ReplaceAll(absolute(column, row), "$", "") }

// definedName turns the name of an input into one that workbooks accept, "" if
// that cannot be done without the risk of it being read as something else.
func definedName(name string) string {
	clean := strings.Map(func(r rune) rune {
		if r == '-' || r == ' ' || r == '/' {
			return '_'
		}
		return r
	}, name)
	if len(clean) > 255 || !wordLike.MatchString(clean) || addressLike.MatchString(clean) {
		return ""
	}
	return clean
}

var (
	wordLike = regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_.]*$`)
	// addressLike matches A1, R1C1, R, C and the words for truth.
	addressLike = regexp.MustCompile(`(?i)^([a-z]{1,3}[0-9]+|r[0-9]*(c[0-9]*)?|c[0-9]*|true|false)$`)
)
