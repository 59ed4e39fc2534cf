package annotations

import (
	"bytes"
	"regexp"
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

func written(t *testing.T, r *report.Run) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestWrite(t *testing.T)     { golden.Check(t, "run.txt", []byte(written(t, sample.Line()))) }
func TestWriteEdge(t *testing.T) { golden.Check(t, "edge.txt", []byte(written(t, edge.Run()))) }
func TestWriteMany(t *testing.T) { golden.Check(t, "many.txt", []byte(written(t, edge.Many(14)))) }

// annotation is a command as a service reads it: the form and the escapes are
// those that services publish under "workflow commands".
type annotation struct {
	verb, message string
	properties    map[string]string
}

var form = regexp.MustCompile(`^::([a-z]+)(?: ([^:]*))?::(.*)$`)

func unescape(s string) string {
	return strings.NewReplacer("%0D", "\r", "%0A", "\n", "%3A", ":", "%2C", ",", "%25", "%").Replace(s)
}

func read(t *testing.T, text string) (commands []annotation, others []string) {
	t.Helper()
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		m := form.FindStringSubmatch(strings.TrimSpace(line))
		if m == nil {
			if strings.Contains(line, "##[") || strings.HasPrefix(strings.TrimSpace(line), "::") {
				t.Errorf("may be taken for a command: %s", line)
			}
			others = append(others, line)
			continue
		}
		a := annotation{verb: m[1], message: unescape(m[3]), properties: map[string]string{}}
		for p := range strings.SplitSeq(m[2], ",") {
			name, value, ok := strings.Cut(p, "=")
			if !ok || a.properties[name] != "" {
				t.Errorf("property %q of %s", p, line)
			}
			a.properties[name] = unescape(value)
		}
		commands = append(commands, a)
	}
	return commands, others
}

func TestEachFindingIsSaidOnce(t *testing.T) {
	for name, r := range map[string]*report.Run{"run": sample.Line(), "edge": edge.Run(), "empty": {}, "many": edge.Many(40)} {
		commands, others := read(t, written(t, r))
		byVerb, said := map[string]int{}, 0
		for _, c := range commands {
			byVerb[c.verb]++
			if c.properties["title"] != "yardproof" {
				said++
			}
		}
		for verb, n := range byVerb {
			if n > 10 {
				t.Errorf("%s: %d of %s, and only 10 are shown", name, n, verb)
			}
		}
		for _, line := range others {
			if strings.HasSuffix(line, "]") && !strings.HasPrefix(line, " ") && !strings.HasPrefix(line, "accepted: ") {
				said++
			}
		}
		if n := strings.Count(strings.Join(others, "\n"), "\n  reason: "); n != len(r.Exceptions()) {
			t.Errorf("%s: %d reasons are given, there are %d", name, n, len(r.Exceptions()))
		}
		if want := len(r.All()); said != want {
			t.Errorf("%s: %d findings are said, there are %d", name, said, want)
		}
		if last := others[len(others)-1]; last != "yardproof: "+words.Summary(r) {
			t.Errorf("%s ends with %q", name, last)
		}
	}
}

// Ten of a level are all commands; of eleven, one is told of.
func TestTheEleventh(t *testing.T) {
	for n, want := range map[int]string{
		9:  "",
		10: "and 1 note more, in the output of this step",
		11: "and 1 error, 1 warning, 2 notes more, in the output of this step",
	} {
		commands, _ := read(t, written(t, edge.Many(n)))
		got := ""
		for _, c := range commands {
			if c.properties["title"] == "yardproof" {
				got += c.message
			}
		}
		if got != want {
			t.Errorf("of %d: %q, want %q", n, got, want)
		}
	}
}

func TestCommand(t *testing.T) {
	at := func(l1, c1, l2, c2 int) diag.Place {
		return diag.Place{File: "a,b: 50%.plan.json", Start: source.Position{Line: l1, Column: c1}, End: source.Position{Line: l2, Column: c2}}
	}
	tests := []struct {
		name string
		f    diag.Finding
		want string
	}{
		{"one line", diag.Finding{Rule: "a/b", Level: diag.Error, Plan: "p", Place: at(4, 7, 4, 9), Message: "50% too short"},
			"::error file=a%2Cb%3A 50%25.plan.json,line=4,endLine=4,col=7,title=p%3A a/b::50%25 too short"},
		{"two lines", diag.Finding{Rule: "a/b", Level: diag.Warning, Place: at(4, 7, 5, 2), Message: "m", Hint: "h"},
			"::warning file=a%2Cb%3A 50%25.plan.json,line=4,endLine=5,title=a/b::m%0Ahint: h"},
		{"a file", diag.Finding{Rule: "a/b", Level: diag.Note, Place: diag.Place{File: "x"}, Message: "m"},
			"::notice file=x,title=a/b::m"},
		{"no file", diag.Finding{Rule: "run/interrupted", Level: diag.Error, Message: "m\r\n::error::n"},
			"::error title=run/interrupted::m  ::error::n"},
	}
	for _, tt := range tests {
		if got := command(tt.f); got != tt.want {
			t.Errorf("%s:\n%s, want\n%s", tt.name, got, tt.want)
		}
	}
}

func FuzzWrite(f *testing.F) {
	f.Add("a", "m", "h")
	f.Add("::error::", "##[x]\r\n::y", "%0A%")
	f.Fuzz(func(t *testing.T, file, message, hint string) {
		findings := []diag.Finding{}
		for i := range 12 { // the last two are plain lines
			findings = append(findings, diag.Finding{
				Rule: "a/b", Level: diag.Error, Message: message, Hint: hint,
				Place: diag.Place{File: file, Range: source.Range{Start: i}, Start: source.Position{Line: 1, Column: 1}, End: source.Position{Line: 1, Column: 1}},
			})
		}
		commands, _ := read(t, written(t, &report.Run{Findings: findings}))
		if len(commands) != 11 {
			t.Fatalf("%d commands", len(commands))
		}
		if file != "" && commands[0].properties["file"] != file {
			t.Errorf("the file %q comes back as %q", file, commands[0].properties["file"])
		}
	})
}
