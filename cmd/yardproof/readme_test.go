package main

import (
	"bytes"
	"context"
	"os"
	"regexp"
	"strings"
	"testing"
)

var block = regexp.MustCompile("(?ms)^```(json|console)\n(.*?)^```$")

// TestReadme follows README's tour as a newcomer would: the plan typed in,
// broken as it says and mended again, with what every command prints.
func TestReadme(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	plan, ran := "", 0
	for _, b := range block.FindAllStringSubmatch(string(text), -1) {
		if b[1] == "json" {
			plan = b[2]
			continue
		}
		written := plan
		if ran++; ran == 2 { // the tour's mistake
			written = strings.Replace(plan, `"square": "6 1/2"`, `"square": "6"`, 1)
		}
		if err := os.WriteFile("picnic.plan.json", []byte(written), 0o644); err != nil {
			t.Fatal(err)
		}
		follow(t, b[2])
	}
	if ran != 3 {
		t.Fatalf("the tour has %d commands, the test knows 3", ran)
	}
}

// follow runs the command on a console block's first line and compares what
// it prints with the rest.
func follow(t *testing.T, console string) {
	t.Helper()
	command, want, _ := strings.Cut(console, "\n")
	args := strings.Fields(strings.TrimPrefix(command, "$ yardproof"))
	var out, problems bytes.Buffer
	run(context.Background(), args, strings.NewReader(""), &out, &problems)
	if out.String() != want {
		t.Errorf("%s\nprints\n%s\nREADME says\n%s", command, &out, want)
	}
	if problems.Len() > 0 {
		t.Errorf("%s\nsays\n%s", command, &problems)
	}
}
