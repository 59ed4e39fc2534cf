package derive_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/scripts/crossing/crossed"
)

// TestRoomsAnswer holds what the room of each operation answers of its sample against
// testdata/answers.golden: sizes, cuts and trims, what it takes and gives, how it is
// sewn, and how much of its fabrics shows. A room that forgets a question, or answers
// it otherwise than it did, shows there.
func TestRoomsAnswer(t *testing.T) {
	var got strings.Builder
	for _, p := range crossed.Plans() {
		if p.Place != "rows" { // asks for it as it is, turned, and as a mirror image
			continue
		}
		s := derived(t, p.Text)["one"]
		fmt.Fprintf(&got, "%s\n%s\n", p.Operation, answers(s, s.Part("x")))
	}
	golden(t, "testdata/answers.golden", got.String())
}

// golden compares with what is recorded, or records it. The flag is the one of the tests
// inside the package.
func golden(t *testing.T, recorded, got string) {
	t.Helper()
	if flag.Lookup("update").Value.String() == "true" {
		if err := os.WriteFile(recorded, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(recorded)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is another; -update records it anew:\n%s", recorded, got)
	}
}

// answers is a line for each question that the room has an answer to.
func answers(s *derive.Size, p *derive.Part) string {
	var b strings.Builder
	tell := func(what, format string, args ...any) {
		fmt.Fprintf(&b, "  %s: %s\n", what, fmt.Sprintf(format, args...))
	}
	in := measure.In
	if p.Known {
		tell("measures", "%s x %s", p.Width.Format(in), p.Height.Format(in))
	}
	tell("needed and made", "%d, %d, %d of them mirror images", p.Needed, p.Made, p.Mirrored)
	for _, f := range s.Fabrics {
		for _, n := range f.Needs {
			if n.For.Text == "x" {
				tell("asks for", "%d of %s x %s of %s, %s", n.Count, n.Across.Format(in), n.Along.Format(in), f.Role.Text, n.Halving)
			}
		}
	}
	for _, c := range s.Parts {
		for _, call := range c.Calls {
			if call.By == p {
				tell("asks for", "%d of part %s", call.N, c.Name.Text)
			}
		}
	}
	if l, ok := p.Room.Seams(); ok && l.Sign() > 0 {
		tell("seams", "%s", l.Format(in))
	}
	for _, r := range p.Room.OnRuler() {
		if r.Length.Length > 0 {
			tell("on a ruler", "%s %s", r.What, r.Length.Length.Format(in))
		}
	}
	for _, c := range p.Room.Seamed() {
		if c.Width > 0 {
			tell("seams take", "%s of %s, %s wide", c.Seams.Format(in), c.What, c.Width.Format(in))
		}
	}
	for _, c := range p.Room.Trims() {
		if c.To.Given() {
			tell("trimmed", "from %s to %s", c.From.Format(in), c.To.Length.Format(in))
		}
	}
	if g := p.Room.Gives(); g != nil {
		tell("gives", "%s from a %s, %d each", g.Each, g.From, p.Yield().Each)
	}
	for _, w := range p.Room.Wants() {
		tell("takes", "%s, which has to be kind %d, for %s", w.Part.Text, w.To, w.By)
	}
	if p.Known {
		if how := p.Room.How().In(in); how != "" {
			tell("sewn", "%s", how)
		}
	}
	more(s, p, tell)
	drafted(s, p, tell)
	return b.String()
}

// more is what only some rooms answer.
func more(s *derive.Size, p *derive.Part, tell func(string, string, ...any)) {
	sentences := func(what string, of []say.Sentence) {
		for _, one := range of {
			tell(what, "%s", one.In(measure.In))
		}
	}
	if r, ok := p.Room.(derive.Noted); ok && p.Known {
		sentences("note", r.Notes())
	}
	if r, ok := p.Room.(derive.Fitted); ok && p.Known {
		sentences("fit", r.Fit())
	}
	if r, ok := p.Room.(derive.Faulty); ok {
		for _, f := range r.Faults() {
			tell("fault", "%s: %s", f.Kind, f.Message.In(measure.In))
		}
	}
	if r, ok := p.Room.(derive.Stripwise); ok {
		if st := r.Striping(); st.Needed > 0 {
			tell("strips", "%d in groups of %d, %s", st.Needed, st.Group, st.Takes.In(measure.In))
		}
	}
	if r, ok := p.Room.(derive.Striped); ok {
		tell("strips said", "%d", len(r.Strips()))
	}
	if r, ok := p.Room.(derive.Angled); ok && r.Degrees() > 0 {
		tell("angle", "%d", r.Degrees())
	}
	if r, ok := p.Room.(derive.Seating); ok {
		tell("places", "%d", len(r.Places()))
	}
	if r, ok := p.Room.(derive.Resized); ok {
		tell("cut for 6 in", "%s", r.CutFor((6 * measure.Inch).Surd()).Format(measure.In))
	}
	if tr := p.Room.Traits(); tr != (derive.Traits{}) {
		tell("traits", "%+v", tr)
	}
}

// drafted is how much of each fabric shows of one that is sewn in; its patches have to
// close.
func drafted(s *derive.Size, p *derive.Part, tell func(string, string, ...any)) {
	w, ok := drafting.Of(s).Part("x")
	if !ok {
		return
	}
	if w, ok = w.Finished(p.Seam.Allowance.Length); !ok {
		return
	}
	areas := map[int]measure.Surd{}
	for _, patch := range w.Patches {
		areas[patch.Fabric] = areas[patch.Fabric].Add(patch.Outline.Area())
	}
	for i, f := range s.Fabrics {
		if a, shows := areas[i]; shows {
			tell("shows", "%s of %s", measure.FormatArea(a, measure.In), f.Role.Text)
		}
	}
	if !w.Closed() {
		tell("drafted", "with gaps")
	}
}
