package text

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

func written(t *testing.T, run *report.Run, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, run, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestWrite(t *testing.T) {
	golden.Check(t, "plain.txt", []byte(written(t, sample.Line(), Options{})))
	golden.Check(t, "narrow.txt", []byte(written(t, sample.Line(), Options{Width: 64})))
	golden.Check(t, "color.txt", []byte(written(t, sample.Line(), Options{Color: true})))
}

// Colour must add nothing but escape sequences, whatever the environment says.
func TestColorIsDecidedByTheCaller(t *testing.T) {
	t.Setenv("NO_COLOR", "1")
	colored := written(t, sample.Line(), Options{Color: true})
	if !strings.Contains(colored, "\x1b[") {
		t.Error("no escape sequence although the caller asked for colour")
	}
	var bare strings.Builder
	for i, part := range strings.Split(colored, "\x1b[") {
		if i > 0 {
			_, part, _ = strings.Cut(part, "m")
		}
		bare.WriteString(part)
	}
	if plain := written(t, sample.Line(), Options{}); bare.String() != plain {
		t.Errorf("without its escape sequences the text differs:\n%s\nwant\n%s", bare.String(), plain)
	}
}

// The first line of a finding is what editors and scripts look for.
func TestHeadIsOneUnwrappedLine(t *testing.T) {
	text := written(t, sample.Line(), Options{Width: 30})
	for _, f := range sample.Line().All() {
		want := f.Level.String() + ": " + f.Message + " [" + f.Rule + "]\n"
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on a line of its own", want)
		}
	}
}

// marked returns the part of the excerpt that stands above the marks, by
// terminal cells.
func marked(t *testing.T, text string, from, to int) string {
	t.Helper()
	var s strings.Builder
	cell := 0
	for _, r := range text {
		if cell >= from && cell < to {
			s.WriteRune(r)
		}
		cell += cellsOf(r)
	}
	return s.String()
}

func TestDrawMarksTheVeryValue(t *testing.T) {
	tests := []struct {
		name, line, value string
		room              int
		want              string // "" for the value itself
	}{
		{"plain", `  "width": "2 1/2",`, `"2 1/2"`, 0, ""},
		{"after tabs", "\t\t\"width\":\t\"2 1/2\",", `"2 1/2"`, 0, ""},
		{"a tab inside", "{\"a\tb\"}", "\"a\tb\"", 0, `"a b"`},
		{"after wide letters", `{"name": "港の帯", "width": "3"}`, `"3"`, 0, ""},
		{"wide letters", `{"name": "港の帯", "width": "3"}`, `港の帯`, 0, ""},
		{"after marks that combine", "{\"ne\u0301roli\": \"3\"}", `"3"`, 0, ""},
		{"at the end of a clipped line", strings.Repeat("x", 50) + `"3"`, `"3"`, 30, ""},
		{"in the middle of a clipped line", strings.Repeat("x", 25) + `"3"` + strings.Repeat("y", 25), `"3"`, 30, ""},
		{"at the start of a clipped line", `"3"` + strings.Repeat("y", 50), `"3"`, 30, ""},
		{"of a long line", strings.Repeat("z", 300) + `"3"` + strings.Repeat("y", 300), `"3"`, 0, ""},
	}
	for _, test := range tests {
		f := source.New("f", []byte(test.line))
		start := strings.Index(test.line, test.value)
		text, from, to := draw(f.Excerpt(source.Range{Start: start, End: start + len(test.value)}), test.room)
		want := test.want
		if want == "" {
			want = test.value
		}
		if got := marked(t, text, from, to); got != want {
			t.Errorf("%s: %q marks %q, want %q", test.name, text, got, want)
		}
		if test.room > 0 && cellsIn(text) > test.room {
			t.Errorf("%s: %d cells, room for %d", test.name, cellsIn(text), test.room)
		}
	}
}

func TestDrawMarksAMissingValue(t *testing.T) {
	f := source.New("f", []byte("{}"))
	_, from, to := draw(f.Excerpt(source.At(2)), 0)
	if from != 2 || to != 3 {
		t.Errorf("marks cells %d to %d, want 2 to 3", from, to)
	}
}

// The values of a plan are a stranger's text: they must not steer a terminal.
func TestNothingSteersTheTerminal(t *testing.T) {
	evil := "a\x1b[2Jb\r\nc\u202ed\x07"
	run := &report.Run{Findings: []diag.Finding{{
		Rule: "x/y", Level: diag.Error, Message: evil, Hint: evil,
		Place:   diag.Place{File: evil},
		Related: []diag.Related{{Message: evil, Place: diag.Place{File: evil}}},
		Follows: []diag.Finding{{Rule: "x/z", Message: evil}},
		Sizes:   []string{evil},
	}}}
	run.Excused = []report.Excused{{Finding: run.Findings[0], Reason: evil, Until: evil, Place: diag.Place{File: evil}}}
	text := written(t, run, Options{Verbose: true})
	if strings.ContainsAny(text, "\x1b\x07\r\u202e") {
		t.Errorf("%q", text)
	}
	if !strings.Contains(text, "a\ufffd[2Jb  c\ufffdd\ufffd") {
		t.Errorf("the message is not shown: %q", text)
	}
}

