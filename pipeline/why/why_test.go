package why_test

import (
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/report"
	"yardproof/pipeline/why"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

const text = "{ \"parts\": { \"hall of mirrors\": 2 },\n  \"cloth\": 3 }"

// sample is an invented plan of two sizes, of which one number stands on another.
func sample() *report.Plan {
	at := func(what string) source.Range {
		i := strings.Index(text, what)
		return source.Range{Start: i, End: i + len(what)}
	}
	needed := &report.Work{What: "hall of mirrors, needed", Formula: "sum over all that use it", Value: report.N(12), Terms: []report.Term{
		{Says: "in the layout", Value: report.N(12), At: at("2")},
		{Symbol: "p", Says: "part of it", Value: report.Cell{Kind: report.Number, Number: big.NewRat(3, 4)}},
	}}
	n := report.N(12)
	n.Why = needed
	sets := &report.Work{What: "hall of mirrors, strip sets", Formula: "ceil(N / each)", Value: report.N(3), Terms: []report.Term{
		{Symbol: "N", Says: "needed", Value: n}, {Symbol: "each", Value: report.L(measure.Root2().MulInt(int64(measure.Inch)), measure.In)},
	}}
	buy := &report.Work{What: "cloth_2, to buy", Formula: "strips * 2", Value: report.F(27*measure.Inch, measure.In), Terms: []report.Term{
		{Says: "strips", Value: report.L((20 * measure.Inch).Surd(), measure.In), At: at("3")}, {Symbol: "N", Says: "needed", Value: n},
	}}
	wide := &report.Work{What: "finished width", Formula: "middle", Value: report.L(measure.Length(36*measure.Inch).Surd(), measure.In)}
	p := &report.Plan{Units: measure.In, Source: source.New("p.json", []byte(text))}
	for _, size := range []string{"bed", "double bed"} {
		p.Sizes = append(p.Sizes, size)
		p.Numbers = append(p.Numbers, report.Derived{Size: size, Is: "finished width", Work: wide},
			report.Derived{Size: size, Of: "hall of mirrors", Is: "needed", Work: needed}, report.Derived{Size: size, Of: "hall of mirrors", Is: "strip sets", Work: sets},
			report.Derived{Size: size, Of: "cloth_2", Is: "to buy", Work: buy})
	}
	return p
}

func TestFind(t *testing.T) {
	p := sample()
	for asked, want := range map[string]int{
		"": 8, "bed": 4, "Double Bed": 4, "hall of mirrors": 4, "Hall of Mirrors in double bed": 2, "finished width": 2, "width in bed": 1,
		"strips of hall of mirrors": 2, "sets of hall of mirrors in bed": 1, "hall of mirrors, needed": 2, "strips of cloth_2": 0, "mirrors": 0,
		"/cloth": 2, "/parts": 2, "/parts/hall of mirrors": 2, "/nothing": 0, "needed": 2, "cloth_2 in double bed": 1, "cloth_2 in cot": 0,
	} {
		if got := why.Find(p, asked); len(got) != want {
			t.Errorf("%q: %d numbers, want %d", asked, len(got), want)
		}
	}
	p.Source = source.New("p.json", []byte("{"))
	if len(why.Find(p, "/cloth")) != 0 {
		t.Error("a plan that is no JSON has places")
	}
}

func TestText(t *testing.T) {
	p := sample()
	all := why.Answers(p, why.Find(p, "strips of hall of mirrors in bed"), 0)
	want := `bed: hall of mirrors, strip sets: 3
  = ceil(N / each)
  N, needed: 12
    = sum over all that use it
    in the layout: 12 (p.json:1:33)
    p, part of it: 3/4
  each: about 1.4142 in
`
	if got := why.Text(all, "p.json"); got != want {
		t.Errorf("%s", got)
	}
	one := why.Text(why.Answers(p, why.Find(p, "strips of hall of mirrors in bed"), 1), "p.json")
	if strings.Contains(one, "in the layout") || !strings.Contains(one, "N, needed: 12\n") {
		t.Errorf("of one level:\n%s", one)
	}
	both := why.Text(why.Answers(p, why.Find(p, "bed"), 0), "p.json")
	if !strings.Contains(both, "\n\nbed: hall of mirrors, needed: 12\n") || !strings.Contains(both, "    = sum over all that use it, as above\n") || !strings.Contains(both, "bed: cloth_2, to buy: 3/4 yd\n") {
		t.Errorf("of several:\n%s", both)
	}
}

func TestMarkdown(t *testing.T) {
	p := sample()
	got := why.Markdown(why.Answers(p, why.Find(p, "cloth_2 in bed"), 1), "p.json")
	want := `- bed: cloth\_2, to buy: **3/4 yd** = strips \* 2
  - strips: **20 in** (p.json:2:12)
  - N, needed: **12**
`
	if got != want {
		t.Errorf("%s", got)
	}
}
