package diag

import (
	"encoding/json"
	"strings"
	"testing"

	"yardproof/schema/source"
)

// Every level has a word that reads back, and no other word is one.
func TestLevelWords(t *testing.T) {
	for _, l := range []Level{Note, Warning, Error} {
		if got, ok := ParseLevel(l.String()); !ok || got != l {
			t.Errorf("%s reads as %s, %v", l, got, ok)
		}
	}
	for _, word := range []string{"", "off", "Error", "fatal"} {
		if l, ok := ParseLevel(word); ok {
			t.Errorf("%q is the level %s", word, l)
		}
	}
	if got := Level(0).String(); got != "off" {
		t.Errorf("no level is %q", got)
	}
}

func TestPlaceIsNamedAsFarAsItIsKnown(t *testing.T) {
	for want, p := range map[string]Place{
		"a.plan.json":             {File: "a.plan.json"},
		"a.plan.json:3:7":         {File: "a.plan.json", Start: source.Position{Line: 3, Column: 7}},
		"mill.xlsx!Cotton!D17":    {File: "mill.xlsx", Cell: "Cotton!D17"},
		"mill.xlsx!Cotton!D17 + ": {File: "mill.xlsx", Cell: "Cotton!D17 + ", Start: source.Position{Line: 1, Column: 1}},
	} {
		if got := p.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Findings are put in order by file, place, rule and message, each deciding only
// where those before it are equal, and what is equal in all of them is told once.
func TestSort(t *testing.T) {
	at := func(file string, start, end int, rule, message string) Finding {
		return Finding{Rule: rule, Message: message, Place: Place{File: file, Range: source.Range{Start: start, End: end}}}
	}
	want := []Finding{
		at("a", 9, 9, "z", "z"), at("b", 1, 2, "z", "z"), at("b", 1, 3, "a", "b"),
		at("b", 1, 3, "b", "a"), at("b", 1, 3, "b", "b"), at("b", 2, 2, "a", "a"),
	}
	got := Sort([]Finding{want[5], want[3], want[4], want[3], want[1], want[2], want[0], want[5]})
	if len(got) != len(want) {
		t.Fatalf("%d findings, want %d", len(got), len(want))
	}
	for i := range want {
		if Compare(got[i], want[i]) != 0 {
			t.Errorf("%d is %+v, want %+v", i, got[i], want[i])
		}
	}
}

func TestWorst(t *testing.T) {
	if got := Worst(nil); got != 0 {
		t.Errorf("of none %s", got)
	}
	if got := Worst([]Finding{{Level: Note}, {Level: Error}, {Level: Warning}}); got != Error {
		t.Errorf("%s, want an error", got)
	}
}

// What is said of JSON that is not ours names no type of the program.
func TestJSONFault(t *testing.T) {
	for text, want := range map[string]string{
		`{"count": "two"}`: `a JSON string does not belong at "count"`,
		`[]`:               `a JSON array does not belong there`,
		`{"count": 2`:      `unexpected end of JSON input`,
		`{"more": 2}`:      `unknown field "more"`,
	} {
		if got := JSONFault(strictly(text)); got.Error() != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

func strictly(text string) error {
	var kept struct {
		Count int64 `json:"count"`
	}
	if err := json.Unmarshal([]byte(text), &kept); err != nil {
		return err
	}
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	return d.Decode(&kept)
}
