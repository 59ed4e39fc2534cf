package main

import (
	"path/filepath"
	"testing"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

const demo = "../../testdata/line"

// One in five of the moves, which takes in every plan and kind of figure;
// scripts/check.sh judges all of them.
func TestFalsifiedFiguresAreFound(t *testing.T) {
	s, err := falsify(demo, 5)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.fault(); err != nil {
		t.Errorf("%v\n%s", err, s.table())
	}
	if s.all < 500 {
		t.Errorf("only %d moves were judged", s.all)
	}
}

// In the packed layout of this plan the end of a border's last strip lies in a
// wider one; the border still takes all its strips, at their width.
func TestStripsThatShareAreStillCounted(t *testing.T) {
	l := demoPlan(t, "long-bench")
	moves := l.moves()
	verdicts, err := judge(demo, l, moves)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range moves {
		if verdicts[i].level == 0 && m.class() == "" {
			t.Errorf("%s draws nothing", m)
		}
	}
}

// A plan that is not changed draws nothing new, and one whose figure is far
// off does: otherwise the score would mean nothing.
func TestJudgeTellsFalseFromTrue(t *testing.T) {
	l := demoPlan(t, "long-bench")
	f := l.figures[0]
	verdicts, err := judge(demo, l, []move{
		{of: l, fig: f, how: stepUp, text: string(l.file.Bytes)},
		{of: l, fig: f, how: doubled, text: l.with(change{replacement: replacement{f.at, `"999"`}})},
	})
	if err != nil {
		t.Fatal(err)
	}
	if verdicts[0].level != 0 || verdicts[1].level == 0 {
		t.Errorf("unchanged: %+v, far off: %+v", verdicts[0], verdicts[1])
	}
}

func demoPlan(t *testing.T, name string) *line {
	t.Helper()
	l, err := open(filepath.Join(demo, name+".plan.json"), name)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// Every number and length below printed is a figure that is moved, or is no
// figure: what sizes are rounded to, and the names of fabrics.
func TestEveryPrintedFigureIsMoved(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(demo, "*.plan.json"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no plans", err)
	}
	paths = append(paths, "../../schema/testdata/lattice-walk.plan.json")
	kinds := map[string]bool{}
	for _, path := range paths {
		l, err := open(path, filepath.Base(path))
		if err != nil {
			t.Fatal(err)
		}
		moved := map[source.Range]bool{}
		for _, f := range l.figures {
			moved[f.at], kinds[f.kind] = true, true
		}
		for _, size := range l.tree.Get("printed").Members {
			if size.Value.Kind == jsontree.Object {
				leaves(size.Value, "", func(key string, n *jsontree.Node) {
					if !moved[n.Range] && key != "rounding" && key != "fabric" && key != "each" {
						t.Errorf("%s %s is not moved", l.name, l.tree.PointerAt(n.Range.Start))
					}
				})
			}
		}
	}
	for _, kind := range []string{"thread", "strips", "strip width", "setting", "border cut", "border lengths", "per_tube", "left"} {
		if !kinds[kind] {
			t.Errorf("no plan prints a figure of kind %s", kind)
		}
	}
}

// leaves visits the values below a node with the last key above them.
func leaves(n *jsontree.Node, key string, visit func(key string, n *jsontree.Node)) {
	for _, m := range n.Members {
		leaves(m.Value, m.Key, visit)
	}
	for _, item := range n.Items {
		leaves(item, key, visit)
	}
	if n.Kind != jsontree.Object && n.Kind != jsontree.Array {
		visit(key, n)
	}
}

func TestMoved(t *testing.T) {
	for _, c := range []struct {
		n, step int64
		how     way
		want    int64
	}{
		{12, 1, stepUp, 13}, {12, 1, stepDown, 11}, {12, 1, doubled, 24},
		{12, 1, tenthUp, 14}, {12, 1, tenthDown, 10}, {10, 1, tenthUp, 11}, {11, 1, tenthUp, 13},
	} {
		if got := moved(c.n, c.step, c.how); got != c.want {
			t.Errorf("%d %s: %d, want %d", c.n, c.how, got, c.want)
		}
	}
	// A tenth of 1 1/4 yd is an eighth, of 1 3/8 yd two.
	const eighth = measure.Yard / 8
	if got := moved(10*eighth, eighth, tenthUp); got != 11*eighth {
		t.Errorf("1 1/4 yd and a tenth is %d eighths", got/eighth)
	}
	if got := moved(11*eighth, eighth, tenthDown); got != 9*eighth {
		t.Errorf("1 3/8 yd less a tenth is %d eighths", got/eighth)
	}
}

// No class excuses a figure that became less.
func TestNoClassIsAShortage(t *testing.T) {
	paths, _ := filepath.Glob(filepath.Join(demo, "*.plan.json"))
	for _, path := range paths {
		l, err := open(path, filepath.Base(path))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range l.moves() {
			if class := m.class(); class != "" && !m.more && m.how != exchanged {
				t.Errorf("%s is of class %s", m, class)
			} else if class != "" && classes[class] == "" {
				t.Errorf("class %s has no reason", class)
			}
		}
	}
}
