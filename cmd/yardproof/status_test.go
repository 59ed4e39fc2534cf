package main

import (
	"testing"

	"yardproof/pipeline/diag"
)

// The statuses are a promise to scripts; 3 beats 1 wherever the finding stands.
func TestStatus(t *testing.T) {
	of := func(rule string, level diag.Level, follows ...diag.Finding) diag.Finding {
		return diag.Finding{Rule: rule, Level: level, Follows: follows}
	}
	note, warning, mistake := of("fabric/generous", diag.Note), of("publish/cautions", diag.Warning), of("printed/parts", diag.Error)
	crash := of("run/crash", diag.Error)
	cases := []struct {
		name     string
		findings []diag.Finding
		failOn   diag.Level
		want     int
	}{
		{"nothing", nil, diag.Note, 0},
		{"a note, errors count", []diag.Finding{note}, diag.Error, 0},
		{"a note, warnings count", []diag.Finding{note}, diag.Warning, 0},
		{"a note, notes count", []diag.Finding{note}, diag.Note, 1},
		{"a warning, errors count", []diag.Finding{note, warning}, diag.Error, 0},
		{"a warning, warnings count", []diag.Finding{note, warning}, diag.Warning, 1},
		{"an error, notes count", []diag.Finding{mistake}, diag.Note, 1},
		{"an error, errors count", []diag.Finding{note, mistake, warning}, diag.Error, 1},
		{"a crash alone", []diag.Finding{crash}, diag.Error, 3},
		{"a crash and an error", []diag.Finding{mistake, crash}, diag.Error, 3},
		{"a crash below an error", []diag.Finding{of("printed/parts", diag.Error, mistake, crash)}, diag.Error, 3},
	}
	for _, c := range cases {
		if got := status(c.findings, c.failOn); got != c.want {
			t.Errorf("%s: %d, wanted %d", c.name, got, c.want)
		}
	}
}
