package jsontree

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"yardproof/schema/source"
)

func TestDepth(t *testing.T) {
	nested := func(open, close string, depth int) string {
		return strings.Repeat(open, depth) + strings.Repeat(close, depth)
	}
	parse(t, nested("[", "]", 64))
	parse(t, `{"a":`+nested(`[{"a":`, "}]", 31)[:31*6]+"[]"+strings.Repeat("}]", 31)+"}")
	const message = ` schema/too-deep "[": objects and arrays stand more than 64 deep inside one another here; nest them less deeply`
	checkProblems(t, []problemCase{
		{"one too many", nested("[", "]", 65), "1:65" + message},
		{"a hundred thousand", nested("[", "]", 100_000), "1:65" + message},
		{"a hundred thousand, never closed", strings.Repeat("[", 100_000), "1:65" + message},
		{"objects", strings.Repeat("{\"a\":\n", 100_000), `65:1 schema/too-deep "{": objects and arrays stand more than 64 deep inside one another here; nest them less deeply`},
	}, false)
}

// Even a caller's own limit does not reach the tokeniser's.
func TestDepthBeyondTokeniser(t *testing.T) {
	_, problems := Parse(source.New("f", []byte(strings.Repeat("[", 20_000))), Limits{MaxDepth: 1 << 40})
	if len(problems) != 1 || problems[0].Code != codeDeep || problems[0].Range.Start != 9_999 {
		t.Errorf("problems = %v, want one, too deep, at 9999", problems)
	}
}

func TestSize(t *testing.T) {
	lim := Limits{MaxBytes: 10}
	if n, problems := Parse(source.New("f", []byte(`[1,2,3,45]`)), lim); n == nil {
		t.Errorf("10 bytes are refused: %v", problems)
	}
	f := source.New("f", []byte("[1,2,3,45]\n"))
	n, problems := Parse(f, lim)
	const want = `1:1 schema/too-large "": the file holds more than 10 bytes; split the file, or check that it is a plan at all`
	if got := told(f, problems); n != nil || got != want {
		t.Errorf("11 bytes: %s\nwant %s", got, want)
	}
	f = source.New("f", make([]byte, 8<<20+1))
	_, problems = Parse(f, DefaultLimits())
	const large = `1:1 schema/too-large "": the file holds more than 8 MiB (8,388,608 bytes); split the file, or check that it is a plan at all`
	if got := told(f, problems); got != large {
		t.Errorf("8 MiB and a byte: %s\nwant %s", got, large)
	}
}

func TestValues(t *testing.T) {
	lim := Limits{MaxValues: 4}
	if n, problems := Parse(source.New("f", []byte(`[1,2,{}]`)), lim); n == nil {
		t.Errorf("4 values are refused: %v", problems)
	}
	f := source.New("f", []byte(`[1,2,{},"x"]`))
	n, problems := Parse(f, lim)
	const want = `1:9 schema/too-large "\"x\"": the file holds more than 4 values; split the file`
	if got := told(f, problems); n != nil || got != want {
		t.Errorf("5 values: %s\nwant %s", got, want)
	}
}

func TestManyProblems(t *testing.T) {
	f := source.New("f", []byte("{"+strings.Repeat(`"a":1,`, 5000)+"]"))
	_, problems := Parse(f, Limits{MaxProblems: 3})
	const hint = "; remove one of them, or give it another name"
	var want strings.Builder
	for _, column := range []int{8, 14, 20} {
		fmt.Fprintf(&want, `1:%d schema/duplicate-key "\"a\"": two keys named "a": the first is on the same line, at column 2%s`+"\n", column, hint)
	}
	want.WriteString(`1:30002 schema/not-json "]": ] meets the object that opens at line 1, column 1; } was wanted (4,996 more problems are not shown); close the object with }, or remove the ]`)
	if got := told(f, problems); got != want.String() {
		t.Errorf("problems:\n%s\nwant:\n%s", got, want.String())
	}
}

// Values that would cost a careless reader seconds or its stack.
func TestHostile(t *testing.T) {
	tests := []struct {
		name, text, code string
	}{
		{"number of a million digits", strings.Repeat("7", 1_000_000), codeNumber},
		{"fraction of a million digits", "[0." + strings.Repeat("7", 1_000_000) + "]", codeNumber},
		{"exponent of a million digits", "[1e" + strings.Repeat("7", 1_000_000) + "]", codeNumber},
		{"four million values", "[" + strings.Repeat("0,", 4_000_000) + "0]", codeLarge},
		{"a million equal keys", "{" + strings.Repeat(`"a":0,`, 1_000_000) + `"b":0}`, codeDuplicate},
		{"a million halves of pairs", `["` + strings.Repeat(`\ud83e`, 1_000_000) + `"]`, codeEncoding},
		{"eight million quotation marks", strings.Repeat(`"`, 8_000_000), codeTrailing},
		{"eight million backslashes", `"` + strings.Repeat(`\`, 8_000_000), codeNotJSON},
		{"a megabyte of a word", "[" + strings.Repeat("x", 1<<20), codeNotJSON},
		{"a megabyte of a name", "{" + strings.Repeat("x", 1<<20), codeNotJSON},
		{"a megabyte after a number", `{"a": 1` + strings.Repeat(" x", 1<<19), codeNotJSON},
		{"eight megabytes of bad bytes", strings.Repeat("\xff", 8_000_000), codeEncoding},
		{"eight megabytes of NUL", strings.Repeat("\x00", 8_000_000), codeNotJSON},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := source.New("f", []byte(tt.text))
			n, problems := Parse(f, DefaultLimits())
			if n != nil || len(problems) == 0 || problems[0].Code != tt.code {
				t.Fatalf("tree: %v, problems: %d, want code %s", n != nil, len(problems), tt.code)
			}
			for _, p := range problems {
				if len(p.Message)+len(p.Hint) > 500 {
					t.Errorf("a message has %d bytes", len(p.Message)+len(p.Hint))
				}
			}
		})
	}
}

func TestTruncated(t *testing.T) {
	text := strings.TrimSpace(string(sample(t)))
	parse(t, text)
	for end := range len(text) {
		cut := []byte(text[:end])
		f := source.New("f", cut)
		n, problems := Parse(f, DefaultLimits())
		want := codeNotJSON
		if end == 0 {
			want = codeEmpty
		} else if !utf8.Valid(cut) {
			want = codeEncoding
		}
		if json.Valid(cut) || n != nil || len(problems) != 1 || problems[0].Code != want {
			t.Fatalf("cut after %d bytes: tree %v, problems %v, want one %s", end, n != nil, problems, want)
		}
		if want == codeNotJSON && !strings.Contains(problems[0].Message, "the file ends") {
			t.Errorf("cut after %d bytes, %q: %s", end, cut[max(0, end-20):], problems[0].Message)
		}
	}
}
