package pipeline

import (
	"context"
	"encoding/json"
	"os"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/pipeline/store/handed"
	"yardproof/schema/plan"
	"yardproof/scripts/fixtures/fixture"
)

// memory keeps results from run to run, and counts what is handed on.
type memory struct {
	mu      sync.Mutex
	kept    map[string][]byte
	written map[string]string // bases, by plan
	line    string
	handed  []string
	lines   int
}

func (m *memory) config(c Config) Config {
	c.Tables, c.Version, c.Memory, c.Sink = true, "v1", m, m
	return c
}

func (m *memory) Recall(file string) *store.Result {
	m.mu.Lock()
	kept := m.kept[file]
	m.mu.Unlock()
	r, err := store.DecodeResult(kept)
	if err != nil {
		return nil
	}
	return r
}

func (m *memory) Keep(r *store.Result) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.kept[r.File] = r.Encode()
	return nil
}

func (m *memory) Begin([]string) {}

func (m *memory) Has(file, basis string) bool {
	m.mu.Lock()
	defer m.mu.Unlock()
	if file == "" {
		return m.line == basis
	}
	return m.written[file] == basis
}

func (m *memory) Plan(_ context.Context, p *report.Plan) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.handed = append(m.handed, p.ID)
	m.written[p.File] = p.Basis
	return nil
}

func (m *memory) Line(_ context.Context, r *report.Run) error {
	m.lines++
	m.line = r.Basis
	return nil
}

func (m *memory) End(context.Context, bool) (store.Left, error) { return store.Left{}, nil }

func newMemory() *memory { return &memory{kept: map[string][]byte{}, written: map[string]string{}} }

// again runs, and gives the run and the plans that were handed on, sorted.
func (m *memory) again(t *testing.T, c Config) (*report.Run, []string) {
	t.Helper()
	m.handed, m.lines = nil, 0
	r := run(t, m.config(c))
	slices.Sort(m.handed)
	return r, m.handed
}

// priced is a sound plan with a kit whose fabric has an article.
func priced(id, sku string) string {
	text := strings.Replace(named(sound, id), `"name": "Field"`, `"name": "Field", "sku": "`+sku+`"`, 1)
	return strings.Replace(text, `"sizes"`, `"kit": { "fabrics": ["field"], "minutes": 30, "price": "40.00" }, "sizes"`, 1)
}

