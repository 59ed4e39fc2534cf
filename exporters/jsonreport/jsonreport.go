package jsonreport

import (
	"bytes"
	"encoding/json"
	"io"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// Version is the number of the format, first in every document.
const Version = 1

type document struct {
	Format   int       `json:"format"`
	Studio   string    `json:"studio,omitempty"`
	Plans    []plan    `json:"plans"`
	Findings []finding `json:"findings"`
	Accepted []excused `json:"accepted,omitempty"`
	Baseline *baseline `json:"baseline,omitempty"`
	Text     *reading  `json:"text,omitempty"`
	Counts   counts    `json:"counts"`
}

// reading is what became of the numbers of a pattern's text.
type reading struct {
	File      string   `json:"file"`
	Agree     int      `json:"agree"`
	Disagree  int      `json:"disagree"`
	NotPlaced int      `json:"not_placed"`
	Numbers   []stated `json:"numbers"`
}

type stated struct {
	Text    string    `json:"text"`
	Start   *position `json:"start"`
	End     *position `json:"end"`
	Verdict string    `json:"verdict"`
	Sense   string    `json:"sense,omitempty"`
	States  string    `json:"states,omitempty"`
	Is      string    `json:"is,omitempty"`
	Size    string    `json:"size,omitempty"`
	From    string    `json:"from,omitempty"`
}

// baseline counts findings that were recorded earlier. Those found again are
// not among the findings.
type baseline struct {
	Recorded int `json:"recorded"`
	Old      int `json:"old"`
	Gone     int `json:"gone"`
	Unseen   int `json:"unseen"`

	Since    string `json:"since,omitempty"`
	Same     int    `json:"same,omitempty"`
	Unjudged int    `json:"unjudged,omitempty"`
}

// excused is a finding that a project accepts.
type excused struct {
	Finding finding `json:"finding"`
	Reason  string  `json:"reason"`
	Until   string  `json:"until,omitempty"`
	By      place   `json:"by"`
}

type plan struct {
	File     string   `json:"file"`
	ID       string   `json:"id,omitempty"`
	Title    string   `json:"title,omitempty"`
	Status   string   `json:"status,omitempty"`
	Sizes    []string `json:"sizes"`
	Exported bool     `json:"exported"`
	Counts   counts   `json:"counts"`
}

// counts leaves consequences out of the levels: they are mended with their
// causes.
type counts struct {
	Error    int    `json:"error"`
	Warning  int    `json:"warning"`
	Note     int    `json:"note"`
	Follow   int    `json:"follow"`
	Accepted int    `json:"accepted"`
	Worst    string `json:"worst,omitempty"`
}

type finding struct {
	Rule    string `json:"rule"`
	Level   string `json:"level"`
	Message string `json:"message"`
	Hint    string `json:"hint,omitempty"`
	Ways    []way  `json:"ways,omitempty"`
	Plan    string `json:"plan,omitempty"`
	place
	Sizes   []string  `json:"sizes,omitempty"`
	Related []related `json:"related,omitempty"`
	Follows []finding `json:"follows,omitempty"`
}

type related struct {
	Message string `json:"message"`
	place
}

// place has no range when the finding is about the file as a whole. The end is
// the first byte, or column, no longer part of it.
type place struct {
	File    string    `json:"file,omitempty"`
	Range   *span     `json:"range,omitempty"`
	Start   *position `json:"start,omitempty"`
	End     *position `json:"end,omitempty"`
	Pointer *string   `json:"pointer,omitempty"`
	Cell    string    `json:"cell,omitempty"`
}

type span struct {
	Start int `json:"start"`
	End   int `json:"end"`
}

// position counts from 1, columns in code points.
type position struct {
	Line   int `json:"line"`
	Column int `json:"column"`
}

// Write writes the whole run, in the one order of findings. An error is one of
// w.
func Write(w io.Writer, run *report.Run) error {
	findings := run.All()
	total := count(findings, run.Accepted)
	d := document{Format: Version, Studio: run.Studio, Plans: []plan{}, Findings: convert(findings)}
	for _, p := range run.Plans {
		d.Plans = append(d.Plans, outcome(p))
		total.Accepted += p.Accepted
	}
	if b := run.Baseline; b != nil {
		d.Baseline = &baseline{Recorded: b.Recorded, Old: len(b.Old), Gone: b.Gone, Unseen: b.Unseen, Since: b.Since, Same: b.Same, Unjudged: b.Unjudged}
	}
	for _, e := range run.Exceptions() {
		f := convert([]diag.Finding{e.Finding})[0]
		d.Accepted = append(d.Accepted, excused{Finding: f, Reason: e.Reason, Until: e.Until, By: at(e.Place)})
	}
	d.Text = readingOf(run.Text)
	d.Counts = total
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(d); err != nil {
		return err
	}
	_, err := w.Write(words.JSON(b.Bytes()))
	return err
}

func readingOf(r *report.Reading) *reading {
	if r == nil {
		return nil
	}
	out := &reading{File: r.File, Agree: r.Count("agrees"), Disagree: r.Count("disagrees"), NotPlaced: r.Count("not placed"), Numbers: []stated{}}
	for _, n := range r.Numbers {
		s := stated{Text: n.Text, Start: where(n.Place.Start), End: where(n.Place.End), Verdict: n.Verdict, Sense: n.Sense, States: n.States, Is: n.Is, Size: n.Size}
		if n.States != "" {
			s.From = n.From()
		}
		out.Numbers = append(out.Numbers, s)
	}
	return out
}

func outcome(p report.Outcome) plan {
	return plan{
		File: p.File, ID: p.ID, Title: p.Title, Status: p.Status,
		Sizes:    append([]string{}, p.Sizes...),
		Exported: p.Exported,
		Counts:   count(p.Findings, p.Accepted),
	}
}

func count(findings []diag.Finding, accepted int) counts {
	c := counts{Accepted: accepted}
	for _, f := range findings {
		switch f.Level {
		case diag.Error:
			c.Error++
		case diag.Warning:
			c.Warning++
		case diag.Note:
			c.Note++
		}
		c.Follow += following(f)
	}
	if worst := diag.Worst(findings); worst > 0 {
		c.Worst = worst.String()
	}
	return c
}

func following(f diag.Finding) int {
	n := len(f.Follows)
	for _, c := range f.Follows {
		n += following(c)
	}
	return n
}

func convert(findings []diag.Finding) []finding {
	all := []finding{}
	for _, f := range findings {
		out := finding{
			Rule: f.Rule, Level: f.Level.String(), Message: f.Message, Hint: f.Hint, Ways: waysOf(f),
			Plan: f.Plan, place: at(f.Place), Sizes: f.Sizes,
			Follows: convert(f.Follows),
		}
		for _, r := range f.Related {
			out.Related = append(out.Related, related{Message: r.Message, place: at(r.Place)})
		}
		all = append(all, out)
	}
	return all
}

func at(p diag.Place) place {
	if p.Start.Line == 0 {
		return place{File: p.File, Cell: p.Cell}
	}
	return place{
		File:    p.File,
		Range:   &span{p.Range.Start, p.Range.End},
		Start:   where(p.Start),
		End:     where(p.End),
		Pointer: &p.Pointer,
	}
}

func where(p source.Position) *position { return &position{Line: p.Line, Column: p.Column} }
