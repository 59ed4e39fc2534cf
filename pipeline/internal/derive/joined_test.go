package derive_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// joined is a quilt of 36 squares of tubes, from a roll of forty 2 1/2-in strips
// of a usable length, with more said of the tube.
func joined(t *testing.T, length, tube string) *derive.Size {
	t.Helper()
	parts := fmt.Sprintf(`"set": {"strip_set": {"strips": [%s]}}, "square": {"tube": {"sets": ["set", "set"]%s}}`, trio, tube)
	roll := fmt.Sprintf(`{"precut": {"piece": ["2 1/2", "42"], "usable": ["2 1/2", %q], "count": 40}}`, length)
	return sized(t, "1/4", roll, parts, `"grid": {"rows": 6, "columns": 6, "blocks": [["square"]]}`, "")
}

// A roll of 40 strips of 40 in makes 13 sets of three, and from six tubes of two
// come 6 x 5 squares. Joined end to end in pairs, 2 x 40 - 1/2 = 79 1/2 in long, they
// make three tubes of twelve: 36 squares of 12 sets, the same 36 strips. A join
// takes two seam allowances. Derived from geometry and worked by hand.
func TestJoinedTubes(t *testing.T) {
	for _, c := range []struct {
		length, tube             string
		each, tubes, sets, packs int64
		long                     string
	}{
		{"40", ``, 5, 8, 16, 2, "40"},
		{"40", `, "joined": 1`, 5, 8, 16, 2, "40"},
		{"40", `, "joined": 2`, 12, 3, 12, 1, "79 1/2"},
		// 119 in: floor(119 / 6) - 1 = 18, two tubes of three sets a side.
		{"40", `, "joined": 3`, 18, 2, 12, 1, "119"},
		// Ears kept: 1 + floor((79 1/2 - 12 1/2) / 6) = 12.
		{"40", `, "joined": 2, "ends": "ears kept"`, 12, 3, 12, 1, "79 1/2"},
		// On the raw edge: 1 + floor((79 1/2 - 12 1/2) / 6 1/2) = 11, so four tubes.
		{"40", `, "joined": 2, "tip": "raw edge"`, 11, 4, 16, 2, "79 1/2"},
		{"40", `, "joined": 2, "lay": "end for end"`, 12, 3, 12, 1, "79 1/2"},
		// Twelve squares need 78 in, so strips of 39 1/4 in, and not a tick less.
		{"39 1/4", `, "joined": 2`, 12, 3, 12, 1, "78"},
		{"39 15/64", `, "joined": 2`, 11, 4, 16, 2, "77 31/32"},
	} {
		s := joined(t, c.length, c.tube)
		square := s.Part("square")
		name := c.length + c.tube
		wantCount(t, name+": squares a tube", square.Tube.Yield.Each, c.each)
		wantCount(t, name+": tubes", square.Tube.Count, c.tubes)
		wantCount(t, name+": squares that come out", square.Made, c.each*c.tubes)
		wantCount(t, name+": sets", s.Part("set").Set.Count, c.sets)
		wantCount(t, name+": strips", s.Fabric("ink").Needs[0].Count, 3*c.sets)
		wantCount(t, name+": packs", s.Fabric("ink").Packs, c.packs)
		wantLength(t, name+": length", square.Tube.Yield.Length, c.long)
		if calls := s.Part("set").Calls; len(calls) != 1 || calls[0].N != c.sets {
			t.Errorf("%s: the sets are asked for by %+v", name, calls)
		}
	}
}