func save(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

const shop = `{ "format": 1, "currency": "USD", "labour_rate": "18.00", "margin": "40%", "run": 10, "prices": "prices.csv" }`

func shopList(a, b, unused string) string {
	return "sku,description,unit,price\nA,Field,yd," + a + "\nZ,Unused,yd," + unused + "\nB,Field,yd," + b + "\n"
}

// Each change redoes the plans that follow from it and no others, and the run
// says what a run from nothing says.
func TestRecall(t *testing.T) {
	first := map[string]string{
		"yardproof.json": shop, "prices.csv": shopList("11.00", "9.00", "5.00"),
		"a.plan.json": priced("a", "A"), "b.plan.json": priced("b", "B"), "c.plan.json": strings.Replace(named(sound, "c"), "5/8 yd", "3/4 yd", 1),
	}
	cases := []struct {
		name   string
		change func(*testing.T)
		redone []string
		line   int
	}{
		{"nothing", func(*testing.T) {}, nil, 0},
		{"a plan", func(t *testing.T) {
			save(t, "a.plan.json", strings.Replace(priced("a", "A"), `"revision": "1"`, `"revision": "2"`, 1))
		}, []string{"a"}, 0},
		{"a price that no plan uses", func(t *testing.T) { save(t, "prices.csv", shopList("11.00", "9.00", "6.00")) }, nil, 0},
		{"a price that one uses", func(t *testing.T) { save(t, "prices.csv", shopList("11.00", "9.50", "5.00")) }, []string{"b"}, 1},
		{"a price less", func(t *testing.T) { save(t, "prices.csv", "sku,description,unit,price\nB,Field,yd,9.00\n") }, nil, 1},              // an error: a is not exported
		{"the margin", func(t *testing.T) { save(t, "yardproof.json", strings.Replace(shop, "40%", "50%", 1)) }, []string{"a", "b", "c"}, 1}, // the line shows it as the target
		{"the layout of the settings", func(t *testing.T) { save(t, "yardproof.json", strings.ReplaceAll(shop, ", ", ",\n")) }, nil, 0},
		{"the studio", func(t *testing.T) { save(t, "yardproof.json", strings.Replace(shop, "1,", `1, "studio": "S",`, 1)) }, []string{"a", "b", "c"}, 1}, // labels name it
		{"a level", func(t *testing.T) {
			save(t, "yardproof.json", strings.Replace(shop, "1,", `1, "rules": { "fabric/generous": "warning" },`, 1))
		}, []string{"c"}, 1},
		{"an exception", func(t *testing.T) {
			save(t, "yardproof.json", strings.Replace(shop, "1,", `1, "exceptions": [{ "rule": "fabric/generous", "plan": "c", "reason": "so" }],`, 1))
		}, []string{"c"}, 1},
		{"a plan is deleted", func(t *testing.T) { os.Remove("b.plan.json") }, nil, 1},
		{"a plan is renamed", func(t *testing.T) { os.Rename("b.plan.json", "d.plan.json") }, []string{"b"}, 1},
		{"a plan takes another's id", func(t *testing.T) { save(t, "b.plan.json", priced("a", "B")) }, nil, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			folder(t, first)
			m := newMemory()
			if _, handed := m.again(t, Config{Paths: []string{"."}}); len(handed) != 3 || m.lines != 1 {
				t.Fatalf("the first run hands on %v", handed)
			}
			c.change(t)
			got, handed := m.again(t, Config{Paths: []string{"."}})
			if !slices.Equal(handed, c.redone) || m.lines != c.line {
				t.Errorf("%v are redone and the line %d times; wanted %v, %d", handed, m.lines, c.redone, c.line)
			}
			want, _ := newMemory().again(t, Config{Paths: []string{"."}})
			if got.Sheets = want.Sheets; !reflect.DeepEqual(got, want) {
				t.Errorf("the run differs from one from nothing:\n%s\nwant\n%s", asJSON(got), asJSON(want))
			}
		})
	}
}

// The stock of an article counts for its plans once the article is no longer made.
func TestRecallAndStock(t *testing.T) {
	list := "sku,description,unit,price,discontinued\nA,Field,yd,11.00,yes\nB,Field,yd,9.00,\n"
	folder(t, map[string]string{
		"yardproof.json": strings.Replace(shop, `"prices"`, `"stock": "stock.csv", "prices"`, 1), "prices.csv": list,
		"stock.csv": "item,quantity,unit\nA,10,yd\nB,10,yd\n", "a.plan.json": priced("a", "A"), "b.plan.json": priced("b", "B"),
	})
	m := newMemory()
	if _, handed := m.again(t, Config{Paths: []string{"."}}); len(handed) != 2 {
		t.Fatalf("the first run hands on %v", handed)
	}
	for stock, redone := range map[string][]string{"A,10,yd\nB,9,yd": nil, "A,9,yd\nB,9,yd": {"a"}, "A,9,yd\na/wall,5,kit\nb/wall,5,kit\n": {"a"}} {
		m := newMemory()
		m.again(t, Config{Paths: []string{"."}})
		save(t, "stock.csv", "item,quantity,unit\n"+stock)
		if _, handed := m.again(t, Config{Paths: []string{"."}}); !slices.Equal(handed, redone) {
			t.Errorf("%q: %v are redone, wanted %v", stock, handed, redone)
		}
		save(t, "stock.csv", "item,quantity,unit\nA,10,yd\nB,10,yd\n")
	}
}

func asJSON(v any) string {
	b, _ := json.MarshalIndent(v, "", " ")
	return string(b)
}

// Another program, another name of the file and another day give the right
// answer, whatever is kept.
func TestRecallRefuses(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a")})
	m := newMemory()
	m.again(t, Config{Paths: []string{"."}})
	c := m.config(Config{Paths: []string{"."}})
	m.handed = nil
	c.Version = "v2"
	if run(t, c); len(m.handed) != 1 {
		t.Error("another program takes over what this one found")
	}
	m.kept["a.plan.json"] = []byte(strings.Replace(string(m.kept["a.plan.json"]), `"judged": true`, `"judged": 7`, 1))
	m.written = map[string]string{}
	if _, handed := m.again(t, Config{Paths: []string{"."}}); len(handed) != 1 {
		t.Error("a plan is lost with what is kept of it")
	}
}

