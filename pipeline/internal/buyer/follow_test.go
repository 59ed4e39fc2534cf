package buyer_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"yardproof/pipeline/internal/buyer"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// derived takes a plan's text the whole way and derives its one size.
func derived(t *testing.T, text string) *derive.Size {
	t.Helper()
	file := source.New("test.plan.json", []byte(text))
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if len(problems) == 0 {
		problems = schema.Plan(tree)
	}
	if len(problems) > 0 {
		t.Fatalf("%v in %s", problems, text)
	}
	p, problems := plan.Decode(file, tree, plan.Merge(tree), nil)
	if len(problems) > 0 {
		t.Fatalf("%v in %s", problems, text)
	}
	return derive.Of(p, &p.Sizes[0])
}

// figures are printed counts by the member they stand under and their name;
// what is missing is not printed.
type figures map[string]map[string]any

func (f figures) set(under, name string, value any) {
	if f[under] == nil {
		f[under] = map[string]any{}
	}
	f[under][name] = value
}

// text writes the figures as a plan does.
func (f figures) text() string {
	var members []string
	for _, under := range []string{"strips", "sets", "tubes", "per_tube", "per_set", "parts", "left", "precuts", "fabric", "borders"} {
		var inner []string
		for _, name := range []string{"frame", "binding", "bar", "trio", "step", "square", "roll", "edge", "back"} {
			if v, ok := f[under][name]; ok {
				inner = append(inner, fmt.Sprintf("%q: %v", name, v))
			}
		}
		if len(inner) > 0 {
			members = append(members, fmt.Sprintf("%q: {%s}", under, strings.Join(inner, ", ")))
		}
	}
	return "{" + strings.Join(members, ", ") + "}"
}

// maybe prints a count for two things out of three: from least up to a few more.
func maybe(r *rand.Rand, f figures, under, name string, least, more int) (n int, printed bool) {
	if r.IntN(3) == 0 {
		return 0, false
	}
	n = least + r.IntN(more+1)*r.IntN(2)
	f.set(under, name, n)
	return n, true
}

func head(id, fabrics string) string {
	return fmt.Sprintf(`{"format": 1, "id": %q, "title": "Test", "status": "testing", "skill": "beginner", "use": "table", "units": "in",
	"cautions": ["rotary-cutter", "iron"], "seam": {"allowance": "1/4", "stitch": "301"}, "sizes": {"small": {}}, "fabrics": {%s}`, id, fabrics)
}

// verdict is where she stops: of what there is too little, "" where she does not,
// at the cutting table and at the machine.
type verdict struct{ table, machine string }

var shorts = map[buyer.Short]string{
	buyer.Cloth: "cloth", buyer.Packs: "packs", buyer.Strips: "strips", buyer.Sets: "sets", buyer.Pieces: "pieces", buyer.Length: "length",
}

func judged(t *testing.T, text string, stops []buyer.Stop) verdict {
	t.Helper()
	var v verdict
	for _, s := range stops {
		to := &v.machine
		if s.Short == buyer.Cloth || s.Short == buyer.Packs {
			to = &v.table
		}
		if *to != "" {
			t.Errorf("two stops, %s and %s, of\n%s", *to, shorts[s.Short], text)
		}
		*to = shorts[s.Short]
		if !s.Figure.Printed() || !s.Limit.Printed() || s.Figure.At == s.Limit.At {
			t.Errorf("a stop names no figure and no limit: %+v\n%s", s, text)
		}
	}
	return v
}

