package sample

import (
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Harbour is the text of a plan with a tab, letters of one, two and no
// terminal cells, and a name that a spreadsheet would take for a formula.
const Harbour = `{
  "format": 1, "id": "harbour-steps", "title": "Harbour Steps", "revision": "1.0", "status": "testing",
	"fabrics": {
    "roll": { "name": "` + "港の帯 Ne\u0301roli" + `", "precut": { "usable": ["2 1/2", "41 1/2"], "count": 40 } },
    "edge": { "name": "=Border", "yardage": { "usable_width": "40" } }
  },
  "layout": { "grid": { "rows": 6,	"columns": 6 } },
  "printed": { "throw": { "parts": { "step": 36 }, "fabric": { "edge": "1 yd" } } }
}
`

// Line returns the run as an exporter sees it.
func Line() *report.Run {
	harbour := source.New("plans/harbour-steps.plan.json", []byte(Harbour))
	torn := source.New("plans/torn.plan.json", []byte("{ \"format\": 1,\r\n  \"id\": \"torn\"\r\n"))
	return &report.Run{
		Studio:   "Tide & Thread",
		Currency: Dollars(),
		Accepted: 1,
		Findings: []diag.Finding{{
			Rule:    "run/no-price-list",
			Level:   diag.Note,
			Place:   diag.Place{File: "yardproof.json"},
			Message: "no price list is named, so kits are costed at the prices in the plans",
			Hint:    "name one under \"prices\"",
		}},
		Plans: []report.Outcome{harbourOutcome(harbour), tornOutcome(torn), {
			File: "plans/tide-line.plan.json", ID: "tide-line", Title: "Tide Line", Status: "draft",
			Sizes: []string{"cot", "throw"}, Exported: true,
		}},
		Sheets: lineSheets(),
	}
}

// Dollars is the currency of the sample.
func Dollars() measure.Currency {
	c, _ := measure.ParseCurrency("USD")
	return c
}

func harbourOutcome(f *source.File) report.Outcome {
	return report.Outcome{
		File: f.Name, ID: "harbour-steps", Title: "Harbour Steps", Status: "testing",
		Sizes: []string{"throw", "wall"}, Accepted: 1,
		Findings: []diag.Finding{shortTube(f), lateBorder(f)},
	}
}

func shortTube(f *source.File) diag.Finding {
	return diag.Finding{
		Rule:    "yield/too-few-squares",
		Level:   diag.Error,
		Place:   At(f, `"41 1/2"`, "/fabrics/roll/precut/usable/1"),
		Plan:    "harbour-steps",
		Sizes:   []string{"throw"},
		Message: "6 tubes of 41 1/2 in give 30 squares, the layout needs 36: the sixth square of a tube needs 42 in",
		Hint:    "use strips of at least 42 in, a layout of at most 30 blocks, or 8 tubes, for which the roll of 40 strips is too small: 8 tubes take 48",
		Related: []diag.Related{{Place: At(f, `6 }`, "/layout/grid/columns"), Message: "6 rows of 6 blocks are laid out here"}},
		Follows: []diag.Finding{{
			Rule: "printed/part-count", Level: diag.Error, Plan: "harbour-steps", Sizes: []string{"throw"},
			Place: At(f, `36`, "/printed/throw/parts/step"), Message: "36 squares are printed, 30 can be made",
			Follows: []diag.Finding{{
				Rule: "printed/finished-size", Level: diag.Warning, Plan: "harbour-steps", Sizes: []string{"throw", "wall"},
				Place: diag.Place{File: "yardproof.json"}, Message: "the chart of sizes lists 53 1/4 in",
			}},
		}},
	}
}

func lateBorder(f *source.File) diag.Finding {
	return diag.Finding{
		Rule:    "fabric/tight",
		Level:   diag.Warning,
		Place:   At(f, `"=Border"`, "/fabrics/edge/name"),
		Plan:    "harbour-steps",
		Sizes:   []string{"throw", "wall"},
		Message: "1 yd is enough only if the borders are cut as laid out: 36 in of 36 in are used",
		Ways:    bordered(f),
	}
}

// bordered are ways out of each kind; one was tried, one failed.
func bordered(f *source.File) []diag.Way {
	at := At(f, `"=Border"`, "")
	name := diag.Edit{Act: source.Put, Range: at.Range, Start: at.Start, End: at.End, Text: `"Border"`, Verb: "write", Shown: `"Border"`}
	end := At(f, `6 }`, "")
	wide := diag.Edit{Act: source.Put, Range: end.Range, Start: end.Start, End: end.End, Text: "7", Verb: "print", Shown: "7"}
	return []diag.Way{
		{Kind: source.Mend, Edits: []diag.Edit{name}, Also: []diag.Edit{wide}, Trial: source.Holds},
		{Kind: source.Mend, Edits: []diag.Edit{wide}, Trial: source.Fails},
		{Kind: source.Advice, Says: "cut the borders first"},
	}
}

func tornOutcome(f *source.File) report.Outcome {
	end := source.At(len(f.Bytes))
	return report.Outcome{File: f.Name, Findings: []diag.Finding{{
		Rule: "schema/json", Level: diag.Error,
		Place:   place(f, end, ""),
		Message: "the file ends inside an object",
		Hint:    "close it with }",
	}}}
}

// At is the place of the first occurrence of some text.
func At(f *source.File, text, pointer string) diag.Place {
	start := strings.Index(string(f.Bytes), text)
	end := start + len(strings.TrimRight(text, " }"))
	return place(f, source.Range{Start: start, End: end}, pointer)
}

func place(f *source.File, r source.Range, pointer string) diag.Place {
	return diag.Place{
		File: f.Name, Range: r, Pointer: pointer,
		Start: f.Position(r.Start), End: f.Position(r.End), Excerpt: f.Excerpt(r),
	}
}
