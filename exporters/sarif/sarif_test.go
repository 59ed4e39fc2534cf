package sarif

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

func written(t *testing.T, r *report.Run, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func line() *report.Run {
	r := sample.Line()
	r.Rules = []report.Rule{
		{Name: "fabric/tight", Level: diag.Warning, Summary: "the printed length is only just enough", Why: "One crooked cut and it is short.", Fix: "print the next length"},
		{Name: "schema/json", Level: diag.Error, Summary: "the text is not JSON", Why: "Nothing of it can be read.", Fix: "mend it"},
		{Name: "yield/too-few-squares", Level: diag.Error, Summary: "fewer squares come of the tubes than are needed", Why: "The maker is short of squares.", Fix: "make more tubes"},
	}
	return r
}

func runs() map[string]*report.Run {
	return map[string]*report.Run{
		"run": line(), "edge": edge.Run(), "empty": {}, "many": edge.Many(30),
		"compared": compared(),
	}
}

// compared is a run against a baseline in which one of two errors was recorded.
func compared() *report.Run {
	r := edge.Many(2)
	old := r.Plans[0].Findings[2]
	r.Plans[0].Findings = r.Plans[0].Findings[:2]
	r.Baseline = &report.Baseline{Recorded: 4, Old: []diag.Finding{old}, Gone: 1, Unseen: 2}
	return r
}

// Against a baseline every result has a state (3.27.24), old ones keep the
// fingerprint that they had, and only new ones give the status.
func TestAgainstABaseline(t *testing.T) {
	prints := func(r *report.Run, state string) map[string]bool {
		all := map[string]bool{}
		for _, x := range decoded(t, r).Results {
			if state == "" || x.BaselineState == state {
				all[x.PartialFingerprints[fingerprintName]] = true
			}
		}
		return all
	}
	whole, fresh, old := prints(edge.Many(2), ""), prints(compared(), "new"), prints(compared(), "unchanged")
	if len(whole) != 6 || len(fresh) != 5 || len(old) != 1 {
		t.Errorf("%d results, of which %d new and %d old", len(whole), len(fresh), len(old))
	}
	for p := range old {
		if !whole[p] || fresh[p] {
			t.Error("an old result has another fingerprint, or that of a new one")
		}
	}
}

func TestWrite(t *testing.T) {
	golden.Check(t, "run.sarif", written(t, line(), Options{Version: "1.2.3", FailOn: diag.Error}))
}

func TestWriteEdge(t *testing.T) {
	golden.Check(t, "edge.sarif", written(t, edge.Run(), Options{}))
}

func TestFollowsTheStandard(t *testing.T) {
	schema := standard(t)
	for name, r := range runs() {
		if err := valid(t, schema, written(t, r, Options{Version: "1.2.3", FailOn: diag.Note})); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The validation above would not be worth much if nothing failed it.
func TestTheStandardRefuses(t *testing.T) {
	schema := standard(t)
	log := string(written(t, edge.Run(), Options{}))
	for _, breakage := range [][2]string{
		{`"unicodeCodePoints"`, `"bytes"`},
		{`"level": "error"`, `"level": "fatal"`},
		{`"startLine": 1`, `"startLine": 0`},
		{`"executionSuccessful": false`, `"executionSuccessful": "no"`},
		{`"uri": "`, `"uri": "a b`},
		{`"kind": "external"`, `"kind": "elsewhere"`},
		{`"artifacts"`, `"files"`},
	} {
		broken := strings.ReplaceAll(log, breakage[0], breakage[1])
		if broken == log {
			t.Fatalf("nothing to break: %s", breakage[0])
		}
		if valid(t, schema, []byte(broken)) == nil {
			t.Errorf("%s in place of %s is taken as valid", breakage[1], breakage[0])
		}
	}
}

// decoded is a log as another program reads it.
func decoded(t *testing.T, r *report.Run) run {
	t.Helper()
	var l log
	if err := json.Unmarshal(written(t, r, Options{}), &l); err != nil {
		t.Fatal(err)
	}
	return l.Runs[0]
}

func TestEachFindingIsWrittenOnce(t *testing.T) {
	for name, r := range runs() {
		got := decoded(t, r)
		findings := r.All()
		n := len(got.Results) + len(got.Invocations[0].ToolExecutionNotifications) - len(r.Exceptions())
		if r.Baseline != nil {
			n -= len(r.Baseline.Old)
		}
		if n != len(findings) {
			t.Errorf("%s: %d findings are written, there are %d", name, n, len(findings))
		}
		follow := 0
		for _, x := range got.Results {
			follow += len(x.Properties.Follows)
		}
		if want := words.Count(findings).Follow; follow != want {
			t.Errorf("%s: %d consequences are written, there are %d", name, follow, want)
		}
	}
}

// Every index and id leads to what has the same name.
func TestReferences(t *testing.T) {
	for name, r := range runs() {
		got := decoded(t, r)
		check := func(p place) {
			if p.PhysicalLocation == nil {
				return
			}
			l := p.PhysicalLocation.ArtifactLocation
			if l.Index == nil || got.Artifacts[*l.Index].Location.URI != l.URI {
				t.Errorf("%s: artifact %v of %q", name, l.Index, l.URI)
			}
		}
		for _, x := range got.Results {
			if got.Tool.Driver.Rules[x.RuleIndex].ID != x.RuleID {
				t.Errorf("%s: rule %d is not %s", name, x.RuleIndex, x.RuleID)
			}
			for i, p := range append(x.Locations, x.RelatedLocations...) {
				check(p)
				if i >= len(x.Locations) && p.ID != i-len(x.Locations)+1 {
					t.Errorf("%s: related location %d has the id %d", name, i, p.ID)
				}
			}
			for _, c := range x.Properties.Follows {
				if at := x.RelatedLocations[c.LocationID-1]; !strings.Contains(at.Message.Text, c.RuleID) {
					t.Errorf("%s: %s stands at %q", name, c.RuleID, at.Message.Text)
				}
			}
		}
		for _, n := range got.Invocations[0].ToolExecutionNotifications {
			if got.Tool.Driver.Notifications[n.Descriptor.Index].ID != n.Descriptor.ID {
				t.Errorf("%s: notification %s", name, n.Descriptor.ID)
			}
		}
	}
}

// offset counts lines and code points from the start of a text, as the log
// says that they are counted: slow and obvious.
func offset(text string, line, column int) int {
	at := 0
	for ; line > 1; line-- {
		end := strings.IndexAny(text[at:], "\r\n") + at
		at = end + 1
		if strings.HasPrefix(text[end:], "\r\n") {
			at++
		}
	}
	for ; column > 1; column-- {
		_, size := nextRune(text[at:])
		at += size
	}
	return at
}

func nextRune(s string) (rune, int) {
	for i, r := range s {
		if i > 0 {
			return r, i
		}
	}
	return 0, len(s)
}

func TestRegionsAgreeWithTheText(t *testing.T) {
	texts := map[string]string{
		"plans/harbour-steps.plan.json":                     sample.Harbour,
		"plans/%5Ba%5D%20%2520%7C%60x%60,:%C2%BD.plan.json": edge.Text,
	}
	looked := 0
	for _, r := range []*report.Run{line(), edge.Run()} {
		for _, x := range decoded(t, r).Results {
			for _, p := range append(x.Locations, x.RelatedLocations...) {
				if p.PhysicalLocation == nil || p.PhysicalLocation.Region == nil {
					continue
				}
				text, known := texts[p.PhysicalLocation.ArtifactLocation.URI]
				if !known {
					continue
				}
				looked++
				g := p.PhysicalLocation.Region
				start, end := offset(text, g.StartLine, g.StartColumn), offset(text, g.EndLine, g.EndColumn)
				if start != g.ByteOffset || end-start != g.ByteLength {
					t.Errorf("%s: lines and columns give bytes %d to %d, the region has %d and %d more", x.RuleID, start, end, g.ByteOffset, g.ByteLength)
				}
			}
		}
	}
	if looked < 8 {
		t.Errorf("only %d regions were looked at", looked)
	}
}

func print(t *testing.T, f diag.Finding) string {
	t.Helper()
	r := decoded(t, &report.Run{Findings: []diag.Finding{f}})
	return r.Results[0].PartialFingerprints[fingerprintName]
}

func TestFingerprints(t *testing.T) {
	f := diag.Finding{
		Rule: "yield/few", Level: diag.Error, Plan: "harbour", Sizes: []string{"throw", "wall"}, Message: "30 squares",
		Place: diag.Place{File: "a.plan.json", Pointer: "/layout", Start: source.Position{Line: 4, Column: 2}},
	}
	same := map[string]func(*diag.Finding){
		"lines move":       func(f *diag.Finding) { f.Place.Start.Line = 9; f.Place.Range.Start = 400 },
		"a number changes": func(f *diag.Finding) { f.Message = "31 squares" },
		"level":            func(f *diag.Finding) { f.Level = diag.Warning },
		"the file moves":   func(f *diag.Finding) { f.Place.File = "b/a.plan.json" },
	}
	other := map[string]func(*diag.Finding){
		"rule":            func(f *diag.Finding) { f.Rule = "yield/fewer" },
		"plan":            func(f *diag.Finding) { f.Plan = "steps" },
		"pointer":         func(f *diag.Finding) { f.Place.Pointer = "/layout/rows" },
		"sizes":           func(f *diag.Finding) { f.Sizes = []string{"throw"} },
		"sizes, no plan":  func(f *diag.Finding) { f.Plan = ""; f.Sizes = []string{"a.plan.json"} },
		"size and plan":   func(f *diag.Finding) { f.Plan = "harbour\x00/layout"; f.Place.Pointer = "" },
		"no plan, a file": func(f *diag.Finding) { f.Plan = "" },
	}
	want := print(t, f)
	for name, change := range same {
		g := f
		change(&g)
		if print(t, g) != want {
			t.Errorf("%s: the fingerprint changes", name)
		}
	}
	for name, change := range other {
		g := f
		change(&g)
		if print(t, g) == want {
			t.Errorf("%s: the fingerprint stays", name)
		}
	}
	for name, r := range runs() {
		seen := map[string]string{}
		for _, x := range decoded(t, r).Results {
			p := x.PartialFingerprints[fingerprintName]
			if seen[p] != "" {
				t.Errorf("%s: %q and %q share a fingerprint", name, seen[p], x.Message.Text)
			}
			seen[p] = x.Message.Text
		}
	}
}

// Expected values follow from RFC 3986 (percent-encoding, 2.1; colon in a
// first segment, 4.2) and RFC 8089 (file URIs, appendix E for drives).
func TestLocate(t *testing.T) {
	for file, want := range map[string]location{
		"plans/a.plan.json":      {URI: "plans/a.plan.json", URIBaseID: root},
		"./plans//a.plan.json":   {URI: "plans/a.plan.json", URIBaseID: root},
		"../a.plan.json":         {URI: "../a.plan.json", URIBaseID: root},
		"a b/½#?%.json":          {URI: "a%20b/%C2%BD%23%3F%25.json", URIBaseID: root},
		"a:b/c:d.json":           {URI: "a%3Ab/c%3Ad.json", URIBaseID: root},
		"C:a.json":               {URI: "C%3Aa.json", URIBaseID: root},
		"a\\b.json":              {URI: "a%5Cb.json", URIBaseID: root},
		"\xff.json":              {URI: "%FF.json", URIBaseID: root},
		"/srv/a b.json":          {URI: "file:///srv/a%20b.json"},
		"C:/Ann & Co/a.json":     {URI: "file:///C:/Ann%20&%20Co/a.json"},
		"//host/share/[a].json":  {URI: "file://host/share/%5Ba%5D.json"},
		"1:/not-a-drive/it.json": {URI: "1%3A/not-a-drive/it.json", URIBaseID: root},
	} {
		if got := locate(file); got != want {
			t.Errorf("locate(%q) = %+v, want %+v", file, got, want)
		}
	}
}

func TestPlain(t *testing.T) {
	for text, want := range map[string]string{
		"close it with }":   "close it with }}",
		"{0} of [a](b)":     "{{0}} of [a] (b)",
		"a\r\nb\x00\u202ec": "a  b\ufffd\ufffdc",
		"":                  "-",
		"[yield/few] (x)":   "[yield/few] (x)",
	} {
		if got := plain(text).Text; got != want {
			t.Errorf("plain(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestInvocation(t *testing.T) {
	finding := func(rule string, l diag.Level) []diag.Finding { return []diag.Finding{{Rule: rule, Level: l}} }
	tests := []struct {
		name     string
		findings []diag.Finding
		failOn   diag.Level
		finished bool
		status   string
	}{
		{"nothing asked", finding("yield/few", diag.Error), 0, true, "none"},
		{"clean", nil, diag.Error, true, "0"},
		{"below", finding("yield/few", diag.Warning), diag.Error, true, "0"},
		{"at", finding("yield/few", diag.Warning), diag.Warning, true, "1"},
		{"above", finding("yield/few", diag.Error), diag.Note, true, "1"},
		{"stopped", finding("run/missing", diag.Error), 0, false, "3"},
		{"stopped and failed", append(finding("run/missing", diag.Error), finding("yield/few", diag.Error)...), diag.Error, false, "3"},
		{"below another", []diag.Finding{{Rule: "yield/few", Level: diag.Error, Follows: finding("run/crash", diag.Error)}}, diag.Error, false, "3"},
	}
	for _, tt := range tests {
		b := &builder{}
		i := b.invocation(tt.findings, tt.failOn)
		status := "none"
		if i.ExitCode != nil {
			status = fmt.Sprint(*i.ExitCode)
		}
		if i.ExecutionSuccessful != tt.finished || status != tt.status {
			t.Errorf("%s: finished %v, status %s", tt.name, i.ExecutionSuccessful, status)
		}
	}
}
