package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/bolts"
	"yardproof/pipeline/internal/supply"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store/handed"
)

// sound is an invented plan that nothing is wrong with. NAME stands for its id.
const sound = `{
  "format": 1, "id": "NAME", "title": "Four Fields NAME", "revision": "1", "status": "published",
  "skill": "beginner", "use": "wall", "units": "in", "cautions": ["rotary-cutter", "iron"],
  "seam": { "allowance": "1/4", "stitch": "301" },
  "fabrics": { "field": { "name": "Field", "yardage": { "usable_width": "40" } } },
  "parts": { "patch": { "cut": { "fabric": "field", "square": "10 1/2" } } },
  "layout": { "grid": { "rows": 2, "columns": 2, "blocks": [["patch"]] } },
  "sizes": { "wall": {} },
  "printed": { "wall": { "finished": ["20", "20"], "parts": { "patch": 4 }, "fabric": { "field": "5/8 yd" } } }
}
`

func named(text, name string) string { return strings.ReplaceAll(text, "NAME", name) }

// short is the plan with one part too many printed, which is an error.
func short(name string) string {
	return strings.Replace(named(sound, name), `"patch": 4`, `"patch": 5`, 1)
}

// folder writes files, named by slash paths, to a folder of their own and makes
// it the current one.
func folder(t *testing.T, files map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range files {
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func run(t *testing.T, c Config) *report.Run {
	t.Helper()
	r, err := Run(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// rules are the rules of all findings, in the order of the run.
func rules(r *report.Run) []string {
	var names []string
	for _, f := range r.All() {
		names = append(names, f.Rule)
	}
	return names
}

// kept collects the ids of the plans that are handed on.
type kept struct {
	mu  sync.Mutex
	ids []string
}

func (k *kept) each(_ context.Context, p *report.Plan) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.ids = append(k.ids, p.ID)
	return nil
}

func (k *kept) sorted() []string { return slices.Sorted(slices.Values(k.ids)) }

func TestRunIsTheSameForAnyJobs(t *testing.T) {
	files := map[string]string{"broken.plan.json": "{", "empty.plan.json": ""}
	for i := range 30 {
		name := fmt.Sprintf("plan-%02d", i)
		text := named(sound, name)
		if i%3 == 0 {
			text = short(name)
		}
		files[name+".plan.json"] = text
	}
	files["again.plan.json"] = named(sound, "plan-01")
	folder(t, files)
	tables := func(jobs int) (*report.Run, map[string]*report.Plan) {
		var mu sync.Mutex
		plans := map[string]*report.Plan{}
		r := run(t, Config{Paths: []string{"."}, Jobs: jobs, Tables: true, Draft: true, Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			mu.Lock()
			defer mu.Unlock()
			plans[p.ID] = p
			return nil
		}}})
		return r, plans
	}
	one, onePlans := tables(1)
	many, manyPlans := tables(8)
	if !reflect.DeepEqual(one, many) {
		t.Errorf("the run differs between 1 and 8 jobs:\n%v\n%v", one, many)
	}
	if len(onePlans) != 30 || !reflect.DeepEqual(sheetsOf(onePlans), sheetsOf(manyPlans)) {
		t.Errorf("%d plans with 1 job, %d with 8, or their sheets differ", len(onePlans), len(manyPlans))
	}
	if len(one.Plans) != 33 {
		t.Errorf("%d outcomes, wanted 33", len(one.Plans))
	}
}

func sheetsOf(plans map[string]*report.Plan) map[string][]report.Sheet {
	all := map[string][]report.Sheet{}
	for id, p := range plans {
		all[id] = p.Sheets
	}
	return all
}

// A crash, an output that cannot be written, and a plan with errors must keep
// no other plan from being handed on.
func TestTroubleStaysWithItsPlan(t *testing.T) {
	folder(t, map[string]string{
		"a.plan.json": named(sound, "a"), "b.plan.json": named(sound, "b"),
		"c.plan.json": named(sound, "c"), "d.plan.json": short("d"),
	})
	var k kept
	r := run(t, Config{Paths: []string{"."}, Jobs: 1, Tables: true, Sink: handed.On{EachPlan: func(ctx context.Context, p *report.Plan) error {
		switch p.ID {
		case "a":
			panic("a thread broke")
		case "b":
			return errors.New("write out/b.xlsx: disk full")
		}
		return k.each(ctx, p)
	}}})
	if got := k.sorted(); !slices.Equal(got, []string{"c"}) {
		t.Errorf("handed on: %v, wanted c", got)
	}
	if got := rules(r); !slices.Equal(got, []string{"run/crash", "run/write", "printed/parts"}) {
		t.Fatalf("rules: %v", got)
	}
	crash := r.All()[0]
	for _, word := range []string{`"a"`, "exporting", "a thread broke"} {
		if !strings.Contains(crash.Message, word) {
			t.Errorf("the crash does not say %s: %s", word, crash.Message)
		}
	}
	if crash.Place.File != "a.plan.json" || crash.Level != diag.Error {
		t.Errorf("the crash is %v at %s", crash.Level, crash.Place.File)
	}
	for _, p := range r.Plans {
		if want := p.ID == "c"; p.Exported != want {
			t.Errorf("%s exported: %v", p.ID, p.Exported)
		}
	}
}

func TestCrashOfTheLine(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a")})
	r := run(t, Config{Paths: []string{"."}, Tables: true, Sink: handed.On{WholeLine: func(context.Context, *report.Run) error { panic("no paper") }}})
	if got := rules(r); !slices.Equal(got, []string{"run/crash"}) {
		t.Errorf("rules: %v, wanted run/crash", got)
	}
}

func TestDraftHandsOnWhatIsNotProved(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a"), "d.plan.json": short("d"), "torn.plan.json": `{ "id": "torn" }`})
	for _, draft := range []bool{false, true} {
		proved := map[string]bool{}
		run(t, Config{Paths: []string{"."}, Jobs: 1, Tables: true, Draft: draft, Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			proved[p.ID] = p.Proved
			return nil
		}}})
		want := map[string]bool{"a": true}
		if draft {
			want["d"] = false
		}
		if !reflect.DeepEqual(proved, want) {
			t.Errorf("draft %v: handed on, and proved: %v, wanted %v", draft, proved, want)
		}
	}
}