// The day is applied afresh to what is kept.
func TestRecallOnAnotherDay(t *testing.T) {
	folder(t, map[string]string{"d.plan.json": short("d"),
		"yardproof.json": `{ "format": 1, "exceptions": [{ "rule": "printed/parts", "plan": "d", "reason": "so", "until": "2027-03-31" }] }`})
	m := newMemory()
	for day, want := range map[int][]string{31: nil, 30: nil} {
		if r, _ := m.again(t, Config{Paths: []string{"."}, Today: plan.Date{Year: 2027, Month: 3, Day: day}}); !slices.Equal(rules(r), want) {
			t.Errorf("day %d: %v", day, rules(r))
		}
	}
	r, _ := m.again(t, Config{Paths: []string{"."}, Today: plan.Date{Year: 2027, Month: 4, Day: 1}})
	if want := []string{"printed/parts", "project/expired-exception"}; !slices.Equal(rules(r), want) {
		t.Errorf("the day after: %v, wanted %v", rules(r), want)
	}
}

// A plan that a rule crashed on, or whose outputs could not be written, is not
// kept: the next run tries again.
func TestTroubleIsNotKept(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a")})
	m := newMemory()
	c := m.config(Config{Paths: []string{"."}})
	c.Sink = handed.On{EachPlan: func(context.Context, *report.Plan) error { return store.ChangedError{Name: "out/a.csv"} }}
	r := run(t, c)
	if want := []string{"run/changed-output"}; !slices.Equal(rules(r), want) || len(m.kept) != 0 {
		t.Errorf("%v, kept %d", rules(r), len(m.kept))
	}
}

// Gathering derives nothing: what is not kept is missing.
func TestGather(t *testing.T) {
	folder(t, map[string]string{"a.plan.json": named(sound, "a"), "b.plan.json": short("b"), "torn.plan.json": "{"})
	m := newMemory()
	want, _ := m.again(t, Config{Paths: []string{"."}})
	got, handed := m.again(t, Config{Paths: []string{"."}, Gather: true})
	if got.Sheets = want.Sheets; len(handed) != 0 || !reflect.DeepEqual(got, want) {
		t.Errorf("gathered:\n%s\nwant\n%s", asJSON(got), asJSON(want))
	}
	save(t, "a.plan.json", strings.Replace(named(sound, "a"), "Four", "Five", 1))
	r, _ := m.again(t, Config{Paths: []string{"."}, Gather: true})
	if !slices.Equal(rules(r), []string{"run/no-result", "printed/parts", "schema/not-json"}) {
		t.Errorf("%v", rules(r))
	}
}

// Whatever is found in the project's own plans, good and broken, is found again
// word for word from what is kept, and hardly anything is worked out twice.
func TestRecallOfEveryFixture(t *testing.T) {
	fixtures := t.TempDir()
	if err := fixture.Write("../testdata/checks", "../testdata/checks", fixtures); err != nil {
		t.Fatal(err)
	}
	for _, paths := range [][]string{{"../testdata/broken"}, {fixtures}} {
		c := Config{Paths: paths, Draft: true, Today: plan.Date{Year: 2027, Month: 3, Day: 31}}
		m := newMemory()
		want, first := m.again(t, c)
		got, second := m.again(t, c)
		if len(first) < 10 || len(second) != 0 {
			t.Errorf("%v: %d plans are handed on, and %v again", paths, len(first), second)
		}
		if got.Sheets = want.Sheets; !reflect.DeepEqual(got, want) {
			t.Errorf("%v: the second run says something else", paths)
		}
		known := 0
		for _, p := range want.Plans {
			if p.Title != "" && m.kept[p.File] != nil {
				known++
			}
			if p.Title != "" && m.kept[p.File] == nil {
				t.Errorf("%s is not kept", p.File)
			}
		}
		if known < 10 {
			t.Errorf("%v: only %d plans are kept", paths, known)
		}
	}
}
