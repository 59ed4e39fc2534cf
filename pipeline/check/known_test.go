package check

import (
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// knownPlans is how many plans are made up; YARDPROOF_KNOWN asks for more.
func knownPlans(t *testing.T) int {
	if text := os.Getenv("YARDPROOF_KNOWN"); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	return 300
}

// Plans made up at random are made one piece at a time by a reckoner that
// knows nothing of the packages that derive, and come out the same.
func TestKnownAnswers(t *testing.T) {
	left := 0
	for seed, n := uint64(1), 0; n < knownPlans(t); seed++ {
		k := newKnownPlan(seed)
		shop := k.make(0)
		if shop.fails {
			left++
			continue // something is larger than its cloth
		}
		n++
		text := k.text(map[string]any{})
		p, found := checkText(source.New("known.plan.json", text), nil)
		if p == nil {
			t.Fatalf("seed %d: %s\n%s", seed, short(found), text)
		}
		s := derive.Of(p, &p.Sizes[0])
		var wrong []string
		compareKnown(k, shop, s, func(what string, got, want int64) {
			if got != want {
				wrong = append(wrong, fmt.Sprintf("%s: %d, one by one %d", what, got, want))
			}
		})
		if diag.Worst(found) > diag.Warning {
			wrong = append(wrong, short(found))
		}
		if len(wrong) > 0 {
			t.Errorf("seed %d: %v\n%s", seed, wrong, text)
		}
	}
	t.Logf("%d plans were left out", left)
}

// compareKnown holds what was derived against what was made.
func compareKnown(k *knownPlan, shop *knownShop, s *derive.Size, same func(what string, got, want int64)) {
	exact := func(l measure.Surd) int64 { return int64(l.CeilTo(measure.Tick)) }
	same("finished width", exact(s.Top.Finished.Width), shop.finish[0])
	same("finished length", exact(s.Top.Finished.Height), shop.finish[1])
	for name, n := range shop.made {
		p := s.Part(name)
		same(name, p.Needed, n)
		switch {
		case p.Set != nil && p.Set.Cut != nil:
			same("sets of "+name, p.Set.Count, shop.batches[name])
			same("segments of a set of "+name, p.Set.Cut.Each, shop.each[name])
		case p.Set != nil:
			same("sets of "+name, p.Set.Count, n)
		case p.Tube != nil:
			same("tubes of "+name, p.Tube.Count, shop.batches[name])
			same("squares of a tube of "+name, p.Tube.Yield.Each, shop.each[name])
		case p.Triangle != nil:
			same("pairs of "+name, p.Triangle.Pairs, shop.batches[name])
		}
	}
	for _, b := range s.Top.Borders {
		name := b.Said.Name.Text
		same("strips of "+name, b.Strips.Count, shop.joined[name])
		same("sides of "+name, exact(b.Sides), shop.lengths[name][0])
		same("ends of "+name, exact(b.Ends), shop.lengths[name][1])
	}
	if s.Binding != nil {
		same("strips of binding", s.Binding.Strips.Count, shop.joined["binding"])
	}
	if s.Backing != nil {
		same("panels", s.Backing.Panels*exact(s.Backing.Each), shop.panels[0]*shop.panels[1])
	}
	for role, w := range shop.wants {
		f := s.Fabric(role)
		pieces, strips := int64(0), int64(0)
		for _, n := range f.Needs {
			if n.Strip {
				strips += n.Count
			} else {
				pieces += n.Count
			}
		}
		same("pieces of "+role, pieces, int64(len(w.pieces)))
		same("strips of "+role, strips, int64(len(w.strips)))
		switch {
		case w.cloth.pack > 0:
			packs, left := w.packs()
			same("packs of "+role, f.Packs, packs)
			same("left of "+role, f.Left, left)
		case f.Used():
			same("plain method's length of "+role, int64(f.Net), w.net())
			same("to buy of "+role, int64(f.Buy), w.buy())
		}
	}
}

// Faults that the plans made up at random brought to light, each as its
// smallest plan.
func TestKnownFaults(t *testing.T) {
	const backed = `{"fabrics": {"back": {"yardage": {}}}, "finish": {"backing": {"fabric": "back"}}, "printed": {"small": {"backing": SIZE, "fabric": {"back": "CLOTH"}}}}`
	tryAll(t, squares, []tried{
		{"no cloth", `{"printed": {"small": {"fabric": {"sky": "0 yd"}}}}`, "fabric/impossible", `the pattern prints 0 yd`},
		{"no cloth for the backing", replaced(backed, "SIZE", `["24", "24"]`, "CLOTH", "0 yd"), "finish/backing-short", ""},
	})
	const cut = `{"fabrics": {"sky": {"yardage": {"usable_width": "40"}}, "sea": {"yardage": {}}}, "parts": {
		"bar": {"strip_set": {"segment": "2", "strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sea", "width": "2 1/2"}]}},
		"square": {"cut": null, "rows": [["bar", "bar"]]}}, "printed": {"small": {"per_set": {"bar": 0}}}}`
	if found := try(t, squares, cut); diag.Worst(found) < diag.Error {
		t.Errorf("a set that gives nothing is printed, and no error is told:\n%s", short(found))
	}
	for size, at := range map[string]string{`["23", "24"]`: "0", `["24", "23"]`: "1", `["24", "40"]`: "1", `["40", "24"]`: "0"} {
		var places []string
		for _, f := range try(t, squares, replaced(backed, "SIZE", size, "CLOTH", "1 1/4 yd")) {
			if side, ok := strings.CutPrefix(f.Place.Pointer, "/printed/small/backing/"); ok {
				places = append(places, side)
			}
		}
		if !slices.Equal(places, []string{at}) {
			t.Errorf("the backing %s is wrong at %v, want %s alone", size, places, at)
		}
	}
}
