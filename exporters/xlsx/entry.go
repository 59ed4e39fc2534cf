package xlsx

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"yardproof/exporters/internal/figure"
	"yardproof/pipeline/report"
)

// entry is what may be typed into an input. Equal ones share a rule of the
// sheet.
type entry struct {
	kind    excelize.DataValidationType
	most    string // where there is a limit above
	choices string // between line ends
	wanted  string
	prompt  string
}

// mostShare is the greatest share that may be typed: a margin of the whole
// price has no price.
const mostShare = "0.9999"

func (b *book) entryOf(c report.Cell) entry {
	e := entry{kind: excelize.DataValidationTypeDecimal, wanted: "a number of 0 or more"}
	asked := report.Entry{}
	if c.Entry != nil {
		asked = *c.Entry
	}
	switch {
	case len(asked.Choices) > 0:
		e.kind, e.choices, e.wanted = excelize.DataValidationTypeList, strings.Join(asked.Choices, "\n"), "one of the list"
	case c.Kind == report.Count || asked.Whole:
		e.kind, e.wanted = excelize.DataValidationTypeWhole, "a whole number of 0 or more"
	case c.Kind == report.Share:
		e.most, e.wanted = mostShare, "a share from 0 % to less than 100 %"
	case c.Kind == report.Money && b.heading.currency.Code() != "":
		e.wanted = "an amount in " + b.heading.currency.Code() + " of 0 or more"
	}
	e.prompt = strings.ToUpper(e.wanted[:1]) + e.wanted[1:] + "."
	if asked.Prompt != "" {
		e.prompt = asked.Prompt
	}
	return e
}

// guard says at each input what is to be typed, and refuses anything else.
func (b *book) guard(p *page) error {
	var order []entry
	places := map[entry]*area{}
	for i, l := range p.lines {
		for j, c := range l.cells {
			if !c.Input || !figure.IsNumber(c) && (c.Entry == nil || len(c.Entry.Choices) == 0) {
				continue
			}
			e := b.entryOf(c)
			if places[e] == nil {
				places[e] = &area{}
				order = append(order, e)
			}
			places[e].add(p.column(l.table, j), i+1)
		}
	}
	for _, e := range order {
		if err := b.restrict(p.name, e, places[e].String()); err != nil {
			return err
		}
	}
	return nil
}

// Limits of the file format, in characters.
const (
	maxPromptTitle = 32
	maxPrompt      = 255
)

func (b *book) restrict(sheet string, e entry, where string) error {
	rule := excelize.NewDataValidation(false)
	rule.SetSqref(where)
	var err error
	switch {
	case e.choices != "":
		err = rule.SetDropList(strings.Split(e.choices, "\n"))
	case e.most != "":
		err = rule.SetRange("0", e.most, e.kind, excelize.DataValidationOperatorBetween)
	default:
		err = rule.SetRange(0, 0, e.kind, excelize.DataValidationOperatorGreaterThanOrEqual)
		rule.Formula2 = ""
	}
	if err != nil {
		return err
	}
	rule.SetInput(cut("To be filled in", maxPromptTitle), cut(e.prompt, maxPrompt))
	rule.SetError(excelize.DataValidationErrorStyleStop, "Not a value for this cell", "Type "+e.wanted+".")
	return b.file.AddDataValidation(sheet, rule)
}

// area is cells as ranges that each go down a column.
type area struct{ ranges []span }

type span struct{ column, first, last int }

func (a *area) add(column, row int) {
	for i := range a.ranges {
		if r := &a.ranges[i]; r.column == column && r.last == row-1 {
			r.last = row
			return
		}
	}
	a.ranges = append(a.ranges, span{column, row, row})
}

func (a *area) String() string {
	slices.SortFunc(a.ranges, func(x, y span) int { return cmp.Or(x.column-y.column, x.first-y.first) })
	var all []string
	for _, r := range a.ranges {
		text := relative(r.column, r.first)
		if r.last > r.first {
			text += ":" + relative(r.column, r.last)
		}
		all = append(all, text)
	}
	return strings.Join(all, " ")
}

// mark makes cells stand out while their condition holds: bold, in a box, on
// grey, which a printer without colour shows as well.
func (b *book) mark(p *page) error {
	for i, l := range p.lines {
		for j, c := range l.cells {
			if c.Mark == nil {
				continue
			}
			condition, err := b.expression(c.Mark, p.name)
			if err == nil {
				err = b.markOne(p.name, relative(p.column(l.table, j), i+1), condition)
			}
			if err != nil {
				return fmt.Errorf("mark: %w", err)
			}
		}
	}
	return nil
}

func (b *book) markOne(sheet, cell, condition string) error {
	if b.marked == nil {
		style, err := b.file.NewConditionalStyle(&excelize.Style{
			Font:   &excelize.Font{Bold: true, Color: black},
			Fill:   excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{markShade}},
			Border: box(thinLine, black),
		})
		if err != nil {
			return err
		}
		b.marked = &style
	}
	return b.file.SetConditionalFormat(sheet, cell, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: condition, Format: b.marked}})
}
