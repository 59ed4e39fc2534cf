package words

import "testing"

func TestLine(t *testing.T) {
	for text, want := range map[string]string{
		"a.plan.json:1:2: error: m [a/b]": "a.plan.json:1:2: error: m [a/b]",
		"::error::m":                      ": :error::m",
		"  ::error::m":                    "  : :error::m",
		"\u00a0::error::m":                "\u00a0: :error::m",
		"see ##[error]m":                  "see # #[error]m",
		"####[error]m":                    "### #[error]m",
	} {
		if got := Line(text); got != want {
			t.Errorf("Line(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestName(t *testing.T) {
	for name, want := range map[string]string{
		"plans/étoile 2.plan.json": "plans/étoile 2.plan.json",
		"it's, 50% \"x\"":          "it's, 50% \"x\"",
		"a\n::error::b":            `"a\n::error::b"`,
		"::error::b":               `"::error::b"`,
		"a::b":                     "a::b",
		"a##[error]b":              `"a#\x23[error]b"`,
		"\x1b[2J":                  `"\x1b[2J"`,
		"\xff\u202e\u009b":         `"\xff\u202e\u009b"`,
		` a`:                       `" a"`,
		`"a`:                       `"\"a"`,
		"":                         "",
	} {
		if got := Name(name); got != want {
			t.Errorf("Name(%q) = %s, want %s", name, got, want)
		}
	}
}

// What is escaped in a JSON text means the same.
func TestJSON(t *testing.T) {
	for text, want := range map[string]string{
		`{"a": "é½"}`:                    `{"a": "é½"}`,
		"[\"\u009b2J\x7f\u202e\ufffd\"]": `["\u009b2J\u007f\u202e` + "\ufffd" + `"]`,
	} {
		if got := string(JSON([]byte(text))); got != want {
			t.Errorf("JSON(%q) = %s, want %s", text, got, want)
		}
	}
}