// Tubes of two sets each, or of more joined end to end, followed by cutting strips and sewing sets and tubes
// one at a time.
func TestTubesAreFollowedOneByOne(t *testing.T) {
	seen := map[verdict]int{}
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 1))
		each, side := 2+r.IntN(2), 1+r.IntN(3)
		rows, columns, into := 1+r.IntN(4*side), 1+r.IntN(5), 2*side // sets a tube: so many are joined end to end into either side
		pack := 6 + r.IntN(30)
		const shape = `,
	"parts": {"trio": {"strip_set": {"strips": [%s]}}, "step": {"tube": {"sets": ["trio", "trio"], "joined": %d, "ends": "corners only"}}},
	"layout": {"grid": {"rows": %d, "columns": %d, "blocks": [["step"]]}}, "printed": {"small": %s}}`
		fabrics := fmt.Sprintf(`"roll": {"precut": {"piece": ["2 1/2", "42"], "usable": ["2 1/2", "41 1/2"], "count": %d}}`, pack)
		of := func(f figures) string {
			return head("tubes", fabrics) + fmt.Sprintf(shape, strings.TrimSuffix(strings.Repeat(`"roll", `, each), ", "), side, rows, columns, f.text())
		}
		recipe := derived(t, of(nil)).Part("step")
		needTubes, yield, need := int(recipe.Tube.Count), int(recipe.Tube.Yield.Each), rows*columns

		f := figures{}
		q, qSaid := yield, false
		if r.IntN(3) == 0 {
			q, qSaid = yield-r.IntN(2)*side*side, true
			q = max(1, q)
			f.set("per_tube", "step", q)
		}
		if r.IntN(3) == 0 {
			f.set("parts", "step", need)
		}
		tubes, tubesSaid := maybe(r, f, "tubes", "step", needTubes, 2)
		sets, setsSaid := maybe(r, f, "sets", "trio", into*needTubes, 4)
		strips, stripsSaid := maybe(r, f, "strips", "trio", into*needTubes*each, 8)
		packs := (into*needTubes*each + pack - 1) / pack
		f.set("precuts", "roll", packs)
		left := -1
		if r.IntN(3) == 0 {
			left = packs*pack - into*needTubes*each
			f.set("left", "roll", left)
		}

		// What she goes by where nothing is printed.
		if !tubesSaid {
			for tubes = needTubes; qSaid && tubes*q < need; tubes++ {
			}
		}
		if !setsSaid {
			sets = into * tubes
		}
		if !stripsSaid {
			strips = sets * each
		}
		var want verdict
		pieces := packs * pack
		for range strips {
			if pieces == 0 {
				want.table = "packs"
				break
			}
			pieces--
		}
		if want.table == "" && pieces < left {
			want.table = "packs"
		}
		want.machine = sewn(strips, sets, tubes, each, into, q, need)

		text := of(f)
		got := judged(t, text, buyer.Follow(derived(t, text), derived(t, text).Of.Printed))
		if got != want {
			t.Fatalf("seed %d: followed, she is short of %+v, and one by one of %+v\n%s", seed, got, want, text)
		}
		seen[got]++
	}
	for _, v := range []verdict{{}, {table: "packs"}, {machine: "strips"}, {machine: "sets"}, {machine: "pieces"}} {
		if seen[v] < 10 {
			t.Errorf("%+v came up %d times: %v", v, seen[v], seen)
		}
	}
}

// sewn sews sets of strips and tubes of sets one at a time, cuts the tubes up and
// says what runs out first.
func sewn(strips, sets, tubes, each, into, q, need int) string {
	for range sets {
		if strips < each {
			return "strips"
		}
		strips -= each
	}
	squares := 0
	for range tubes {
		if sets < into {
			return "sets"
		}
		sets -= into
		squares += q
	}
	if squares < need {
		return "pieces"
	}
	return ""
}

// eighth counts lengths of these tests in eighths of an inch.
func eighth(n int) string { return fmt.Sprintf(`"%d.%03d"`, n/8, n%8*125) }