// Sets of which tubes are sewn and segments are cut add up: two tubes of four, and
// three for 48 segments of which floor(40 / 2 1/2) = 16 come from each.
func TestJoinedSetsShared(t *testing.T) {
	parts := `"set": {"strip_set": {"strips": [` + trio + `]}}, "square": {"tube": {"sets": ["set", "set"], "joined": 2, "trim": "6 1/2"}}, "bar": {"strip_set": {"set": "set", "segment": "2 1/2"}}, "pair": {"rows": [["square", "bar"]]}`
	s := sized(t, "1/4", `{"precut": {"piece": ["2 1/2", "40"], "count": 40}}`, parts, `"rows": [["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"], ["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"], ["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"], ["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"], ["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"], ["pair", "pair", "pair", "pair", "bar", "bar", "bar", "bar"]]`, "")
	wantCount(t, "squares", s.Part("square").Needed, 24)
	wantCount(t, "tubes", s.Part("square").Tube.Count, 2)
	wantCount(t, "segments", s.Part("bar").Needed, 48)
	wantCount(t, "sets", s.Part("set").Set.Count, 2*4+3)
	if calls := s.Part("set").Calls; len(calls) != 2 {
		t.Errorf("the sets are asked for by %+v", calls)
	}
}

// Twelve squares take 78 of 79 1/2 in: each of the two strips may be 3/4 in
// shorter, and thirteen need 84 in, strips of 42 1/4.
func TestJoinedSlack(t *testing.T) {
	tube := joined(t, "40", `, "joined": 2`).Part("square").Tube
	wantLength(t, "rest", tube.Yield.Rest(), "1 1/2")
	wantLength(t, "slack", tube.Yield.Slack(), "3/4")
	wantLength(t, "one more", tube.Yield.Next, "84")
	wantLength(t, "strips for one more", tube.StripFor(tube.Yield.Next), "42 1/4")
	for sets, want := range map[int64]int64{1: 5, 2: 12, 3: 18, 4: 25} {
		wantCount(t, fmt.Sprintf("squares of %d sets", sets), tube.Each(sets), want)
	}
}

// How much narrower the seams may be sewn is found by sewing them so: with all of
// them narrower by that, as many squares come out, and by a tick more one fewer.
// A narrower join leaves more length, too.
func TestJoinedSeamSlack(t *testing.T) {
	tried := 0
	for _, length := range []string{"40", "41", "41 1/2", "42"} {
		for sets := 1; sets <= 4; sets++ {
			tube := joined(t, length, fmt.Sprintf(`, "joined": %d`, sets)).Part("square").Tube
			each := func(seam measure.Length) int64 {
				w := 3*inch*5/2 - 4*seam
				sewn := piecing.Tube{Width: w, Seam: seam}
				return sewn.Yield(piecing.JoinedLength(int64(sets), tube.Sets[0].Set.Length, 2*seam), false)
			}
			slack, ok := tube.SeamSlack()
			if !ok {
				t.Errorf("%s, %d sets: a narrower seam is said to lose nothing", length, sets)
				continue
			}
			if was, at, beyond := each(tube.Seam), each(tube.Seam-slack), each(tube.Seam-slack-measure.Tick); at != was || beyond != was-1 {
				t.Errorf("%s, %d sets: %d squares, narrower by %s %d, and by a tick more %d", length, sets, was, slack.Format(measure.In), at, beyond)
			}
			tried++
		}
	}
	if tried < 16 {
		t.Errorf("only %d tried", tried)
	}
}

// Three tubes of two sets a side: sets 12 x 2 x 40 = 960 in, tube seams 3 x 2 x
// 79 1/2 = 477, and in each tube a join in either side across its 6 1/2 in, 39 in
// all: 516. Derived from geometry.
func TestJoinedSeams(t *testing.T) {
	s := joined(t, "40", `, "joined": 2`)
	for of, want := range map[string]measure.Length{"set": 960 * inch, "square": 516 * inch} {
		if l, ok := s.Part(of).Room.Seams(); !ok || !l.Equal(want.Surd()) {
			t.Errorf("seams of %s: %s, want %s", of, l.Format(measure.In), want.Format(measure.In))
		}
	}
}

