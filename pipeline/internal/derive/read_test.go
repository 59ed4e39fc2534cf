package derive_test

import (
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

const inch = measure.Inch

// derived takes a plan's text the whole way, as a run does, and derives every
// size by name.
func derived(t testing.TB, text string) map[string]*derive.Size {
	t.Helper()
	p, problems := decode(text)
	if len(problems) > 0 {
		t.Fatalf("the plan of the test is not in order: %v", problems)
	}
	sizes := map[string]*derive.Size{}
	for i := range p.Sizes {
		sizes[p.Sizes[i].Name.Text] = derive.Of(p, &p.Sizes[i])
	}
	return sizes
}

// decode reads a plan; the plan is nil when its text does not follow the
// schema.
func decode(text string) (*plan.Plan, []source.Problem) {
	file := source.New("test.plan.json", []byte(text))
	tree, problems := jsontree.Parse(file, jsontree.DefaultLimits())
	if tree == nil || len(problems) > 0 {
		return nil, problems
	}
	problems = schema.Plan(tree)
	sizes := plan.Merge(tree)
	for _, s := range sizes {
		problems = append(problems, schema.Plan(s.Tree)...)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return plan.Decode(file, tree, sizes, nil)
}

func length(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, measure.In)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func wantCount(t *testing.T, what string, got, want int64) {
	t.Helper()
	if got != want {
		t.Errorf("%s: %d, want %d", what, got, want)
	}
}

func wantLength(t *testing.T, what string, got measure.Length, want string) {
	t.Helper()
	if got != length(t, want) {
		t.Errorf("%s: %s, want %s", what, got.Format(measure.In), want)
	}
}

func wantSize(t *testing.T, what string, width, height measure.Surd, wantWidth, wantHeight string) {
	t.Helper()
	if !width.Equal(length(t, wantWidth).Surd()) || !height.Equal(length(t, wantHeight).Surd()) {
		t.Errorf("%s: %s x %s, want %s x %s", what,
			width.Format(measure.In), height.Format(measure.In), wantWidth, wantHeight)
	}
}

func wantBuy(t *testing.T, s *derive.Size, role, net, buy string) {
	t.Helper()
	f := s.Fabric(role)
	if f == nil || f.Err != nil {
		t.Fatalf("%s: %+v", role, f)
	}
	wantLength(t, role+", before rounding", f.Net, net)
	wantLength(t, role+", to buy", f.Buy, buy)
	if f.Least.Length <= 0 || f.Least.Length > f.Gross {
		t.Errorf("%s: no cutting needs less than %s, and %s are enough", role, f.Least.Length.Format(measure.In), f.Gross.Format(measure.In))
	}
}