// A border, a binding and strip sets of one fabric, cut strip by strip from the
// printed length.
func TestStripsAreCutOneByOne(t *testing.T) {
	fine, stopped := 0, map[string]int{}
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 2))
		const shape = `,
	"parts": {"bar": {"strip_set": {"strips": [{"fabric": "edge", "width": %s}, {"fabric": "sky", "width": "2"}, {"fabric": "edge", "width": %s}], "segment": "5"}}},
	"layout": {"grid": {"rows": %d, "columns": %d, "blocks": [["bar"]]}, "borders": {"frame": {"fabric": "edge", "width": %s}}},
	"finish": {"binding": {"fabric": "edge", "cut": %s, "joins": "straight"}}, "printed": {"small": %s}}`
		rows, columns := 1+r.IntN(6), 1+r.IntN(6)
		bar, border, binding := 12+r.IntN(16), 12+r.IntN(24), 14+r.IntN(8)
		of := func(f figures) string {
			return head("strips", `"edge": {"yardage": {}}, "sky": {"yardage": {}}`) +
				fmt.Sprintf(shape, eighth(bar), eighth(bar), rows, columns, eighth(border-4), eighth(binding), f.text())
		}
		s := derived(t, of(nil))
		set, frame, round := int(s.Part("bar").Set.Count), int(s.Top.Borders[0].Strips.Count), int(s.Binding.Strips.Count)

		f := figures{}
		sets, setsSaid := maybe(r, f, "sets", "bar", set, 3)
		if !setsSaid {
			sets = set
		}
		strips, stripsSaid := maybe(r, f, "strips", "bar", 3*set, 7)
		frames, frameSaid := maybe(r, f, "strips", "frame", frame, 4)
		rounds, roundSaid := maybe(r, f, "strips", "binding", round, 4)
		if !frameSaid {
			frames = frame
		}
		if !roundSaid {
			rounds = round
		}
		ofSets := 2 * sets
		if stripsSaid {
			ofSets = strips / 3 * 2
		}
		if stripsSaid && r.IntN(2) == 0 { // those of each fabric by themselves
			ofSets = 2*set + r.IntN(6)
			f.set("strips", "bar", fmt.Sprintf(`[{"count": %d, "fabric": "edge"}, {"count": %d, "fabric": "sky"}]`, ofSets, strips))
		}
		if frameSaid && r.IntN(2) == 0 {
			f.set("strips", "frame", fmt.Sprintf(`{"count": %d, "width": %s}`, frames, eighth(border)))
		}
		whole := func(ofSets, frames, rounds int) int { return ofSets*bar + frames*border + rounds*binding + 8 }
		yards := (whole(2*set, frame, round)+35)/36 + r.IntN(3)
		f.set("fabric", "edge", fmt.Sprintf(`"%d.%03d yd"`, yards/8, yards%8*125))

		// Strip by strip, an inch having gone to square up the end.
		left, stop := yards*36-8, ""
		for _, c := range []struct {
			of          string
			strips, cut int
		}{{"bar", ofSets, bar}, {"frame", frames, border}, {"binding", rounds, binding}} {
			for range c.strips {
				if left < c.cut && stop == "" {
					stop = c.of
				}
				left -= c.cut
			}
		}
		text := of(f)
		size := derived(t, text)
		at := ""
		for _, got := range buyer.Follow(size, size.Of.Printed) {
			if got.Short == buyer.Cloth {
				at = got.Figure.Name
			}
		}
		over := map[string]bool{"bar": ofSets > 2*set, "frame": frames > frame, "binding": rounds > round}
		// The last strips of border and binding are partly used, and may be one.
		shared := frames == frame && rounds == round && left+min(border, binding) >= 0
		switch {
		case stop == at:
		case shared && at == "":
			stop = ""
		case stop != "" && !over[stop] && over[at]: // she stops at what the recipe takes, after a figure that took too much
		default:
			t.Fatalf("seed %d: followed, she stops at %q, and strip by strip at %q\n%s", seed, at, stop, text)
		}
		if stop == "" {
			fine++
		} else {
			stopped[at]++
		}
	}
	if fine < 100 || stopped["bar"] < 10 || stopped["frame"] < 10 || stopped["binding"] < 10 {
		t.Errorf("too few of a kind: fine %d, stopped %v", fine, stopped)
	}
}