// Which of two plans of one id would be written last is chance, so that only
// the first may be handed on.
func TestTwinsAreNotHandedOn(t *testing.T) {
	folder(t, map[string]string{"b.plan.json": named(sound, "same"), "a.plan.json": named(sound, "same"), "c.plan.json": named(sound, "SAME")})
	for _, draft := range []bool{false, true} {
		var files []string
		run(t, Config{Paths: []string{"."}, Jobs: 1, Tables: true, Draft: draft, Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			files = append(files, p.File)
			return nil
		}}})
		if !slices.Equal(files, []string{"a.plan.json"}) {
			t.Errorf("draft %v: handed on %v, wanted a.plan.json", draft, files)
		}
	}
}

func TestInterrupt(t *testing.T) {
	files := map[string]string{}
	for i := range 20 {
		name := fmt.Sprintf("plan-%02d", i)
		files[name+".plan.json"] = named(sound, name)
	}
	folder(t, files)
	ctx, cancel := context.WithCancel(t.Context())
	r, err := Run(ctx, Config{
		Paths: []string{"."}, Jobs: 1, Tables: true,
		Sink: handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			if p.ID == "plan-04" {
				cancel()
			}
			return nil
		}, WholeLine: func(context.Context, *report.Run) error {
			t.Error("the line was handed on, though it is incomplete")
			return nil
		}},
	})
	if err != nil {
		t.Fatal(err)
	}
	if got := rules(r); !slices.Equal(got, []string{"run/interrupted"}) {
		t.Fatalf("rules: %v, wanted run/interrupted", got)
	}
	if len(r.Plans) != 5 || !strings.Contains(r.Findings[0].Message, "15 of 20") {
		t.Errorf("%d outcomes, wanted 5; %s", len(r.Plans), r.Findings[0].Message)
	}
}

func TestInterruptedBeforeTheStart(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a")})
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	r, err := Run(ctx, Config{Paths: []string{"."}})
	if err != nil || !slices.Contains(rules(r), "run/interrupted") {
		t.Errorf("error %v, rules %v", err, rules(r))
	}
}

// Whoever writes outputs learns what is read, and can stop the run before it
// has begun.
func TestInputs(t *testing.T) {
	folder(t, map[string]string{
		"line/a.plan.json": named(sound, "a"), "line/yardproof.json": `{ "format": 1, "currency": "USD", "prices": "p/list.csv" }`,
		"line/p/list.csv": "sku,description,unit,price\n", "line/notes.txt": "",
	})
	refused := errors.New("refused")
	var told []string
	_, err := Run(t.Context(), Config{
		Paths: []string{"line"}, Tables: true,
		Reads: func(_, files []string) error {
			told = files
			return refused
		},
		Sink: handed.On{EachPlan: func(context.Context, *report.Plan) error {
			t.Error("a plan was handed on")
			return nil
		}},
	})
	if !errors.Is(err, refused) {
		t.Errorf("error %v", err)
	}
	want := []string{"line/a.plan.json", "line/p/list.csv", "line/yardproof.json"}
	for i := range told {
		told[i] = filepath.ToSlash(told[i])
	}
	if slices.Sort(told); !slices.Equal(told, want) {
		t.Errorf("inputs %v, wanted %v", told, want)
	}
}

func TestProgressCountsEveryPlanOnce(t *testing.T) {
	files := map[string]string{"torn.plan.json": "{"}
	for i := range 12 {
		name := fmt.Sprintf("plan-%02d", i)
		files[name+".plan.json"] = named(sound, name)
	}
	folder(t, files)
	var seen []int
	begun := map[string]bool{}
	var last Progress
	run(t, Config{Paths: []string{"."}, Jobs: 4, Progress: func(p Progress) {
		if p.Total != 13 || p.Of != "" {
			t.Errorf("%+v: wanted 13 plans of no revision", p)
		}
		if p.Done > 0 && (len(seen) == 0 || seen[len(seen)-1] != p.Done) {
			seen = append(seen, p.Done)
		}
		begun[p.At] = true
		last = p
	}})
	want := []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13}
	if !slices.Equal(seen, want) {
		t.Errorf("progress %v, wanted %v", seen, want)
	}
	if len(begun) < 3 || last != (Progress{Done: 13, Total: 13, At: wholeLine}) {
		t.Errorf("worked on were %v; the last was %+v", begun, last)
	}
}

