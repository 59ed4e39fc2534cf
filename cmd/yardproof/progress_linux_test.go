package main

import (
	"io"
	"strings"
	"testing"
	"time"

	"yardproof/pipeline"
)

// A single plan that takes long is shown though nothing is done meanwhile, and
// nothing is left of the bar when the run is over.
func TestOneLongPlan(t *testing.T) {
	ours, theirs, err := openTerminal()
	if err != nil {
		t.Skip("there is no terminal here: ", err)
	}
	defer ours.Close()
	printed := make(chan string)
	go func() {
		b, _ := io.ReadAll(ours) // ends with an error once the other side is closed
		printed <- string(b)
	}()
	show, hide := progress(theirs, false)
	show(pipeline.Progress{Total: 1, At: "line/long-bench.plan.json"})
	time.Sleep(longWait + 2*lookAgain)
	hide()
	theirs.Close()
	text := <-printed
	if !strings.Contains(text, "1 plan, at long-bench") {
		t.Errorf("shown is %q", text)
	}
	if last := text[strings.LastIndex(text, "\r"):]; strings.TrimSpace(last) != "" && !strings.HasSuffix(text, "\x1b[2K\r") {
		t.Errorf("left is %q", last)
	}
	if show, _ := progress(theirs, true); show != nil {
		t.Error("shown with --quiet")
	}
}