// What is accepted is shown with its reason to whoever asks, and only then.
func TestVerboseListsWhatIsAccepted(t *testing.T) {
	run := &report.Run{Plans: []report.Outcome{{File: "a.plan.json", Accepted: 1, Excused: []report.Excused{{
		Finding: diag.Finding{Rule: "yield/none", Level: diag.Warning, Place: diag.Place{File: "a.plan.json"}, Message: "no strip is over"},
		Reason:  "the next print run mends it", Until: "2027-03-31",
	}}}}}
	want := "accepted: a.plan.json: warning: no strip is over [yield/none]\n" +
		"  reason: the next print run mends it (until 2027-03-31)\n\n" +
		"1 plan: no findings, 1 accepted exception\n"
	if got := written(t, run, Options{Verbose: true}); got != want {
		t.Errorf("verbose:\n%s\nwant\n%s", got, want)
	}
	if got := written(t, run, Options{}); got != "1 plan: no findings, 1 accepted exception\n" {
		t.Errorf("else:\n%s", got)
	}
}

func TestSummary(t *testing.T) {
	plan := report.Outcome{File: "a", Sizes: []string{"cot", "bed"}}
	tests := []struct {
		run  report.Run
		want string
	}{
		{report.Run{}, "0 plans: no findings"},
		{report.Run{Plans: []report.Outcome{{Sizes: []string{"cot"}}}}, "1 plan, 1 size: no findings"},
		{report.Run{Plans: []report.Outcome{plan, plan, plan}}, "3 plans, 2 sizes each: no findings"},
		{report.Run{Plans: []report.Outcome{plan, {}}, Accepted: 2}, "2 plans, 2 sizes: no findings, 2 accepted exceptions"},
		{
			report.Run{Findings: []diag.Finding{{Level: diag.Warning}, {Level: diag.Warning, Message: "other"}}},
			"0 plans: 2 warnings; worst: warning",
		},
	}
	for _, test := range tests {
		text := strings.TrimSuffix(written(t, &test.run, Options{}), "\n")
		if got := text[strings.LastIndex(text, "\n")+1:]; got != test.want {
			t.Errorf("got %q, want %q", got, test.want)
		}
	}
}

func TestWrap(t *testing.T) {
	const sentence = "one two three 港港港 four-and-a-very-long-word five"
	lines := wrap(sentence, 14)
	if got := strings.Join(lines, " "); got != sentence {
		t.Errorf("words are lost: %q", got)
	}
	for _, line := range lines {
		if cellsIn(line) > 14 && strings.Contains(line, " ") {
			t.Errorf("%q has %d cells", line, cellsIn(line))
		}
	}
	want := []string{"one two three", "港港港", "four-and-a-very-long-word", "five"}
	if !slices.Equal(lines, want) {
		t.Errorf("got %q, want %q", lines, want)
	}
}

type broken struct{ after int }

var errBroken = errors.New("pipe closed")

func (b *broken) Write(p []byte) (int, error) {
	if b.after -= len(p); b.after < 0 {
		return 0, errBroken
	}
	return len(p), nil
}

func TestWriteReportsTheWritersError(t *testing.T) {
	run := sample.Line()
	run.Findings[0].Message = strings.Repeat("long ", 4000)
	for _, after := range []int{0, 5000} {
		if err := Write(&broken{after}, run, Options{}); !errors.Is(err, errBroken) {
			t.Errorf("after %d bytes: %v", after, err)
		}
	}
}

func FuzzDraw(f *testing.F) {
	f.Add(sample.Harbour, 60, 70, 40)
	f.Add("\t\t\"港\"", 2, 5, 10)
	f.Add("", 0, 0, 0)
	f.Fuzz(func(t *testing.T, text string, start, end, room int) {
		file := source.New("f", []byte(text))
		if room > 0 {
			room = max(narrowest, room%200)
		}
		drawn, from, to := draw(file.Excerpt(source.Range{Start: start, End: end}), room)
		if !utf8.ValidString(drawn) || strings.ContainsAny(drawn, "\n\t\x1b") {
			t.Errorf("not safe to print: %q", drawn)
		}
		if from < 0 || to <= from {
			t.Errorf("marks cells %d to %d", from, to)
		}
	})
}