// Twelve squares of a tube are six of each kind, where five are three and two.
func TestJoinedKinds(t *testing.T) {
	parts := `"set": {"strip_set": {"strips": ["ink", {"fabric": "milk", "width": "2 1/2"}, {"fabric": "milk", "width": "2 1/2"}]}}, "square": {"tube": {"sets": ["set", "set"], "joined": 2}}`
	layout := `"rows": [[{"part": "square", "kind": "near"}, {"part": "square", "kind": "near"}, {"part": "square", "kind": "near"}], [{"part": "square", "kind": "near"}, {"part": "square", "kind": "near"}, {"part": "square", "kind": "near"}], [{"part": "square", "kind": "near"}, {"part": "square", "kind": "far"}, {"part": "square", "kind": "far"}]]`
	s := sized(t, "1/4", `{"precut": {"piece": ["2 1/2", "40"], "count": 40}}`, parts, layout, "")
	tube := s.Part("square").Tube
	// Seven near squares of nine: a tube gives six.
	wantCount(t, "tubes", tube.Count, 2)
	near, far := tube.Makes(tube.Count)
	wantCount(t, "near squares", near, 12)
	wantCount(t, "far squares", far, 12)
	wantCount(t, "sets", s.Part("set").Set.Count, 8)
}

// What a roll gives of tubes that take four sets each: 13 sets make three, and one
// is over. Derived from division.
func TestJoinedPackGives(t *testing.T) {
	s := joined(t, "40", `, "joined": 2`)
	g, ok := s.PackGives(s.Part("set"))
	if tubes, over := g.Tubes(s.Part("square").Tube.Takes(s.Part("set"))); !ok || g.Sets != 13 || tubes != 3 || over != 1 {
		t.Errorf("%d sets, %d tubes, %d over", g.Sets, tubes, over)
	}
	// One roll of the two that eight short tubes take holds six of them, and of four
	// long ones on the raw edge three.
	for tube, want := range map[string][2]int64{``: {6, 4}, `, "joined": 2, "tip": "raw edge"`: {3, 4}} {
		s := joined(t, "40", tube)
		if tubes, over := s.Fabric("ink").TubesFrom(s.Part("square"), 40); tubes != want[0] || over != want[1] {
			t.Errorf("%q: %d tubes and %d strips over, want %v", tube, tubes, over, want)
		}
	}
}

// Two joins cross four squares of twelve where those of the two sides lie on each
// other, and eight where they do not; never more than there are.
func TestJoinedCrossed(t *testing.T) {
	for sets, want := range map[int][2]int64{1: {0, 0}, 2: {2, 4}, 3: {4, 8}, 20: {38, 76}} {
		matched, apart := joined(t, "40", fmt.Sprintf(`, "joined": %d`, sets)).Part("square").Tube.Crossed()
		if matched != want[0] || apart != want[1] {
			t.Errorf("%d sets: %d and %d squares, want %v", sets, matched, apart, want)
		}
	}
	if matched, apart := joined(t, "13", `, "joined": 2`).Part("square").Tube.Crossed(); matched != 2 || apart != 3 {
		t.Errorf("of three squares %d and %d are crossed", matched, apart)
	}
}

// The length of a joined side is told: how many sets, how long each, and the seam.
func TestJoinedWorking(t *testing.T) {
	s := joined(t, "40", `, "joined": 2`)
	w := s.Part("square").YieldFigure()
	l := w.Terms()[0].Working()
	if w.Formula() != "1 + floor((L - 2h) / a), none when L < 2h" || l.Formula() != "k x l - (k-1) x 2s" {
		t.Fatalf("%s, %s", w.Formula(), l.Formula())
	}
	file := s.Plan.File
	var at []string
	for _, term := range l.Terms() {
		at = append(at, file.Slice(term.At()))
	}
	if got := fmt.Sprintf("%q", at); got != `["2" "\"40\"" "\"1/4\""]` {
		t.Errorf("what stands for the symbols: %s", got)
	}
	if l.Terms()[0].N() != 2 || l.Length() != inch*159/2 {
		t.Errorf("%s", l.Length().Format(measure.In))
	}
}
