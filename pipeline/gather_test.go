package pipeline

import (
	"errors"
	"testing"

	"yardproof/pipeline/store"
)

// What cannot be read is told of at its place, where that is known.
func TestUnusable(t *testing.T) {
	text := []byte("{\n \"format\": 1,\n nothing }")
	_, err := store.ReadResult("r.result.json", text, "v1")
	f := unusable("r.result.json", text, err)
	if f.Place.Start.Line != 3 || f.Place.Start.Column != 2 || f.Rule != "run/no-result" {
		t.Errorf("%v: %+v", err, f)
	}
	if f := unusable("r.result.json", text, errors.New("odd")); f.Place.Start.Line != 0 || f.Place.File != "r.result.json" {
		t.Errorf("%+v", f)
	}
}
