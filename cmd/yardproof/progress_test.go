package main

import (
	"testing"
	"time"

	"yardproof/pipeline"
)

func TestTold(t *testing.T) {
	for _, c := range []struct {
		state   pipeline.Progress
		elapsed time.Duration
		want    string
	}{
		{pipeline.Progress{Total: 1, At: "a.plan.json"}, time.Minute, "1 plan, at a"},
		{pipeline.Progress{Total: 60}, 0, "0 of 60 plans"},
		{pipeline.Progress{Done: 2, Total: 60, At: "line/long-bench.plan.json"}, time.Hour, "2 of 60 plans, at long-bench"}, // two say little
		{pipeline.Progress{Done: 30, Total: 60}, 900 * time.Millisecond, "30 of 60 plans"},
		{pipeline.Progress{Done: 30, Total: 60}, 9900 * time.Millisecond, "30 of 60 plans, a few seconds left"},
		{pipeline.Progress{Done: 30, Total: 60, At: "a.plan.json"}, 10 * time.Second, "30 of 60 plans, about 10 s left, at a"},
		{pipeline.Progress{Done: 20, Total: 60}, 10 * time.Second, "20 of 60 plans, about 20 s left"},
		{pipeline.Progress{Done: 30, Total: 60}, 94 * time.Second, "30 of 60 plans, about 90 s left"},
		{pipeline.Progress{Done: 30, Total: 60}, 95 * time.Second, "30 of 60 plans, about 2 min left"},
		{pipeline.Progress{Done: 30, Total: 60}, 89 * time.Minute, "30 of 60 plans, about 89 min left"},
		{pipeline.Progress{Done: 30, Total: 60}, 90 * time.Minute, "30 of 60 plans, about 2 h left"},
		{pipeline.Progress{Done: 60, Total: 60, At: "what the line takes together"}, time.Minute, "60 of 60 plans, at what the line takes together"},
		{pipeline.Progress{Done: 3, Total: 60, Of: "main\x1b"}, 0, "3 of 60 plans of main\ufffd"},
	} {
		if got := told(c.state, c.elapsed); got != c.want {
			t.Errorf("%+v after %v: %q, wanted %q", c.state, c.elapsed, got, c.want)
		}
	}
}

func TestShorten(t *testing.T) {
	for text, want := range map[string]string{"12 of": "12 of", "123456": "12345", "縫縫縫": "縫縫", "": ""} {
		if got := shorten(text, 5); got != want {
			t.Errorf("%q is cut to %q, not %q", text, got, want)
		}
	}
	if got := shorten("text", -3); got != "" {
		t.Errorf("on a narrow terminal: %q", got)
	}
}
