package junit

import (
	"bytes"
	"encoding/xml"
	"io"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

func written(t *testing.T, r *report.Run) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func runs() map[string]*report.Run {
	return map[string]*report.Run{"run": sample.Line(), "edge": edge.Run(), "empty": {}, "many": edge.Many(30)}
}

func TestWrite(t *testing.T)     { golden.Check(t, "run.xml", written(t, sample.Line())) }
func TestWriteEdge(t *testing.T) { golden.Check(t, "edge.xml", written(t, edge.Run())) }

// node is any element, as a reader that knows nothing of the format sees it.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Nodes   []node     `xml:",any"`
	Text    string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// count is how many elements with a name there are at any depth.
func (n node) count(name string) int {
	total := 0
	for _, c := range n.Nodes {
		total += c.count(name)
		if c.XMLName.Local == name {
			total++
		}
	}
	return total
}

func decoded(t *testing.T, b []byte) node {
	t.Helper()
	var n node
	d := xml.NewDecoder(bytes.NewReader(b))
	d.Strict = true
	if err := d.Decode(&n); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Token(); err != nil && err != io.EOF {
		t.Fatal(err)
	}
	return n
}

func TestCountsAddUp(t *testing.T) {
	elements := map[string]string{"tests": "testcase", "failures": "failure", "errors": "error", "skipped": "skipped"}
	for name, r := range runs() {
		all := decoded(t, written(t, r))
		sums := map[string]int{}
		for _, s := range all.Nodes {
			for attr, element := range elements {
				counted := s.count(element)
				sums[attr] += counted
				if s.attr(attr) != strconv.Itoa(counted) {
					t.Errorf("%s, %s: %s=%q, %d are there", name, s.attr("name"), attr, s.attr(attr), counted)
				}
			}
			for _, c := range s.Nodes {
				if n := c.count("failure") + c.count("error") + c.count("skipped"); c.XMLName.Local == "testcase" && n > 1 {
					t.Errorf("%s: case %q has %d outcomes", name, c.attr("name"), n)
				}
			}
		}
		for _, attr := range []string{"tests", "failures", "errors"} {
			if all.attr(attr) != strconv.Itoa(sums[attr]) {
				t.Errorf("%s: %s=%q, %d are there", name, attr, all.attr(attr), sums[attr])
			}
		}
		sizes := 0
		for _, p := range r.Plans {
			sizes += 1 + len(p.Sizes)
		}
		if sums["tests"] != sizes+1 || len(all.Nodes) != len(r.Plans)+1 {
			t.Errorf("%s: %d cases in %d suites for %d plans with %d sizes", name, sums["tests"], len(all.Nodes), len(r.Plans), sizes-len(r.Plans))
		}
	}
}

// outcome is "suite/case: element" for each case that does not just pass.
func outcomes(all node) []string {
	var out []string
	for _, s := range all.Nodes {
		for _, c := range s.Nodes {
			for _, part := range c.Nodes {
				if c.XMLName.Local == "testcase" {
					out = append(out, s.attr("name")+"/"+c.attr("name")+": "+part.XMLName.Local)
				}
			}
		}
	}
	return out
}

func TestOutcomes(t *testing.T) {
	finding := func(rule string, l diag.Level, sizes ...string) diag.Finding {
		return diag.Finding{Rule: rule, Level: l, Sizes: sizes, Message: "m"}
	}
	tests := []struct {
		name string
		plan report.Outcome
		want string
	}{
		{"clean", report.Outcome{Sizes: []string{"cot"}}, ""},
		{"one size", report.Outcome{Sizes: []string{"cot", "wall"}, Findings: []diag.Finding{finding("a/b", diag.Error, "wall")}}, "x/wall: failure"},
		{"both sizes", report.Outcome{Sizes: []string{"cot", "wall"}, Findings: []diag.Finding{finding("a/b", diag.Error, "wall", "cot")}}, "x/cot: failure x/wall: failure"},
		{"the plan", report.Outcome{Sizes: []string{"cot"}, Findings: []diag.Finding{finding("a/b", diag.Error)}}, "x/the plan: failure"},
		{"an unknown size", report.Outcome{Sizes: []string{"cot"}, Findings: []diag.Finding{finding("a/b", diag.Error, "wall")}}, "x/the plan: failure"},
		{"a warning", report.Outcome{Sizes: []string{"cot"}, Findings: []diag.Finding{finding("a/b", diag.Warning, "cot")}}, "x/cot: system-out"},
		{"both", report.Outcome{Sizes: []string{"cot"}, Findings: []diag.Finding{finding("a/b", diag.Error, "cot"), finding("a/c", diag.Note, "cot")}}, "x/cot: failure x/cot: system-out"},
		{"not read", report.Outcome{Findings: []diag.Finding{finding("schema/json", diag.Error)}}, "x/the plan: error"},
		{"a crash", report.Outcome{Sizes: []string{"cot"}, Findings: []diag.Finding{finding("run/crash", diag.Error), finding("a/b", diag.Error)}}, "x/the plan: error"},
		{"waiting", report.Outcome{Sizes: []string{"cot"}, Waits: true}, "x/the plan: skipped x/cot: skipped"},
		{"waiting and wrong", report.Outcome{Sizes: []string{"cot"}, Waits: true, Findings: []diag.Finding{finding("a/b", diag.Error)}}, "x/the plan: failure x/cot: skipped"},
	}
	for _, tt := range tests {
		tt.plan.File = "x"
		got := strings.Join(outcomes(decoded(t, written(t, &report.Run{Plans: []report.Outcome{tt.plan}}))), " ")
		if got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Every message of every finding is somewhere in the document, and nothing in
// it is outside of what XML 1.0 (section 2.2) calls a character.
func TestNothingIsLost(t *testing.T) {
	for name, r := range runs() {
		b := written(t, r)
		if !utf8.Valid(b) {
			t.Errorf("%s is not UTF-8", name)
		}
		for _, c := range string(b) {
			legal := c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000
			if !legal {
				t.Errorf("%s has the character %U", name, c)
			}
		}
		text := allText(decoded(t, b))
		for _, f := range r.All() {
			if !strings.Contains(text, "["+f.Rule+"]") {
				t.Errorf("%s: %s is lost", name, f.Rule)
			}
		}
	}
	if text := allText(decoded(t, written(t, edge.Run()))); !strings.Contains(text, "<script>alert(1)</script> ]]> | ") {
		t.Error("text of a plan does not come back as it was")
	}
}

func allText(n node) string {
	s := n.Text
	for _, c := range n.Nodes {
		s += allText(c)
	}
	return s
}

func FuzzWrite(f *testing.F) {
	f.Add("a", "message", "throw")
	f.Add("]]>", "\x00\xff<&\r\n", "")
	f.Fuzz(func(t *testing.T, file, message, size string) {
		r := &report.Run{Plans: []report.Outcome{{
			File: file, ID: message, Title: size, Sizes: []string{size},
			Findings: []diag.Finding{{Rule: "a/b", Level: diag.Error, Sizes: []string{size}, Message: message, Hint: file}},
		}}}
		all := decoded(t, written(t, r))
		if all.count("failure") != 1 || all.attr("failures") != "1" {
			t.Errorf("%d failures, counted %s", all.count("failure"), all.attr("failures"))
		}
	})
}
