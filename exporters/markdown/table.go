package markdown

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// tableShare is the part of a comment that the table may take: one in so many.
const tableShare = 4

// row is a line of the table.
type row struct {
	plan, size string
	findings   []diag.Finding
}

// table counts findings by plan and size. Plans without any are only counted,
// and so are the rows that there is no room for.
func table(run *report.Run, findings []diag.Finding, room int) string {
	if len(findings) == 0 {
		return ""
	}
	head := "\n| plan | size | errors | warnings | notes |\n| --- | --- | ---: | ---: | ---: |\n"
	var s strings.Builder
	rows, clean := rowsOf(run)
	left := 0
	for _, r := range rows {
		text := r.text()
		if left > 0 || len(head)+s.Len()+len(text) > room {
			left++
			continue
		}
		s.WriteString(text)
	}
	foot := "\nA finding about several sizes is counted in each of them."
	if left > 0 {
		foot += " There are " + words.Plural(left, "more row") + "."
	}
	if clean > 0 {
		foot += " Without findings: " + words.Plural(clean, "plan") + "."
	}
	return head + s.String() + foot + "\n"
}

// rowsOf gives the rows with findings and the number of plans without.
func rowsOf(run *report.Run) (rows []row, clean int) {
	for _, p := range run.Plans {
		if len(p.Findings) == 0 {
			clean++
			continue
		}
		rows = append(rows, planRows(p)...)
	}
	if len(run.Findings) > 0 {
		rows = append(rows, row{plan: lineName, findings: run.Findings})
	}
	return rows, clean
}

// planRows gives a row for the plan as such and one for each size, where they
// have findings.
func planRows(p report.Outcome) []row {
	name := planName(p)
	all := []row{{plan: name, size: "the plan"}}
	for _, size := range p.Sizes {
		all = append(all, row{plan: name, size: size})
	}
	for _, f := range p.Findings {
		placed := false
		for i, r := range all {
			if i > 0 && slices.Contains(f.Sizes, r.size) {
				all[i].findings = append(all[i].findings, f)
				placed = true
			}
		}
		if !placed {
			all[0].findings = append(all[0].findings, f)
		}
	}
	return slices.DeleteFunc(all, func(r row) bool { return len(r.findings) == 0 })
}

func (r row) text() string {
	t := words.Count(r.findings)
	return fmt.Sprintf("| %s | %s | %d | %d | %d |\n", r.plan, inline(shorten(r.size)), t.Errors, t.Warnings, t.Notes)
}
