package jsontree

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"yardproof/schema/source"
)

// plan is an invented document shaped like a quilt plan, of at least a size.
func plan(size int) string {
	var b strings.Builder
	b.WriteString("{\n  \"format\": 1, \"id\": \"invented\", \"title\": \"Invented \\\"Plan\\\"\",\n  \"parts\": {\n")
	for i := 0; b.Len() < size; i++ {
		fmt.Fprintf(&b, "    \"unit %d\": { \"strip_set\": { \"strips\": [\"roll\", \"roll\", \"edge\"], \"segment\": \"2 1/2\", \"count\": %d, \"pressed\": true, \"width\": 6.25, \"note\": null } },\n", i, i*7)
	}
	b.WriteString("    \"last\": {}\n  }\n}\n")
	return b.String()
}

// The baseline for BenchmarkParse is BenchmarkEncodingJSON, which keeps no
// places and looks for no duplicates.
func BenchmarkParse(b *testing.B) {
	text := []byte(plan(8 << 10))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if n, _ := Parse(source.New("plan.json", text), DefaultLimits()); n == nil {
			b.Fatal("no tree")
		}
	}
}

func BenchmarkEncodingJSON(b *testing.B) {
	text := []byte(plan(8 << 10))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			b.Fatal(err)
		}
	}
}
