package junit

import (
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

type suites struct {
	XMLName  xml.Name `xml:"testsuites"`
	Name     string   `xml:"name,attr"`
	Tests    int      `xml:"tests,attr"`
	Failures int      `xml:"failures,attr"`
	Errors   int      `xml:"errors,attr"`
	Suites   []suite  `xml:"testsuite"`
}

type suite struct {
	Name       string     `xml:"name,attr"`
	Tests      int        `xml:"tests,attr"`
	Failures   int        `xml:"failures,attr"`
	Errors     int        `xml:"errors,attr"`
	Skipped    int        `xml:"skipped,attr"`
	Properties []property `xml:"properties>property"`
	Cases      []testcase `xml:"testcase"`
}

type property struct {
	Name  string `xml:"name,attr"`
	Value string `xml:"value,attr"`
}

// testcase has its parts in the order that the schemas ask for.
type testcase struct {
	Name      string  `xml:"name,attr"`
	ClassName string  `xml:"classname,attr"`
	Skipped   string  `xml:"skipped,omitempty"`
	Error     *defect `xml:"error"`
	Failure   *defect `xml:"failure"`
	Output    *text   `xml:"system-out"`
}

type defect struct {
	Message string `xml:"message,attr"`
	Type    string `xml:"type,attr"`
	Text    string `xml:",cdata"`
}

type text struct {
	Text string `xml:",cdata"`
}

// Write writes the whole run, plans in file order and the line last. An error
// is one of w.
func Write(w io.Writer, run *report.Run) error {
	all := suites{Name: "yardproof"}
	for _, p := range run.Plans {
		all.add(ofPlan(p))
	}
	all.add(ofLine(run))
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	encoder := xml.NewEncoder(w)
	encoder.Indent("", "  ")
	if err := encoder.Encode(all); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

func (all *suites) add(s suite) {
	s.count()
	all.Tests += s.Tests
	all.Failures += s.Failures
	all.Errors += s.Errors
	all.Suites = append(all.Suites, s)
}

func (s *suite) count() {
	s.Tests = len(s.Cases)
	for _, c := range s.Cases {
		switch {
		case c.Error != nil:
			s.Errors++
		case c.Failure != nil:
			s.Failures++
		case c.Skipped != "":
			s.Skipped++
		}
	}
}

func ofPlan(p report.Outcome) suite {
	s := suite{Name: words.OneLine(p.File), Properties: properties(p)}
	class := words.OneLine(p.ID)
	if class == "" {
		class = s.Name
	}
	for _, c := range sortOut(p) {
		s.Cases = append(s.Cases, c.write(class, p.Waits))
	}
	s.Cases[0].accept(p.Excused)
	return s
}

func properties(p report.Outcome) []property {
	var all []property
	for _, one := range []property{
		{"id", p.ID}, {"title", p.Title}, {"status", p.Status}, {"accepted", strconv.Itoa(p.Accepted)},
	} {
		if one.Value = words.OneLine(one.Value); one.Value != "" {
			all = append(all, one)
		}
	}
	return all
}

func ofLine(run *report.Run) suite {
	c := group{name: "line", findings: diag.Sort(append([]diag.Finding{}, run.Findings...))}
	s := suite{
		Name:       "line",
		Properties: []property{{"accepted", strconv.Itoa(run.Accepted)}},
		Cases:      []testcase{c.write("line", false)},
	}
	if b := run.Baseline; b != nil {
		s.Properties = append(s.Properties,
			property{"recorded", strconv.Itoa(b.Recorded)}, property{"old", strconv.Itoa(len(b.Old))},
			property{"gone", strconv.Itoa(b.Gone)}, property{"unseen", strconv.Itoa(b.Unseen)})
		if b.Since != "" {
			s.Properties = append(s.Properties,
				property{"since", words.OneLine(b.Since)}, property{"same", strconv.Itoa(b.Same)}, property{"unjudged", strconv.Itoa(b.Unjudged)})
		}
	}
	s.Cases[0].accept(run.Excused)
	return s
}

// accept adds what the project accepts, and why, to the case's output.
func (c *testcase) accept(excused []report.Excused) {
	for _, e := range excused {
		if c.Output == nil {
			c.Output = &text{"\n"}
		}
		head, reason := words.Excused(e)
		c.Output.Text += "accepted: " + head + "\n  reason: " + reason + "\n"
	}
}

// write makes a case of a group of findings.
func (g group) write(class string, waits bool) testcase {
	c := testcase{Name: words.OneLine(g.name), ClassName: class}
	var bad, rest []diag.Finding
	for _, f := range g.findings {
		if f.Level == diag.Error || words.Stopped([]diag.Finding{f}) {
			bad = append(bad, f)
		} else {
			rest = append(rest, f)
		}
	}
	switch {
	case len(bad) > 0 && (g.unread || words.Stopped(bad)):
		c.Error = newDefect(bad)
	case len(bad) > 0:
		c.Failure = newDefect(bad)
	case waits:
		c.Skipped = "not judged: its project file cannot be used"
	}
	if len(rest) > 0 {
		c.Output = &text{lines(rest)}
	}
	return c
}

func newDefect(findings []diag.Finding) *defect {
	message := words.OneLine(findings[0].Message)
	if n := len(findings) - 1; n > 0 {
		message += fmt.Sprintf(" (and %d more)", n)
	}
	return &defect{Message: message, Type: words.OneLine(findings[0].Rule), Text: lines(findings)}
}

// lines are the findings as a compiler would print them.
func lines(findings []diag.Finding) string {
	var s strings.Builder
	for _, f := range findings {
		s.WriteString("\n" + words.Head(f))
		for _, more := range words.Rest(f) {
			s.WriteString("\n  " + more)
		}
	}
	s.WriteString("\n")
	return s.String()
}
