package jsontree

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"yardproof/schema/source"
)

// told writes problems as "line:column code `text`: message; hint".
func told(f *source.File, problems []source.Problem) string {
	lines := []string{}
	for _, p := range problems {
		at := f.Position(p.Range.Start)
		lines = append(lines, fmt.Sprintf("%d:%d %s %q: %s; %s", at.Line, at.Column, p.Code, f.Slice(p.Range), p.Message, p.Hint))
	}
	return strings.Join(lines, "\n")
}

type problemCase struct{ name, text, want string }

func checkProblems(t *testing.T, tests []problemCase, usable bool) {
	t.Helper()
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := source.New("f.json", []byte(tt.text))
			n, problems := Parse(f, DefaultLimits())
			if diff := cmp.Diff(tt.want, told(f, problems)); diff != "" {
				t.Errorf("%q (-want +got):\n%s", tt.text, diff)
			}
			if (n != nil) != usable {
				t.Errorf("%q gives a tree: %v, want %v", tt.text, n != nil, usable)
			}
		})
	}
}

func TestDuplicates(t *testing.T) {
	const hint = "; remove one of them, or give it another name"
	checkProblems(t, []problemCase{
		{"on another line", "{\n\n\n \"seam\": 1,\r\n\t\"é\": 2, \"seam\": 3}",
			`5:10 schema/duplicate-key "\"seam\"": two keys named "seam": the first is on line 4` + hint},
		{"on the same line", `{"½": 1, "½": 2}`,
			`1:10 schema/duplicate-key "\"½\"": two keys named "½": the first is on the same line, at column 2` + hint},
		{"written otherwise", `{"a": 1, "\u0061": 2}`,
			`1:10 schema/duplicate-key "\"\\u0061\"": two keys named "a": the first is on the same line, at column 2` + hint},
		{"all of them, inner and ignored ones too", "{\"a\":1,\n\"a\":{\"b\":1,\"b\":2},\n\"a\":3}",
			`2:1 schema/duplicate-key "\"a\"": two keys named "a": the first is on line 1` + hint + "\n" +
				`2:12 schema/duplicate-key "\"b\"": two keys named "b": the first is on the same line, at column 6` + hint + "\n" +
				`3:1 schema/duplicate-key "\"a\"": two keys named "a": the first is on line 1` + hint},
	}, true)
	n, _ := Parse(source.New("f.json", []byte(`{"a":1,"b":2,"a":3}`)), DefaultLimits())
	if diff := cmp.Diff(decode(t, []byte(`{"a":1,"b":2}`)), n.Interface()); diff != "" {
		t.Errorf("the first of two keys does not count (-want +got):\n%s", diff)
	}
}

func TestNotDuplicates(t *testing.T) {
	parse(t, `[{"a":1},{"a":2},{"A":1,"a":{"a":1}}]`)
	parse(t, "{\"é\":1,\"e\u0301\":2}") // equal only after normalisation, which JSON does not do
}

