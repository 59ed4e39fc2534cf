//go:build unix

package main

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"yardproof/exporters"
)

// hostileNames are names of files and folders that a terminal or a CI service
// would obey.
var hostileNames = []string{"a\n::error::b\r\nc\x1b[2J\x1b]0;d\x07", "::error::b", "##[error]b", "\u202eb\u2069\u0085\u009b2J\xff\u2028"}

// TestEveryCommandEscapesNames: whatever a command prints of a file's name, on
// either stream and in every report, nobody obeys it.
func TestEveryCommandEscapesNames(t *testing.T) {
	for _, name := range hostileNames {
		t.Run("", func(t *testing.T) {
			t.Chdir(t.TempDir())
			layHostile(t, name)
			for _, c := range commands() {
				lines, ok := hostileLines(name)[c.name]
				if !ok {
					t.Errorf("there are no lines for the command %s", c.name)
				}
				for _, args := range lines {
					ctx, cancel := context.WithCancel(t.Context())
					if c.name == "watch" {
						cancel() // it shows what it found and ends
					}
					var out strings.Builder
					run(ctx, append([]string{c.name}, args...), strings.NewReader(""), &out, &out)
					cancel()
					harmless(t, c.name, args, out.String())
				}
			}
			var out strings.Builder
			run(t.Context(), []string{name}, nil, &out, &out)
			harmless(t, "", []string{name}, out.String())
		})
	}
}

// layHostile lays plans, a project and lists whose names are hostile, one of
// them with a finding, one with a text that is no JSON, one out of style.
func layHostile(t *testing.T, name string) {
	t.Helper()
	plan, err := begun("nine-patch", (&options{units: "in"}).begin("nine-patch", "x.plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	for path, text := range map[string]string{
		name + ".plan.json":                   strings.Replace(string(plan), `"format": 1`, `"format":  1`, 1),
		filepath.Join(name, "x.plan.json"):    strings.Replace(string(plan), `"id": "`, `"id": "two-`, 1),
		filepath.Join(name, "y.plan.json"):    "{",
		filepath.Join(name, "yardproof.json"): `{ "format": 1, "prices": ["nowhere.csv"] }`,
		name + ".result.json":                 "{",
		name + ".list":                        name + ".plan.json\x00",
		name + ".baseline":                    "{",
		name + ".txt":                         "Cut 7 strips 3 in wide, and 9 more\n# 4 rows\n",
	} {
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink("nowhere", filepath.Join(name, "z.plan.json")); err != nil {
		t.Fatal(err)
	}
}

// hostileLines are command lines with such a name wherever one can stand.
func hostileLines(name string) map[string][][]string {
	checks := [][]string{
		{name}, {name + ".plan.json"}, {name + ".gone"}, {"--files-from", name + ".list"}, {"--files-from", name + ".gone"},
		{".", "--baseline", name + ".baseline"}, {".", "--write-baseline", name + ".known"}, {".", "--write-baseline", name + ".plan.json"},
		{".", "--report", "json=" + name + "/no/folder"}, {".", "--report", "json=" + name + ".plan.json"}, {".", "--report", name}, {".", "--" + name}, {".", "--fail-on", name}, {".", "--today", name},
		{".", "--config", name + ".gone"}, {".", "--config", name + "/y.plan.json"}, {".", "--rule", name}, {".", "--rule", "fabric/tight=" + name}, {".", "--exclude", name}, {".", "--exclude", name + "["},
	}
	for _, f := range exporters.Reports() {
		checks = append(checks, []string{".", "--report", f.Name + "=-"})
	}
	out := func(lines [][]string) [][]string {
		all := [][]string{{".", "--out", name + ".out"}, {".", "--out", name + ".plan.json"}, {name, "--out", name + "/deep", "--results", name + ".plan.json"}, {".", "--out", "out", "--format", name}}
		for _, l := range lines {
			all = append(all, append([]string{"--out", "out", "--format", "json"}, l...))
		}
		return all
	}
	streamed := [][]string{{"-", "--stdin-path", name + ".plan.json"}, {"-", "--stdin-path", name}, {"-", name}, {name, "--stdin-path", name}}
	texts := [][]string{
		{name + ".plan.json", name + ".txt", "--verbose"}, {name + ".plan.json", name + ".gone"}, {name, name + ".txt"}, {name + ".gone", name + ".txt"}, {name + "/y.plan.json", name + ".txt"},
		{"--write", name + ".plan.json"}, {"--write", name + ".plan.json", "--size", name}, {"--write", name + "/y.plan.json"}, {name + ".plan.json", name + ".txt", "--report", "json=" + name + ".txt"},
	}
	for _, f := range exporters.Reports() {
		texts = append(texts, []string{name + ".plan.json", name + ".txt", "--report", f.Name + "=-"})
	}
	return map[string][][]string{
		"check": slices.Concat(checks, streamed), "export": out(checks[:6]), "watch": {{"."}, {name}, {name + ".gone"}},
		"gather":  out([][]string{{name}, {name + ".result.json"}, {name + ".gone"}, {name + ".result.json", "--line", name}}),
		"explain": {{name}, {"--json", name}}, "schema": {{name}}, "completion": {{name}}, "man": {{name}}, "version": {{name}, {"--json", name}}, "complete": {{"check", name}, {name}},
		"init": {{name + ".new"}, {name}, {name + ".plan.json"}}, "new": {{"tube", name + ".new.plan.json"}, {"tube", name}, {name}, {"tube", name + ".plan.json"}, {"tube", "--id", name}},
		"words": texts,
		"why":   {{name + ".plan.json"}, {name + ".plan.json", name}, {name + ".gone"}, {"--json", name + ".plan.json"}, {"--markdown", name + ".plan.json"}, {name + ".plan.json", "/" + name}},
		"fmt":   {{"--check", "."}, {"--check", name}, {name + ".gone"}, {"."}},
	}
}

var workflowCommand = regexp.MustCompile(`^::(error|warning|notice) (file=[^,:]*(,(line|endLine|col)=\d+)*,)?title=[^,:]*(%3A [^,:]*)?::`)

// harmless demands that nothing in a text is obeyed by those who read it.
func harmless(t *testing.T, command string, args []string, out string) {
	t.Helper()
	if !utf8.ValidString(out) {
		t.Errorf("%s %q prints what is no UTF-8:\n%q", command, args, out)
	}
	machines := strings.Contains(strings.Join(args, " "), "=-") && !strings.Contains(out, "::")
	for line := range strings.SplitSeq(out, "\n") {
		trimmed := strings.TrimSpace(line)
		if strings.HasPrefix(trimmed, "::") && !workflowCommand.MatchString(line) || strings.Contains(line, "##[") && !machines && !workflowCommand.MatchString(line) {
			t.Errorf("%s %q prints a command:\n%q", command, args, line)
		}
		if strings.ContainsFunc(line, func(r rune) bool {
			return unicode.IsControl(r) && r != '\t' || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028'
		}) {
			t.Errorf("%s %q prints a character that is obeyed:\n%q", command, args, line)
		}
	}
}
