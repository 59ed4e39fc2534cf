package baseline

import "testing"

// FuzzParse takes any bytes for a baseline: what is wrong lies in it, and a run
// can be held against whatever was read.
func FuzzParse(f *testing.F) {
	f.Add([]byte(`{"format": 1, "findings": [{"rule": "yield/none", "level": "error", "plan": "a", "file": "a.plan.json", "pointer": "/parts/b", "sizes": ["x"], "number": 2}]}`))
	f.Add([]byte(`{"format": 1, "findings": [{"number": 1e9}, 3]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		record, findings := Parse("known.json", text)
		for _, found := range findings {
			if found.Place.Range.Start < 0 || found.Place.Range.End > len(text) || found.Message == "" {
				t.Fatalf("%+v", found)
			}
		}
		if len(findings) > 0 && len(record.known) > 0 {
			t.Fatal("a baseline is used that is not in order")
		}
	})
}
