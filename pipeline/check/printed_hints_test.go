package check

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// Hints of the rules about printed strips, taken at their word. Each plan prints
// strips of NAME as FIGURE; whoever does what the first finding says, and then what
// the next one says, has none left after two steps, whatever she printed first.
func TestHintsAboutStripsLeadOut(t *testing.T) {
	const uneven = `{"fabrics": {"sand": {"yardage": {}}}, "parts": {"square": {"cut": null, "strip_set": {"segment": "4 1/2",
		"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sand", "width": "1 1/2"}, {"fabric": "sky", "width": "1 1/2"}]}}},
		"layout": {"grid": {"rows": 8, "columns": 6}}, "printed": {"small": {"strips": {"square": FIGURE}}}}`
	const cabin = `{"fabrics": {"dark": {"yardage": {}}, "light": {"yardage": {}}},
		"parts": {"square": {"cut": null, "logs": {"centre": {"fabric": "sky", "finished": "2"}, "log": "1", "rounds": 2,
			"fabrics": {"top": "light", "right": "light", "bottom": "dark", "left": "dark"}}}},
		"printed": {"small": {"strips": {"square": FIGURE}}}}`
	const sashed = `{"fabrics": {"dark": {"yardage": {}}}, "layout": {"sashing": {"fabric": "dark", "width": "1", "cornerstones": "sky"}},
		"printed": {"small": {"strips": {"sashing": FIGURE}}}}`
	const bordered = `{"fabrics": {"dark": {"yardage": {}}}, "layout": {"borders": {"frame": {"fabric": "sky", "width": "2", "corners": "corner squares", "corner_fabric": "dark"}}},
		"printed": {"small": {"strips": {"NAME": FIGURE}}}}`
	plans := map[string]string{
		"a set of uneven fabrics": uneven, "logs": cabin, "oblongs": replaced(oblongs, "N", "FIGURE"), "sashing": sashed,
		"border": replaced(bordered, "NAME", "frame"), "corners": replaced(bordered, "NAME", "frame corners"),
	}
	var figures []string
	for _, n := range []int{1, 3, 5, 6, 12, 13, 40} {
		figures = append(figures, fmt.Sprint(n))
		for _, more := range []string{`"each": true`, `"width": "1 1/2"`, `"width": "2"`, `"each": true, "width": "2 1/2"`, `"each": true, "width": "1 1/2"`, `"fabric": "sky"`} {
			figures = append(figures, fmt.Sprintf(`{"count": %d, %s}`, n, more))
		}
	}
	followed := 0
	for name, plan := range plans {
		for _, figure := range figures {
			text, told := textOf(t, squares, replaced(plan, "FIGURE", figure)), []string{figure}
			for step := 0; ; step++ {
				file := source.New("try.plan.json", text)
				_, found := checkText(file, nil)
				f, ok := aboutStrips(found)
				if !ok {
					break
				}
				if step == 2 {
					t.Errorf("%s, printed %s: still %s", name, strings.Join(told, ", then "), f.Message)
					break
				}
				followed++
				var err error
				if len(f.Ways) == 0 {
					t.Errorf("%s, printed %s: nothing is told to do", name, strings.Join(told, ", then "))
					break
				}
				if text, err = amend.Apply(text, f.Ways[0].Edits); err != nil || len(f.Ways[0].Edits) == 0 {
					t.Errorf("%s, printed %s: nobody can do %q", name, strings.Join(told, ", then "), f.Hint)
					break
				}
				told = append(told, fmt.Sprintf("%q", f.Hint))
			}
		}
	}
	if followed < 100 {
		t.Errorf("only %d hints were followed", followed)
	}
}

// aboutStrips is the first finding about a number of strips.
func aboutStrips(found []diag.Finding) (diag.Finding, bool) {
	for _, f := range found {
		switch f.Rule {
		case "printed/strips", "finish/border-short":
			return f, true
		}
	}
	return diag.Finding{}, false
}