// The same mistake of a size's merged recipe and of the recipe itself is one
// complaint.
func TestOneComplaintForAllSizes(t *testing.T) {
	text := strings.Replace(named(sound, "a"), `"sizes": { "wall": {} }`, `"sizes": { "wall": {}, "small": { "use": "cot" }, "large": { "use": "bed" } }`, 1)
	text = strings.Replace(text, `"stitch": "301"`, `"stitch": "302"`, 1)
	folder(t, map[string]string{"a.plan.json": text})
	r := run(t, Config{Paths: []string{"."}})
	if got := rules(r); !slices.Equal(got, []string{"schema/not-allowed"}) {
		t.Errorf("rules %v, wanted schema/not-allowed once", got)
	}
}

// What a project accepts is kept with its reason, and where that stands.
func TestExcused(t *testing.T) {
	settings := `{ "format": 1, "exceptions": [{ "rule": "printed/parts", "plan": "d", "reason": "one is spare" }] }`
	folder(t, map[string]string{"yardproof.json": settings, "d.plan.json": short("d")})
	r := run(t, Config{Paths: []string{"."}})
	if len(r.All()) != 0 || r.Plans[0].Accepted != 1 || len(r.Plans[0].Excused) != 1 {
		t.Fatalf("findings %v, accepted %d, excused %v", rules(r), r.Plans[0].Accepted, r.Plans[0].Excused)
	}
	e := r.Plans[0].Excused[0]
	if e.Finding.Rule != "printed/parts" || e.Reason != "one is spare" || e.Place.File != "yardproof.json" ||
		e.Place.Pointer != "/exceptions/0" || settings[e.Place.Range.Start] != '{' {
		t.Errorf("excused: %+v", e)
	}
}

// A plan whose project cannot be used is read and not judged, and says so.
func TestWaits(t *testing.T) {
	folder(t, map[string]string{"a/yardproof.json": `{ "format": 2 }`, "a/d.plan.json": short("d"), "e.plan.json": short("e")})
	r := run(t, Config{Paths: []string{"."}})
	if got := rules(r); !slices.Equal(got, []string{"schema/not-allowed", "printed/parts"}) {
		t.Errorf("rules %v", got)
	}
	if d, e := r.Plans[0], r.Plans[1]; !d.Waits || e.Waits || d.Title == "" {
		t.Errorf("d waits: %v (title %q), e waits: %v", d.Waits, d.Title, e.Waits)
	}
}

// What is to be ordered must not seem to be nothing because the bolt plan failed:
// no sheets of the line are handed on.
func TestABoltPlanThatDoesNotHoldStopsTheLine(t *testing.T) {
	kit := `"kit": { "fabrics": ["field"], "run": 20, "minutes": 0, "margin": "0%", "price": "40.00" }, "sizes"`
	text := strings.Replace(strings.Replace(named(sound, "a"), `"sizes"`, kit, 1), `"usable_width": "40" }`, `"usable_width": "40" }, "sku": "F"`, 1)
	folder(t, map[string]string{
		"a.plan.json": text, "prices.csv": "sku,description,unit,price\nF,Field,yd,9.00\n",
		"yardproof.json": `{ "format": 1, "currency": "EUR", "prices": "prices.csv" }`,
	})
	for _, c := range []struct {
		solver supply.Solver
		rules  []string
	}{
		{bolts.Solve, nil},
		{func(bolts.Article, []bolts.Want) (bolts.Plan, error) { return bolts.Plan{Proved: true}, nil }, []string{"run/crash"}},
	} {
		reached := false
		l := newLine(Config{Paths: []string{"."}, Tables: true, Sink: handed.On{WholeLine: func(context.Context, *report.Run) error { reached = true; return nil }}})
		l.bolts = c.solver
		r, err := l.run(t.Context())
		if err != nil || !slices.Equal(rules(r), c.rules) || reached != (c.rules == nil) {
			t.Errorf("%v, %v, handed on: %v, wanted %v", err, r.All(), reached, c.rules)
		}
	}
}

// What a run hangs on stays in sight: what is remembered and written is behind
// two interfaces, and two functions are told of the run.
func TestConfigHangsOnLittle(t *testing.T) {
	count := map[reflect.Kind]int{}
	for f := range reflect.TypeFor[Config]().Fields() {
		count[f.Type.Kind()]++
	}
	if count[reflect.Interface] > 2 || count[reflect.Func] > 2 {
		t.Errorf("%d interfaces and %d functions", count[reflect.Interface], count[reflect.Func])
	}
}
