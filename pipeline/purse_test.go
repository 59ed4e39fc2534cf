package pipeline

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/scripts/hostile"
)

// little is a budget that invented plans of some cuttings are too much for.
var little = budgets{check: 3_000_000, tables: 4_000_000}

// hard is a plan of so many sizes, all of them too much for a little budget.
func hard(id string, sizes int) string {
	text := string(hostile.Cuts(12, sizes, 1.0245))
	return strings.Replace(text, `"id":"many-cuts"`, `"id":"`+id+`"`, 1)
}

// littleRun is a run in which each plan has a little budget.
func littleRun(t *testing.T, c Config) *report.Run {
	t.Helper()
	l := newLine(c)
	l.budgets = little
	r, err := l.run(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// findings are what a run says of a plan.
func findings(t *testing.T, r *report.Run, id string) []diag.Finding {
	t.Helper()
	for _, p := range r.Plans {
		if p.ID == id {
			return p.Findings
		}
	}
	t.Fatalf("no plan %q", id)
	return nil
}

func unsettled(all []diag.Finding) int {
	n := 0
	for _, f := range all {
		if f.Rule == "fabric/unsettled" && strings.Contains(f.Message, "the work that the cuttings of one plan are allowed") {
			n++
		}
	}
	return n
}

// What is said of a plan does not depend on what it is run with, though a plan
// before it has solved its problems already, with more allowed: alone, in a line,
// for any number of jobs, and gathered it is the same.
func TestBudgetOfAPlanIsItsOwn(t *testing.T) {
	folder(t, map[string]string{
		"a-few.plan.json":  hard("few", 2),
		"b-many.plan.json": hard("many", 9),
		"c-some.plan.json": hard("some", 5),
	})
	alone := map[string][]diag.Finding{}
	for id, path := range map[string]string{"few": "a-few.plan.json", "many": "b-many.plan.json", "some": "c-some.plan.json"} {
		alone[id] = findings(t, littleRun(t, Config{Paths: []string{path}}), id)
	}
	if n := unsettled(alone["many"]); n == 0 || n == unsettled(alone["few"]) {
		t.Fatalf("%d cuttings of many and %d of few are not settled: the budget shows nowhere", n, unsettled(alone["few"]))
	}
	for _, jobs := range []int{1, 3} {
		r := littleRun(t, Config{Paths: []string{"."}, Jobs: jobs})
		for id, want := range alone {
			if diff := cmp.Diff(want, findings(t, r, id)); diff != "" {
				t.Errorf("%s in a line of %d jobs:\n%s", id, jobs, diff)
			}
		}
	}
	kept := newMemory()
	exported := littleRun(t, kept.config(Config{Paths: []string{"b-many.plan.json"}}))
	gather := kept.config(Config{Paths: []string{"b-many.plan.json"}})
	gather.Gather = true
	gathered := littleRun(t, gather)
	if diff := cmp.Diff(findings(t, exported, "many"), findings(t, gathered, "many")); diff != "" {
		t.Errorf("gathered:\n%s", diff)
	}
}

// The order in which a plan lists its sizes decides nothing: each size gets the
// same verdict in the same words.
func TestOrderOfSizesDecidesNothing(t *testing.T) {
	forth := hard("many", 9)
	back := forth
	names := regexp.MustCompile(`size-0\d`).FindAllString(forth, -1)
	for i, name := range slices.Compact(slices.Sorted(slices.Values(names))) { // the first becomes the last
		back = strings.ReplaceAll(back, `"`+name+`"`, fmt.Sprintf(`"turned-%02d"`, 8-i))
	}
	back = sortedSizes(t, back)
	for _, tables := range []bool{false, true} {
		folder(t, map[string]string{"forth.plan.json": forth, "back.plan.json": back})
		says := func(path string) (all []string) {
			for _, f := range findings(t, littleRun(t, Config{Paths: []string{path}, Tables: tables}), "many") {
				if strings.HasPrefix(f.Rule, "fabric/") {
					all = append(all, f.Rule+": "+f.Message)
				}
			}
			slices.Sort(all)
			return all
		}
		a, b := says("forth.plan.json"), says("back.plan.json")
		if len(a) == 0 || !slices.Equal(a, b) {
			t.Errorf("tables %t:\n%s", tables, cmp.Diff(a, b))
		}
	}
}

// No plan costs more than its budget, but for what each of its questions takes
// at least.
func TestHostilePlansKeepToTheirBudget(t *testing.T) {
	for _, p := range hostile.Plans() {
		t.Run(p.Name, func(t *testing.T) {
			if !slices.Contains([]string{"near-the-area", "near-the-bound", "many-cuts-printed", "precuts", "mosaics", "widths"}, p.Name) {
				t.Skip("its cuttings are not what it is hard by")
			}
			folder(t, map[string]string{"a.plan.json": string(p.Text)})
			l := newLine(Config{Paths: []string{"a.plan.json"}})
			l.budgets = little
			var spent, asked int
			l.watch = func(p *purse) { spent, asked = p.spent, len(p.answers) }
			if _, err := l.run(t.Context()); err != nil {
				t.Fatal(err)
			}
			const beyond = 50_000 // a search notices late that its part is spent
			if most := little.check*3/2 + beyond*asked; spent > most {
				t.Errorf("%d questions cost %d, and %d is allowed", asked, spent, little.check)
			}
		})
	}
}

// A plan that needs little gets all that it needs, whatever others leave.
func TestWhatIsLeftGoesToThoseThatNeedIt(t *testing.T) {
	p := newPurse(1000, 5)
	if p.share != 64 { // a hundred each of half of it, rounded down to a power of two
		t.Fatalf("the first share is %d", p.share)
	}
	need := map[string]int{"small": 10, "middle": 60, "large": 300, "huge": 1 << 20}
	ask := func(order ...string) (got map[string]int) {
		got = map[string]int{}
		for _, key := range order {
			a := p.ask(key, func(allowance int) answer {
				a := answer{allowance: allowance}
				a.spent.Work, a.spent.Short = min(need[key], allowance), need[key] > allowance
				return a
			})
			got[key] = a.spent.Work
		}
		return got
	}
	if got := ask("huge", "small", "large", "middle"); got["huge"] != 64 || got["small"] != 10 || got["large"] != 64 || got["middle"] != 60 {
		t.Errorf("the first time round: %v", got)
	}
	if !p.again() {
		t.Fatal("what is left is not used")
	}
	// 1000 less 64, 10, 64 and 60 are 802, which two share.
	if got := ask("middle", "large", "small", "huge"); got["large"] != 300 || got["huge"] != 401 || got["small"] != 10 || got["middle"] != 60 {
		t.Errorf("the second time round: %v", got)
	}
	if p.again() { // 101 are left
		t.Error("a share that is no larger is granted")
	}
}

// sortedSizes writes a plan's members in the order of their names, as the
// generator does.
func sortedSizes(t *testing.T, text string) string {
	t.Helper()
	sorted, err := hostile.Sorted([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return string(sorted)
}
