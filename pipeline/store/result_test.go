package store

import (
	"bytes"
	"encoding/json"
	"errors"
	"math/big"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
	"yardproof/schema/source"
)

// invented text with a tab, line ends of three kinds and letters of one to four
// bytes, so that columns are no bytes.
const invented = "{\t\"id\": \"x\",\r\n \"title\": \"½ \U0001f9f5 e\u0301\",\r \"last\": [1,\n2] }"

func at(f *source.File, text, pointer string) diag.Place {
	start := strings.Index(string(f.Bytes), text)
	r := source.Range{Start: start, End: start + len(text)}
	return diag.Place{File: f.Name, Range: r, Pointer: pointer, Start: f.Position(r.Start), End: f.Position(r.End), Excerpt: f.Excerpt(r)}
}

func findings(f *source.File) []diag.Finding {
	return []diag.Finding{
		{Rule: "yield/none", Level: diag.Error, Plan: "x", Place: at(f, "\U0001f9f5", "/title"), Sizes: []string{"cot", "bed"}, Message: "<none> & \"less\"", Hint: "more",
			Related: []diag.Related{{Place: at(f, "[1,\n2]", "/last"), Message: "here"}},
			Follows: []diag.Finding{{Rule: "printed/parts", Level: diag.Warning, Plan: "x", Place: at(f, "2", "/last/1"), Message: "fewer",
				Follows: []diag.Finding{{Rule: "printed/left", Level: diag.Note, Plan: "x", Place: at(f, "x", "/id"), Message: "none left"}}}}},
		{Rule: "publish/skill", Level: diag.Note, Plan: "x", Place: at(f, "", ""), Message: "nothing said"},
	}
}

// kit is one of every member that a kept kit has.
func kit() *line.Kit {
	in := func(name string) string { return `{"name": "` + name + `", "value": "2/3"}` }
	text := `{"currency": "EUR", "own_margin": true, "goods": [{"fabric": "Ground", "sku": "A", "article": "Plain, sand", "unit": "yd"}], "things": [{"fabric": "Label", "unit": "each"}], "costing": {
		"suffix": ".cot", "digits": 2, "materials": [{"quantity": ` + in("quantity") + `, "price": ` + in("price") + `}], "things": [{"quantity": ` + in("labels") + `, "price": ` + in("label") + `}]`
	for _, name := range []string{"minutes", "rate", "packaging", "pattern", "spoilage", "fee_share", "fee_each", "trade", "bought", "fixed", "margin", "asked", "run"} {
		text += `, "` + name + `": ` + in(name)
	}
	kept := new(line.Kit)
	if err := json.Unmarshal([]byte(text+"}}"), kept); err != nil {
		panic(err)
	}
	return kept
}

func full(f *source.File) *Result {
	return &Result{
		Format: ResultFormat, Version: "v1.2.3", File: f.Name, Text: strings.Repeat("0a", 32), Basis: strings.Repeat("1b", 32),
		SKUs: []string{"A"}, ID: "x", IDAt: Span{8, 11}, Title: "X", Status: "draft", Sizes: []string{"cot", "bed"}, Decoded: true, Judged: true,
		Reading: Remembered(findings(f)[1:]), Found: Remembered(findings(f)), Asked: []string{"0c0c"},
		Summary: line.Summary{Sizes: []line.SizeSummary{
			{Name: "cot", Finished: "30 x 40 in", Fabric: "1 yd", Slack: "1/2 in, step", Cost: big.NewRat(1, 3), Price: big.NewRat(40, 1), Kit: kit()}, {Name: "bed"}}},
		Exported: true,
		Exports:  []report.Export{{Format: "csv", Basis: "y", Files: []report.Output{{Name: "x/a.csv", SHA256: strings.Repeat("2c", 32)}}}, {Format: "xlsx", Files: []report.Output{}}},
	}
}

