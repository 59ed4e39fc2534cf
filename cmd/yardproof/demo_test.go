package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite testdata/broken/expected.txt")

// TestBroken says of the broken plans what a designer was to be told when they
// were made. To see it:
//
//	go run ./cmd/yardproof check --color never testdata/broken
func TestBroken(t *testing.T) {
	t.Chdir("../..")
	const path = "testdata/broken/expected.txt"
	got, status := said("check", "--color", "never", "testdata/broken")
	if status != exitFindings {
		t.Errorf("exit status %d, want %d", status, exitFindings)
	}
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("check says\n%s", got)
	}
	files, err := os.ReadDir("testdata/broken")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files { // each of them is found fault with
		if strings.HasSuffix(f.Name(), ".plan.json") && !strings.Contains(got, "\ntestdata/broken/"+f.Name()) && !strings.HasPrefix(got, "testdata/broken/"+f.Name()) {
			t.Errorf("nothing is said of %s", f.Name())
		}
	}
}

// TestDemoLine: the demo line has no findings, notes included.
func TestDemoLine(t *testing.T) {
	t.Chdir("../..")
	got, status := said("check", "--fail-on", "note", "testdata/line")
	if status != exitClean || !strings.Contains(got, "no findings") {
		t.Errorf("exit status %d:\n%s", status, got)
	}
}

func said(args ...string) (out string, status int) {
	var stdout, stderr bytes.Buffer
	status = run(context.Background(), args, strings.NewReader(""), &stdout, &stderr)
	return stdout.String() + stderr.String(), status
}
