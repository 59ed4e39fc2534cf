package piecing_test

import (
	"math"
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

func stitch(t *testing.T, class string) piecing.StitchClass {
	t.Helper()
	c, ok := piecing.StitchClassOf(class)
	if !ok {
		t.Fatalf("no class %s", class)
	}
	return c
}

func metres(t *testing.T, what string, got measure.Surd, want float64, within float64) {
	t.Helper()
	if m := got.Float(measure.Cm) / 100; math.Abs(m-want) > within {
		t.Errorf("%s: %.4f m, want %g", what, m, want)
	}
}

// Ratios by ISO 4915 class. 301, 401: thread makers' and textile-engineering
// bulletins; 503, 504, 512, 516: a published consumption table; 514 is an
// estimate and says so.
func TestStitchClasses(t *testing.T) {
	want := map[string]struct {
		ratio, threads string
		needles        int64 // their share of the thread, in hundredths
		from           piecing.Evidence
	}{
		"301": {"2.5", "needle 1 bobbin 1", 50, piecing.Published},
		"401": {"5.5", "needle 1 looper 1", 25, piecing.Published},
		"503": {"12.0", "needle 1 looper 1", 55, piecing.Published},
		"504": {"14.0", "needle 1 looper 2", 20, piecing.Published},
		"512": {"18.0", "needle 2 looper 2", 25, piecing.Published},
		"514": {"17.0", "needle 2 looper 2", 25, piecing.Estimate},
		"516": {"20.0", "needle 2 looper 3", 20, piecing.Published},
	}
	classes := piecing.StitchClasses()
	if len(classes) != len(want) {
		t.Errorf("%d classes", len(classes))
	}
	for i, c := range classes {
		w := want[c.Class]
		var whole measure.Surd
		threads := ""
		for _, s := range c.Shares {
			whole = whole.Add(s.Part)
			threads += string(s.Position) + " " + measure.Rational(s.Threads, 1).Number(0) + " "
		}
		if got := c.Shares[0].Part; !got.Equal(measure.Rational(w.needles, 100)) {
			t.Errorf("%s: the needles take %s of the thread, want %d hundredths", c.Class, got.Number(4), w.needles)
		}
		if c.Ratio.Number(1) != w.ratio || c.RatioFrom != w.from || threads != w.threads+" " {
			t.Errorf("%s: ratio %s (%s), %s", c.Class, c.Ratio.Number(1), c.RatioFrom, threads)
		}
		if !whole.Equal(measure.Rational(1, 1)) {
			t.Errorf("%s: shares add up to %v", c.Class, whole.Number(2))
		}
		if i > 0 && classes[i-1].Class >= c.Class {
			t.Errorf("%s after %s", c.Class, classes[i-1].Class)
		}
	}
	if _, ok := piecing.StitchClassOf("602"); ok {
		t.Error("a figure for a class without one")
	}
}

// Formulas at 10 stitches to the inch, width 0.25 in, thickness 0.05: 504
// gives 15 (a published formula), and with a second needle 514 the estimate 17.
func TestStitchFormulas(t *testing.T) {
	w, thick, each := quarter.Surd(), (inch / 20).Surd(), (inch / 10).Surd()
	for _, c := range []struct {
		what string
		got  measure.Surd
		want string
	}{
		{"504", piecing.OveredgeRatio(w, thick, each), "15"},
		{"514", piecing.OverlockRatio(w, thick, each), "17"},
		{"301", piecing.LockstitchRatio(thick, each), "3"},
		{"401", piecing.ChainRatio(thick, each), "5"},
	} {
		if got := c.got.Number(0); got != c.want || !c.got.Equal(measure.Rational(int64(c.want[0]-'0'), 1)) && len(c.want) == 1 {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

// 1119 in of seam are 28.4226 m: class 301 takes 71.06 m, with 15 % waste
// 81.71, needle and bobbin 40.86 each; 514 at 17 takes 555.66 m with waste, 69
// a needle and 208 a looper, so one set of four cones of 1000 m.
func TestThread(t *testing.T) {
	seam := (1119 * inch).Surd()
	waste := measure.Rational(15, 100)
	metres(t, "seam", seam, 28.4226, 1e-9)
	lock := stitch(t, "301")
	dry, _ := lock.Thread(seam, measure.Surd{})
	metres(t, "301", dry, 71.06, 0.005)
	total, needs := lock.Thread(seam, waste)
	metres(t, "301 with waste", total, 81.71, 0.006)
	for _, n := range needs {
		metres(t, "301 "+string(n.Position), n.Each, 40.86, 0.005)
	}
	total, needs = stitch(t, "514").Thread(seam, waste)
	metres(t, "514 with waste", total, 555.66, 0.005)
	cones := int64(0)
	for _, n := range needs {
		want := map[piecing.Position]float64{piecing.Needle: 69.46, piecing.Looper: 208.37}[n.Position]
		metres(t, "514 "+string(n.Position), n.Each, want, 0.005)
		cones += n.Spools(1000 * measure.Metre)
	}
	if cones != 4 {
		t.Errorf("%d cones", cones)
	}
}

// The tube quilt of a strip roll: 1020 in in sets, 510 in tubes, 490 in rows;
// 2020 in are 147.5 m of thread at 301 and 1003 m at 514.
func TestThreadOfTubeQuilt(t *testing.T) {
	l := inch * 85 / 2
	sets, tubes := 12*piecing.SetSeams(3, l), 6*2*l
	rows := piecing.RowSeams(grid(6, 6, box(inch*67/8, inch*67/8)), quarter, straight)
	marks(t, "sets", sets, "1020")
	marks(t, "tubes", tubes, "510")
	wantSurd(t, "rows", rows, 490*inch)
	all := rows.Add((sets + tubes).Surd())
	wantSurd(t, "all", all, 2020*inch)
	for _, c := range []struct {
		class string
		want  float64
	}{{"301", 147.5}, {"514", 1003}} {
		total, _ := stitch(t, c.class).Thread(all, measure.Rational(15, 100))
		metres(t, c.class, total, c.want, 0.5)
	}
	if !piecing.RowSeams(nil, quarter, straight).IsZero() || piecing.SetSeams(0, l) != 0 {
		t.Error("seams in nothing")
	}
}

// Spools are counted for each thread: four cones of 1000 m, where a total
// over the cone's length says one. At the spool's own length one is enough, a
// tick more takes two.
func TestSpools(t *testing.T) {
	for _, c := range []struct {
		each measure.Length
		want int64
	}{{100 * measure.Metre, 2}, {100*measure.Metre + tick, 4}, {tick, 2}, {0, 0}} {
		n := piecing.ThreadNeed{Position: piecing.Looper, Threads: 2, Each: c.each.Surd()}
		if got := n.Spools(100 * measure.Metre); got != c.want {
			t.Errorf("%v a thread: %d spools, want %d", c.each.Format(measure.Cm), got, c.want)
		}
	}
	if got := (piecing.ThreadNeed{Threads: 1, Each: inch.Surd()}).Spools(0); got != 0 {
		t.Errorf("spools of no length: %d", got)
	}
}

func straight(int) bool { return false }
