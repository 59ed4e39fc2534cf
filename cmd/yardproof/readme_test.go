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

// TestReadmeRepository types the commands of README's section on a repository
// of one's own, but for the last, which ends only by an interrupt.
func TestReadmeRepository(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(text), "## A repository of your own\n")
	section, _, _ = strings.Cut(section, "\n## ")
	t.Chdir(t.TempDir())
	typed := regexp.MustCompile(`(?m)^    yardproof (.*)$`).FindAllStringSubmatch(section, -1)
	if len(typed) != 5 || typed[4][1] != "watch patterns" {
		t.Fatalf("the section has the commands %q", typed)
	}
	for _, c := range typed[:4] {
		args := regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(c[1], -1)
		for i := range args {
			args[i] = strings.Trim(args[i], `"`)
		}
		if out, status := said(args...); status != exitClean {
			t.Errorf("yardproof %s: exit status %d\n%s", c[1], status, out)
		}
	}
	if out, status := said("check", "--fail-on", "note", "patterns"); status != exitClean || !strings.HasPrefix(out, "3 plans") {
		t.Errorf("exit status %d\n%s", status, out)
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
