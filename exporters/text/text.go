package text

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Options say what the text is written to.
type Options struct {
	Color bool // escape sequences for colours are understood
	Width int  // columns of the terminal; 0 leaves lines as long as they are

	// Verbose also lists what the projects accept, and why, and what every number of
	// a text was taken for.
	Verbose bool
	// Only leaves out the findings for which it is false; the closing line
	// counts them all the same. Nil leaves out none.
	Only func(diag.Finding) bool
	// Gone are findings of an earlier run that are no more, told first.
	Gone []diag.Finding
}

// Write prints every finding of the run in the one order and closes with a
// line that counts them. An error is one of w.
func Write(w io.Writer, run *report.Run, o Options) error {
	p := printer{out: bufio.NewWriter(w), palette: newPalette(o.Color), width: o.Width, sizes: map[string]int{}}
	for _, plan := range run.Plans {
		p.sizes[plan.File] = len(plan.Sizes)
	}
	p.gone(o.Gone)
	findings := run.All()
	for _, f := range findings {
		if o.Only != nil && !o.Only(f) {
			continue
		}
		p.finding(f)
		p.line("")
	}
	if o.Verbose {
		p.accepted(run.Exceptions())
		p.numbers(run.Text)
	}
	p.line(p.summary(run, findings))
	return p.out.Flush()
}

// printer keeps no error of its own: the bufio.Writer gives the first one to
// Flush.
type printer struct {
	out     *bufio.Writer
	palette palette
	width   int
	sizes   map[string]int // of the plan in a file, how many
}

// indent is what stands before everything but a finding's first line.
const indent = "  "

func (p *printer) line(text string) {
	p.out.WriteString(text)
	p.out.WriteByte('\n')
}

func (p *printer) finding(f diag.Finding) {
	p.line(p.head(f))
	p.excerpt(f.Place.Excerpt, "^", p.palette.level(f.Level))
	if f.Hint != "" {
		p.labelled("hint:", f.Hint)
	}
	if sizes := p.holdsFor(f); sizes != "" {
		p.labelled("holds for:", sizes)
	}
	for _, r := range f.Related {
		p.related(r)
	}
	for _, c := range diag.Flatten(f.Follows) {
		p.labelled("may follow:", consequence(f, c))
	}
}

// accepted lists findings that the projects accept.
func (p *printer) accepted(all []report.Excused) {
	for _, e := range all {
		p.line(p.palette.quiet.Sprint("accepted:") + " " + p.head(e.Finding))
		reason := e.Reason
		if e.Until != "" {
			reason += " (until " + e.Until + ")"
		}
		p.labelled("reason:", reason)
		p.line("")
	}
}

// numbers lists what every number of a text was taken for.
func (p *printer) numbers(r *report.Reading) {
	if r == nil {
		return
	}
	for _, s := range r.Numbers {
		p.line(p.palette.place.Sprint(words.Where(s.Place)+":") + " " + words.OneLine(words.Stated(s)))
	}
	if len(r.Numbers) > 0 {
		p.line("")
	}
}

// gone tells of findings that are no more, a line each. Where they stood may
// be another place by now, so only the file is named.
func (p *printer) gone(findings []diag.Finding) {
	for _, f := range findings {
		at := ""
		if f.Place.File != "" {
			at = p.palette.place.Sprint(words.Name(f.Place.File)+":") + " "
		}
		p.line(p.palette.good.Sprint("gone:") + " " + at + words.OneLine(f.Message) + " " + p.palette.quiet.Sprint("["+words.OneLine(f.Rule)+"]"))
	}
	if len(findings) > 0 {
		p.line("")
	}
}

// head is the line that other programs read.
func (p *printer) head(f diag.Finding) string {
	var s strings.Builder
	if at := words.Where(f.Place); at != "" {
		s.WriteString(p.palette.place.Sprint(at+":") + " ")
	}
	s.WriteString(p.palette.level(f.Level).Sprint(f.Level.String() + ":"))
	s.WriteString(" " + words.OneLine(f.Message))
	s.WriteString(" " + p.palette.quiet.Sprint("["+words.OneLine(f.Rule)+"]"))
	return s.String()
}