// Squares beside border strips. Of equal squares a rectangle holds no more than
// whole columns of whole rows, however they lie: the points a square's side apart
// each lie in one square at most (derived from geometry).
func TestSquaresAreLaidBesideStrips(t *testing.T) {
	fine, stopped := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		const shape = `,
	"parts": {"square": {"cut": {"fabric": "edge", "square": %s}}},
	"layout": {"grid": {"rows": %d, "columns": %d, "blocks": [["square"]]}, "borders": {"frame": {"fabric": "edge", "width": %s}}}, "printed": {"small": %s}}`
		side, rows, columns, border := 16+r.IntN(60), 1+r.IntN(6), 1+r.IntN(6), 12+r.IntN(24)
		of := func(f figures) string {
			return head("squares", `"edge": {"yardage": {}}`) + fmt.Sprintf(shape, eighth(side), rows, columns, eighth(border-4), f.text())
		}
		s := derived(t, of(nil))
		frame := int(s.Top.Borders[0].Strips.Count)
		f := figures{}
		frames := frame + 1 + r.IntN(4)
		f.set("strips", "frame", frames)
		gross := int(measure.CeilTo(s.Fabric("edge").Gross, measure.Yard/8) / (measure.Yard / 8))
		yards := gross + r.IntN(3)
		f.set("fabric", "edge", fmt.Sprintf(`"%d.%03d yd"`, yards/8, yards%8*125))

		perRow := 320 / side
		squareRows := (rows*columns + perRow - 1) / perRow
		fits := squareRows*side+frames*border <= yards*36-8

		text := of(f)
		size := derived(t, text)
		stops := buyer.Follow(size, size.Of.Printed)
		if (len(stops) == 0) != fits {
			t.Fatalf("seed %d: %d stops, and laid out it fits: %v\n%s", seed, len(stops), fits, text)
		}
		if fits {
			fine++
		} else {
			stopped++
		}
	}
	if fine < 50 || stopped < 50 {
		t.Errorf("too few of a kind: fine %d, stopped %d", fine, stopped)
	}
}

// Mitred strips, cut one after the other from strips that are joined one by one.
func TestMitredStripsAreCutFromJoinedOnes(t *testing.T) {
	fine, stopped := 0, 0
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 4))
		const shape = `,
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": %d, "columns": %d, "blocks": [["square"]]}, "borders": {"frame": {"fabric": "edge", "width": %s, "corners": "mitred"}}}, "printed": {"small": %s}}`
		rows, columns, border := 1+r.IntN(9), 1+r.IntN(9), 12+r.IntN(24)
		of := func(f figures) string {
			return head("mitred", `"edge": {"yardage": {}}, "sky": {"yardage": {}}`) + fmt.Sprintf(shape, rows, columns, eighth(border-4), f.text())
		}
		b := derived(t, of(nil)).Top.Borders[0]
		up := func(l measure.Surd) int { return int(l.CeilTo(measure.Inch/8) / (measure.Inch / 8)) }
		sides, ends := up(b.Sides)+r.IntN(40), up(b.Ends)+r.IntN(40)
		strips := int(b.Strips.Count) + r.IntN(2)
		f := figures{}
		f.set("borders", "frame", fmt.Sprintf(`{"sides": %s, "ends": %s}`, eighth(sides), eighth(ends)))
		f.set("strips", "frame", strips)

		joined := 0
		for i := range strips {
			if i > 0 {
				joined -= border // a diagonal join costs the strip's width
			}
			joined += 320
		}
		for _, l := range []int{sides, sides, ends, ends} {
			joined -= l
		}
		text := of(f)
		size := derived(t, text)
		stops := buyer.Follow(size, size.Of.Printed)
		if (len(stops) == 0) != (joined >= 0) {
			t.Fatalf("seed %d: %d stops, and %d eighths are left of the joined strips\n%s", seed, len(stops), joined, text)
		}
		if joined >= 0 {
			fine++
		} else {
			stopped++
		}
	}
	if fine < 50 || stopped < 50 {
		t.Errorf("too few of a kind: fine %d, stopped %d", fine, stopped)
	}
}
