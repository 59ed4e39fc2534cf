package drafting_test

import (
	"os"
	"testing"

	"yardproof/pipeline/internal/drafting"
	"yardproof/schema/plan"
)

// Every operation of the vocabulary that makes one part of another: each part
// of the sample is drafted, has exactly its derived size, and closes.
func TestUnitsClose(t *testing.T) {
	const path = "../../../schema/testdata/unit-drawer.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s := sizes(path, text)[0]
	d := drafting.Of(s)
	for _, p := range s.Parts {
		if _, triangle := p.Operation.(plan.Shape); triangle {
			continue // drafted where it is sewn
		}
		w, ok := d.Part(p.Name.Text)
		if !ok {
			t.Errorf("%s is not drafted", p.Name.Text)
			continue
		}
		filled(t, p.Name.Text, w, p.Box)
	}
}

// Rings of three strips opened at seams 1, 2 and 3 show each fabric of the
// set in turn at the top: the second strip, the third, the first.
func TestRingsAreTurnedOn(t *testing.T) {
	const path = "../../../schema/testdata/unit-drawer.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w, ok := drafting.Of(sizes(path, text)[0]).Part("ring")
	if !ok {
		t.Fatal("the ring is not drafted")
	}
	got := ""
	for _, p := range w.Patches {
		if corner, _ := p.Outline.Bounds(); corner.Y.IsZero() {
			got += string(rune('0' + p.Fabric))
		}
	}
	if got != "100" { // ink, milk, ink: milk at the top, then ink, then ink
		t.Errorf("fabrics %s at the top", got)
	}
}