func lineColumn(at diag.Place) string {
	return strconv.Itoa(at.Start.Line) + ":" + strconv.Itoa(at.Start.Column)
}

// holdsFor names the sizes of a finding, unless they are all that the plan has.
func (p *printer) holdsFor(f diag.Finding) string {
	all := p.sizes[f.Place.File]
	if len(f.Sizes) == 0 || len(f.Sizes) == all {
		return ""
	}
	names := words.OneLine(strings.Join(f.Sizes, ", "))
	if all < len(f.Sizes) {
		return names
	}
	return fmt.Sprintf("%s (%d of %d sizes)", names, len(f.Sizes), all)
}

func (p *printer) related(r diag.Related) {
	p.labelled("see:", words.Where(r.Place)+": "+r.Message)
	p.excerpt(r.Place.Excerpt, "~", p.palette.quiet)
}

// consequence is a finding that goes away with its cause, in one line. Its
// file is named only when it is another one.
func consequence(cause, f diag.Finding) string {
	at := words.Where(f.Place)
	if f.Place.File == cause.Place.File && f.Place.Start.Line > 0 {
		at = "at " + lineColumn(f.Place)
	}
	sizes := ""
	if len(f.Sizes) > 0 && !slices.Equal(f.Sizes, cause.Sizes) {
		sizes = " (" + strings.Join(f.Sizes, ", ") + ")"
	}
	prefix := ""
	if at != "" {
		prefix = at + ": "
	}
	return prefix + f.Message + sizes + " [" + f.Rule + "]"
}

// labelled prints a sentence behind its label, wrapped below itself.
func (p *printer) labelled(label, sentence string) {
	lines := wrap(words.OneLine(sentence), p.room(len(indent)+len(label)+1))
	for i, text := range lines {
		if i == 0 {
			p.line(indent + p.palette.quiet.Sprint(label) + " " + text)
		} else {
			p.line(indent + strings.Repeat(" ", len(label)+1) + text)
		}
	}
}

// narrowest is the least room that wrapping makes sense for; a terminal that
// is narrower still breaks the lines itself.
const narrowest = 24

// room is how many columns are left beside taken ones, 0 for any number.
func (p *printer) room(taken int) int {
	if p.width <= 0 {
		return 0
	}
	return max(narrowest, p.width-taken)
}

// summary counts what was looked at and what was found.
func (p *printer) summary(run *report.Run, findings []diag.Finding) string {
	age := words.Age(run)
	tally := words.Count(findings)
	var counts []string
	for _, level := range words.Levels() {
		if n := tally.Of(level); n > 0 {
			counts = append(counts, p.palette.level(level).Sprint(words.Plural(n, age+level.String())))
		}
	}
	if len(counts) == 0 {
		counts = append(counts, p.palette.good.Sprint("no "+age+"findings"))
	}
	if tally.Follow > 0 {
		counts = append(counts, fmt.Sprintf("%d more that may follow", tally.Follow))
	}
	if n := words.Accepted(run); n > 0 {
		counts = append(counts, words.Plural(n, "accepted exception"))
	}
	worst := ""
	if level := diag.Worst(findings); level > 0 {
		worst = "; worst: " + p.palette.level(level).Sprint(level)
	}
	return scope(run.Plans) + ": " + strings.Join(counts, ", ") + worst + words.Against(run.Baseline) + words.Numbers(run.Text)
}

// scope is how many plans and sizes were looked at: "3 plans, 2 sizes each".
func scope(plans []report.Outcome) string {
	total, each := 0, true
	for _, plan := range plans {
		total += len(plan.Sizes)
		each = each && len(plan.Sizes) == len(plans[0].Sizes)
	}
	text := words.Plural(len(plans), "plan")
	switch {
	case len(plans) > 1 && each && total > 0:
		return text + ", " + words.Plural(len(plans[0].Sizes), "size") + " each"
	case total > 0:
		return text + ", " + words.Plural(total, "size")
	}
	return text
}