// What is kept comes back as it was, excerpts and columns included, which are
// not kept but follow from the text.
func TestRoundTrip(t *testing.T) {
	f := source.New("x.plan.json", []byte(invented))
	want := findings(f)
	r := full(f)
	back, err := DecodeResult(r.Encode())
	if err != nil {
		t.Fatal(err)
	}
	if got := Recalled(back.Found, f, "x"); !reflect.DeepEqual(got, want) {
		t.Errorf("(-want +got)\n%s", cmp.Diff(want, got))
	}
	if !bytes.Equal(back.Encode(), r.Encode()) {
		t.Error("written again it is another text")
	}
	if !reflect.DeepEqual(back.Summary.Sizes[0].Kit, kit()) {
		t.Error("a kit is another")
	}
	if back.Summary.Sizes[0].Cost.Cmp(big.NewRat(1, 3)) != 0 {
		t.Error("a cost is no longer exact")
	}
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(ResultSchema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("mem:///result.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile("mem:///result.schema.json")
}

// Another validator holds what is written against the schema, which knows no
// other member than are written, and wants those that are always there.
func TestFollowsItsSchema(t *testing.T) {
	schema := compiled(t)
	f := source.New("x.plan.json", []byte(invented))
	whole := string(full(f).Encode())
	check := func(text string) error {
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		return schema.Validate(doc)
	}
	for _, r := range []*Result{full(f), {Format: ResultFormat, Version: "v", File: "a", Text: strings.Repeat("0", 64), Basis: strings.Repeat("0", 64)}} {
		if err := check(string(r.Encode())); err != nil {
			t.Error(err)
		}
	}
	for _, breakage := range [][2]string{
		{`"format": 1`, `"format": 2`}, {`"version"`, `"release"`}, {`"text": "0a`, `"text": "zz`}, {`"start": 8`, `"start": -1`},
		{`"level": "note"`, `"level": "off"`}, {`"status": "draft"`, `"status": "done"`}, {`"rule": "yield/none"`, `"rule": "none"`},
		{`"cost": "1/3"`, `"cost": "0.33"`}, {`"judged": true`, `"judged": 1`}, {`"pointer"`, `"path"`}, {`"finished"`, `"finish"`},
		{`"own_margin": true`, `"own": true`}, {`"value": "2/3"`, `"value": 0.67`}, {`"currency": "EUR"`, `"currency": "euro"`}, {`"sha256": "2c`, `"sha256": "2"`}, {`"related"`, `"others"`},
	} {
		broken := strings.Replace(whole, breakage[0], breakage[1], 1)
		if broken == whole {
			t.Fatalf("nothing to break: %s", breakage[0])
		}
		if strings.Contains(breakage[1], `"2"`) {
			broken = strings.Replace(whole, strings.Repeat("2c", 32), "2c", 1)
		}
		if check(broken) == nil {
			t.Errorf("%s in place of %s follows the schema", breakage[1], breakage[0])
		}
	}
}

func TestDecodeRefuses(t *testing.T) {
	for _, text := range []string{"", "{", "[]", `{"format":2}`, `{"format":1,"speed":1}`, `{"format":1} {}`, `{"format":1,"id_at":7}`, "\xff"} {
		if r, err := DecodeResult([]byte(text)); err == nil {
			t.Errorf("%q is %+v", text, r)
		}
	}
}

// A result that stands for itself is read as it was, and in no other form.
func TestStanding(t *testing.T) {
	r := full(source.New("x.plan.json", []byte(invented)))
	text := r.Standing()
	back, err := ReadResult("r", text, r.Version)
	if err != nil {
		t.Fatal(err)
	}
	if back.Sum = ""; !bytes.Equal(back.Encode(), r.Encode()) {
		t.Error("it came back as another")
	}
	for i := range text {
		changed := bytes.Clone(text)
		if changed[i] ^= 1; changed[i] == text[i] {
			continue
		}
		if _, err := ReadResult("r", changed, r.Version); err == nil {
			t.Fatalf("byte %d can be changed: %q", i, changed[i])
		}
	}
	for _, other := range [][]byte{text[:len(text)-1], append(bytes.Clone(text), '\n'), bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), r.Encode(), nil} {
		if _, err := ReadResult("r", other, r.Version); err == nil {
			t.Errorf("%d bytes are read, too", len(other))
		}
	}
	if _, err := ReadResult("r", text, "v9"); !errors.As(err, new(OtherVersion)) {
		t.Errorf("%v", err)
	}
}

// No message names a type of the program.
func TestFaultsAreInPlainWords(t *testing.T) {
	for _, text := range []string{`{"format":"x"}`, `[]`, `{"id_at":{"start":"x"}}`, `{"found":[{"at":7}]}`, `{"summary":{"sizes":[{"cost":7}]}}`, `{"exports":1}`} {
		if _, err := DecodeResult([]byte(text)); err == nil || strings.Contains(err.Error(), "Go ") || strings.Contains(err.Error(), "json:") || strings.Contains(err.Error(), "store.") || strings.Contains(err.Error(), "big.") {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// FuzzRead takes any bytes for a result.
func FuzzRead(f *testing.F) {
	r := full(source.New("x.plan.json", []byte(invented)))
	f.Add(r.Standing(), false)
	f.Add(r.Encode(), true)
	f.Fuzz(func(t *testing.T, text []byte, kept bool) {
		got, err := ReadResult("r", text, r.Version)
		if kept {
			got, err = DecodeResult(text)
		}
		if err == nil && got == nil {
			t.Fatal("neither a result nor an error")
		}
		if p, ok := errors.AsType[PlacedError](err); ok && (p.Problem.Range.Start < 0 || p.Problem.Range.End < p.Problem.Range.Start || p.Problem.Range.End > len(text)) {
			t.Fatalf("%v points at %v of %d bytes", err, p.Problem.Range, len(text))
		}
	})
}