func TestEncoding(t *testing.T) {
	const noMark = "; save the file as UTF-8 without a byte order mark"
	const pair = "; write the character itself, or both halves of the pair"
	checkProblems(t, []problemCase{
		{"byte order mark", "\ufeff{}", `1:1 schema/encoding "\ufeff": the file begins with a byte order mark (EF BB BF), which JSON does not allow` + noMark},
		{"UTF-16, little end first, marked", "\xff\xfe{\x00}\x00", `1:1 schema/encoding "\xff\xfe": the file is UTF-16 text (it begins with FF FE); UTF-8 was wanted` + noMark},
		{"UTF-16, big end first, marked", "\xfe\xff\x00{\x00}", `1:1 schema/encoding "\xfe\xff": the file is UTF-16 text (it begins with FE FF); UTF-8 was wanted` + noMark},
		{"UTF-16, little end first", "{\x00}\x00", `1:1 schema/encoding "{\x00": the file is UTF-16 or UTF-32 text; UTF-8 was wanted` + noMark},
		{"UTF-16, big end first", "\x00{\x00}", `1:1 schema/encoding "\x00{": the file is UTF-16 or UTF-32 text; UTF-8 was wanted` + noMark},
		{"UTF-32, little end first, marked", "\xff\xfe\x00\x00{\x00\x00\x00", `1:1 schema/encoding "\xff\xfe\x00\x00": the file is UTF-32 text (it begins with FF FE 00 00); UTF-8 was wanted` + noMark},
		{"UTF-32, big end first, marked", "\x00\x00\xfe\xff\x00\x00\x00{", `1:1 schema/encoding "\x00\x00\xfe\xff": the file is UTF-32 text (it begins with 00 00 FE FF); UTF-8 was wanted` + noMark},
		{"UTF-32, big end first", "\x00\x00\x00{\x00\x00\x00}", `1:1 schema/encoding "\x00\x00": the file is UTF-16 or UTF-32 text; UTF-8 was wanted` + noMark},
		{"one byte of Latin-1", "{\n\t\"caf\xe9\": 1}", `2:6 schema/encoding "\xe9": the byte E9 is not UTF-8 text; save the file as UTF-8`},
		{"more of them", "{\"caf\xe9\": \"\xe0 la\", \"x\": \"\xfc\"}", `1:6 schema/encoding "\xe9": the byte E9 is not UTF-8 text (and 2 more in the file); save the file as UTF-8`},
		{"surrogate in UTF-8", "[\"\xed\xa0\x80\"]", `1:3 schema/encoding "\xed": the byte ED is not UTF-8 text (and 2 more in the file); save the file as UTF-8`},
		{"first half alone", `["\ud83ex"]`, `1:3 schema/encoding "\\ud83e": \ud83e is half of a surrogate pair and stands for no character` + pair},
		{"second half alone, as a key", `{"½\\\uDDF5":1}`, `1:6 schema/encoding "\\uDDF5": \uDDF5 is half of a surrogate pair and stands for no character` + pair},
		{"all halves at once", `["\ud83e\ud83e\uddf5","\uddf5\ud83e"]`,
			`1:3 schema/encoding "\\ud83e": \ud83e is half of a surrogate pair and stands for no character` + pair + "\n" +
				`1:24 schema/encoding "\\uddf5": \uddf5 is half of a surrogate pair and stands for no character` + pair + "\n" +
				`1:30 schema/encoding "\\ud83e": \ud83e is half of a surrogate pair and stands for no character` + pair},
		{"NUL", `{"a\u0000":"b"}`, `1:4 schema/encoding "\\u0000": \u0000 is a control character, which no text can show; remove it`},
		{"escape, backspace and form feed", `["x\u001B","\b\f"]`, `1:4 schema/encoding "\\u001B": \u001B is a control character, which no text can show; remove it` + "\n" +
			`1:13 schema/encoding "\\b": \b is a control character, which no text can show; remove it` + "\n" +
			`1:15 schema/encoding "\\f": \f is a control character, which no text can show; remove it`},
		{"raw", "[\"½\x7f\u009b\"]", `1:4 schema/encoding "\x7f": the character U+007F, after "½", is a control character, which no text can show; remove it` + "\n" +
			`1:5 schema/encoding "\u009b": the character U+009B is a control character, which no text can show; remove it`},
	}, false)
	parse(t, `["\\ud83e", "\ud83e\uddf5", "\uffff", "\t\n\r\u0009\u000a\u000D\\b\\u0000"]`)
}

func TestEmptyFile(t *testing.T) {
	const want = `1:1 schema/empty-file "": the file is empty; one JSON value was wanted; write the value, or delete the file`
	checkProblems(t, []problemCase{{"no byte", "", want}, {"blanks", " \t\r\n\n", want}}, false)
}

func TestTrailingText(t *testing.T) {
	checkProblems(t, []problemCase{
		{"second object", "{}\n{}\n", `2:1 schema/trailing-text "{}": a second value; the first is complete at line 1, column 2, and a file holds one; put each value in a file of its own`},
		{"a bracket too many", "{\"a\": {}}\n}\n", `2:1 schema/trailing-text "}": } closes nothing: the file's value is complete at line 1, column 9; remove the }, or the bracket too many before it`},
		{"a comma", "{},", `1:3 schema/trailing-text ",": "," after the end of the file's value; remove it`},
		{"a comment", "{} // done\n", `1:4 schema/trailing-text "// done": a comment after the end of the file's value; JSON has none; remove it`},
		{"a NUL", "{}\x00", `1:3 schema/trailing-text "\x00": "\x00" after the end of the file's value; remove it`},
		{"a word after a number", "12 in", `1:4 schema/trailing-text "in": "in" after the end of the file's value; remove it`},
		{"after duplicates", `{"a":1,"a":2}]`,
			`1:8 schema/duplicate-key "\"a\"": two keys named "a": the first is on the same line, at column 2; remove one of them, or give it another name` + "\n" +
				`1:14 schema/trailing-text "]": ] closes nothing: the file's value is complete at line 1, column 13; remove the ], or the bracket too many before it`},
	}, false)
}

func TestNumbers(t *testing.T) {
	const plain = "; write an exponent of at most 400"
	checkProblems(t, []problemCase{
		{"one character too long", "[" + strings.Repeat("9", 65) + "]",
			`1:2 schema/number "` + strings.Repeat("9", 65) + `": the number ` + strings.Repeat("9", 40) + `... has 65 characters; at most 64 are read; write it with fewer digits`},
		{"exponents of either sign", "[1e401,\n\t-2.5E-0401]",
			`1:2 schema/number "1e401": the number 1e401 has an exponent beyond 400` + plain + "\n" +
				`2:2 schema/number "-2.5E-0401": the number -2.5E-0401 has an exponent beyond 400` + plain},
		{"exponent that an exact validator cannot stand", "1e1000001", `1:1 schema/number "1e1000001": the number 1e1000001 has an exponent beyond 400` + plain},
		{"exponent beyond any integer", "0e99999999999999999999", `1:1 schema/number "0e99999999999999999999": the number 0e99999999999999999999 has an exponent beyond 400` + plain},
	}, false)
	parse(t, "["+strings.Repeat("9", 64)+", 1e400, 1E-400, 1e+000400]")
}
