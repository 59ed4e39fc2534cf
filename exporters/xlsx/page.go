package xlsx

import (
	"fmt"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Paper sizes of the file format.
const (
	letter = 1
	a4     = 9
)

// contentDate stands where the file format wants a time. Nothing in a plan is
// dated, and the clock has no place in an output that must not change unless
// the plan does.
const contentDate = "2000-01-01T00:00:00Z"

func (b *book) properties() error {
	if err := b.file.SetDefaultFont(fontFamily); err != nil {
		return err
	}
	if err := b.file.SetAppProps(&excelize.AppProperties{Application: "yardproof"}); err != nil {
		return err
	}
	properties := &excelize.DocProperties{
		Creator: "yardproof", LastModifiedBy: "yardproof",
		Created: contentDate, Modified: contentDate,
		Title: b.heading.title, Subject: b.heading.about,
	}
	if b.heading.revision != "" {
		properties.Description = "Revision " + b.heading.revision
	}
	return b.file.SetDocProps(properties)
}

// setUp prepares a sheet for printing and typing, and puts its pictures on it.
func (b *book) setUp(p *page) error {
	if err := firstError(b.beginPages(p), b.placeCharts(p), b.place(p)); err != nil {
		return err
	}
	if err := b.paper(p); err != nil {
		return err
	}
	if err := b.file.SetHeaderFooter(p.name, b.headerFooter()); err != nil {
		return err
	}
	return firstError(b.printTitles(p), b.guard(p), b.mark(p), b.protect(p))
}

// beginPages sets the breaks before tables and charts.
func (b *book) beginPages(p *page) error {
	for _, row := range p.breaks {
		if err := b.file.InsertPageBreak(p.name, relative(1, row)); err != nil {
			return err
		}
	}
	return nil
}

// protect keeps formulas and words from being typed over by mistake; nobody
// needs a password to take that off.
func (b *book) protect(p *page) error {
	if !p.live {
		return nil
	}
	return b.file.ProtectSheet(p.name, &excelize.SheetProtectionOptions{
		SelectLockedCells: true, SelectUnlockedCells: true, FormatColumns: true, FormatRows: true,
	})
}

// paper prints the sheet at the scale it was laid out for.
func (b *book) paper(p *page) error {
	size, orientation, fits, no := letter, "portrait", false, false
	if b.heading.metric {
		size = a4
	}
	if p.wide {
		orientation = "landscape"
	}
	percent := uint(math.Round(100 * p.scale))
	layout := excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, AdjustTo: &percent}
	side, top, edge := 0.5, 0.65, 0.3
	return firstError(
		b.file.SetPageLayout(p.name, &layout),
		b.file.SetSheetProps(p.name, &excelize.SheetPropsOptions{FitToPage: &fits}),
		b.file.SetPageMargins(p.name, &excelize.PageLayoutMarginsOptions{
			Left: &side, Right: &side, Top: &top, Bottom: &top, Header: &edge, Footer: &edge,
		}),
		b.file.SetSheetView(p.name, 0, &excelize.ViewOptions{ShowGridLines: &no}),
	)
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// maxHeaderPart keeps the three parts of a header within the file format's 255
// characters.
const maxHeaderPart = 100

func (b *book) headerFooter() *excelize.HeaderFooterOptions {
	header := "&L" + headerText(b.heading.title)
	if !b.heading.proved {
		header += `&C&"` + fontFamily + `,Bold"NOT PROVED`
	}
	if b.heading.revision != "" {
		header += "&R" + headerText("Revision "+b.heading.revision)
	}
	return &excelize.HeaderFooterOptions{OddHeader: header, OddFooter: "&L&A&RPage &P of &N"}
}

// headerText keeps an ampersand from being read as a code, and a break from
// ending the line.
func headerText(text string) string {
	text = strings.Join(strings.Fields(cut(text, maxHeaderPart)), " ")
	text = cut(strings.ReplaceAll(text, "&", "&&"), maxHeaderPart)
	if ends := len(text) - len(strings.TrimRight(text, "&")); ends%2 == 1 {
		text = text[:len(text)-1] // half of a pair would be the beginning of a code
	}
	return text
}

// printTitles repeats the column titles of a sheet's one table on every page;
// several tables have different ones, so the sheet's own title is repeated, or
// the column titles of the last table where it is long: rows are repeated only
// on the pages behind them.
func (b *book) printTitles(p *page) error {
	first, last := 1, p.titleRows(b.heading)
	if n := len(p.heads); n == 1 || n > 1 && p.endsLong() {
		first, last = p.heads[n-1], p.heads[n-1]
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name:     "_xlnm.Print_Titles",
		RefersTo: fmt.Sprintf("%s!$%d:$%d", quoted(p.name), first, last),
		Scope:    p.name,
	})
}
