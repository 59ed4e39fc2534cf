package baseline

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

func fault(level diag.Level, rule, plan, pointer string, at int, sizes ...string) diag.Finding {
	return diag.Finding{
		Rule: rule, Level: level, Plan: plan, Sizes: sizes, Message: fmt.Sprintf("about byte %d", at),
		Place: diag.Place{File: plan + ".plan.json", Pointer: pointer, Range: source.Range{Start: at, End: at + 1}},
	}
}

func outcome(id string, findings ...diag.Finding) report.Outcome {
	return report.Outcome{File: id + ".plan.json", ID: id, Title: id, Findings: diag.Sort(findings)}
}

func line() *report.Run {
	return &report.Run{
		Findings: []diag.Finding{{Rule: "cost/price-list", Level: diag.Error, Place: diag.Place{File: "prices.csv"}, Message: "row 3"}},
		Plans: []report.Outcome{
			outcome("a", fault(diag.Error, "yield/none", "a", "/parts/x", 10, "throw"), fault(diag.Note, "fabric/generous", "a", "/fabrics", 20)),
			outcome("b", fault(diag.Warning, "yield/none", "b", "/parts/x", 10), fault(diag.Warning, "yield/none", "b", "/parts/x", 30)),
		},
	}
}

func recordOf(t *testing.T, run *report.Run) Record {
	t.Helper()
	r, findings := Parse("known.json", Encode(run))
	if len(findings) > 0 {
		t.Fatalf("what is written cannot be read: %v", findings)
	}
	if of := Of(run); !reflect.DeepEqual(of, r) {
		t.Errorf("the record of a run is %v, and what is read of it %v", of, r)
	}
	return r
}

func counts(b *report.Baseline) [4]int { return [4]int{b.Recorded, len(b.Old), b.Gone, b.Unseen} }

func TestAgainstItself(t *testing.T) {
	r, run := recordOf(t, line()), line()
	all := run.All()
	r.Compare(run)
	if len(run.All()) != 0 || counts(run.Baseline) != [4]int{5, 5, 0, 0} {
		t.Errorf("new: %v, counts %v", run.All(), counts(run.Baseline))
	}
	if !reflect.DeepEqual(run.Baseline.Old, all) {
		t.Error("the old findings are others than those there were")
	}
	if !bytes.Equal(Encode(run), Encode(line())) {
		t.Error("a record of a compared run differs from that of the run")
	}
}

// Each change of a run, and what then is new, and what gone.
func TestCompare(t *testing.T) {
	cases := []struct {
		name   string
		change func(*report.Run)
		fresh  []string
		want   [4]int
	}{
		{"moved", func(r *report.Run) { r.Plans[0].Findings[0].Place.Range.Start = 900 }, nil, [4]int{5, 5, 0, 0}},
		{"graver", func(r *report.Run) { r.Plans[0].Findings[1].Level = diag.Warning }, []string{"fabric/generous"}, [4]int{5, 4, 0, 0}},
		{"milder", func(r *report.Run) { r.Plans[0].Findings[0].Level = diag.Warning }, nil, [4]int{5, 5, 0, 0}},
		{"mended", func(r *report.Run) { r.Plans[0].Findings = r.Plans[0].Findings[1:] }, nil, [4]int{5, 4, 1, 0}},
		{"one of two mended", func(r *report.Run) { r.Plans[1].Findings = r.Plans[1].Findings[1:] }, nil, [4]int{5, 4, 1, 0}},
		{"a third", func(r *report.Run) {
			r.Plans[1].Findings = append(r.Plans[1].Findings, fault(diag.Warning, "yield/none", "b", "/parts/x", 50))
		}, []string{"yield/none"}, [4]int{5, 5, 0, 0}},
		{"another size", func(r *report.Run) { r.Plans[0].Findings[0].Sizes = []string{"wall"} }, []string{"yield/none"}, [4]int{5, 4, 1, 0}},
		{"not looked at", func(r *report.Run) { r.Plans = r.Plans[:1] }, nil, [4]int{5, 3, 0, 2}},
		{"not decoded", func(r *report.Run) { r.Plans[1].Findings, r.Plans[1].Title = nil, "" }, nil, [4]int{5, 3, 0, 2}},
		{"waiting", func(r *report.Run) { r.Plans[1].Findings, r.Plans[1].Waits = nil, true }, nil, [4]int{5, 3, 0, 2}},
		{"of the line", func(r *report.Run) { r.Findings = nil }, nil, [4]int{5, 4, 1, 0}},
	}
	for _, c := range cases {
		run := line()
		c.change(run)
		recordOf(t, line()).Compare(run)
		var fresh []string
		for _, f := range run.All() {
			fresh = append(fresh, f.Rule)
		}
		if !slices.Equal(fresh, c.fresh) || counts(run.Baseline) != c.want {
			t.Errorf("%s: new %v, counts %v; wanted %v, %v", c.name, fresh, counts(run.Baseline), c.fresh, c.want)
		}
	}
}

// Yardproof's own troubles are never recorded and never old, not even when
// somebody wrote them into the file, or when they follow from something else.
func TestTroublesAreNeverOld(t *testing.T) {
	crash := fault(diag.Error, "run/crash", "a", "", 0)
	above := fault(diag.Error, "yield/none", "b", "", 0)
	above.Follows = []diag.Finding{crash}
	run := &report.Run{Plans: []report.Outcome{outcome("a", crash), outcome("b", above)}}
	if Complete(run) || !Complete(line()) {
		t.Error("a run with a crash is complete, or one without is not")
	}
	if text := string(Encode(run)); strings.Contains(text, "run/crash") || strings.Contains(text, "yield/none") {
		t.Errorf("recorded: %s", text)
	}
	r, findings := Parse("known.json", []byte(`{ "format": 1, "findings": [
		{ "rule": "run/crash", "plan": "a", "level": "error" }, { "rule": "yield/none", "plan": "b", "level": "error" } ] }`))
	if r.Compare(run); len(findings) > 0 || len(run.All()) != 2 || len(run.Baseline.Old) != 0 {
		t.Errorf("%v are left of two troubles; %v", run.All(), findings)
	}
}

// The file is sorted by what the findings are about and not by where, so that
// a moved line changes nothing in it but the message.
func TestEncodeIsSorted(t *testing.T) {
	var d document
	if err := json.Unmarshal(Encode(line()), &d); err != nil {
		t.Fatal(err)
	}
	if d.Format != 1 || len(d.Findings) != 5 || !slices.IsSortedFunc(d.Findings, entry.compare) {
		t.Errorf("%+v", d)
	}
	if n := d.Findings[len(d.Findings)-1].Number; n != 2 {
		t.Errorf("the second of two has number %d", n)
	}
}

func TestParseRefuses(t *testing.T) {
	for text, rule := range map[string]string{
		"":                                       "schema/empty-file",
		"[]":                                     "schema/wrong-type",
		`{ "format": 2, "findings": [] }`:        "schema/not-allowed",
		`{ "format": 1, "findings": [ {} ] }`:    "schema/missing",
		`{ "format": 1, "findings": [], "a": 1}`: "schema/unknown-key",
	} {
		r, findings := Parse("known.json", []byte(text))
		if len(findings) == 0 || findings[0].Rule != rule || findings[0].Place.File != "known.json" || len(r.known) > 0 {
			t.Errorf("%q: %v", text, findings)
		}
	}
}

// What follows from an old finding and was not recorded is told by itself, and so
// is what has become graver; what was recorded so is old, whether it follows from
// another or stands alone since that was mended.
func TestNewBelowAnOldOne(t *testing.T) {
	below := func(level diag.Level, pointer string) diag.Finding {
		return fault(level, "fabric/impossible", "a", pointer, 40)
	}
	with := func(follows ...diag.Finding) *report.Run {
		run := line()
		run.Plans[0].Findings[0].Follows = follows
		return run
	}
	record := recordOf(t, with(below(diag.Warning, "/printed/throw/fabric/red")))
	for _, c := range []struct {
		name  string
		run   *report.Run
		fresh []string
		want  [4]int
	}{
		{"the same", with(below(diag.Warning, "/printed/throw/fabric/red")), nil, [4]int{5, 5, 0, 0}},
		{"another", with(below(diag.Warning, "/printed/throw/fabric/red"), below(diag.Error, "/printed/throw/fabric/cream")), []string{"/printed/throw/fabric/cream"}, [4]int{5, 5, 0, 0}},
		{"graver", with(below(diag.Error, "/printed/throw/fabric/red")), []string{"/printed/throw/fabric/red"}, [4]int{5, 5, 0, 0}},
		{"none", with(), nil, [4]int{5, 5, 0, 0}},
	} {
		record.Compare(c.run)
		var fresh []string
		for _, f := range c.run.All() {
			fresh = append(fresh, f.Place.Pointer)
		}
		if !slices.Equal(fresh, c.fresh) || counts(c.run.Baseline) != c.want {
			t.Errorf("%s: new at %q, counts %v; want %q, %v", c.name, fresh, counts(c.run.Baseline), c.fresh, c.want)
		}
	}
	// The cause is mended, and what followed from it stands alone.
	run := line()
	run.Plans[0].Findings[0] = below(diag.Warning, "/printed/throw/fabric/red")
	record.Compare(run)
	if len(run.All()) != 0 || counts(run.Baseline) != [4]int{5, 5, 1, 0} {
		t.Errorf("new: %v, counts %v", run.All(), counts(run.Baseline))
	}
}
