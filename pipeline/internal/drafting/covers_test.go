package drafting_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/scripts/crossing/crossed"
)

// The patches of every part that a room drafts close: none lies outside, no two
// overlap. They are as large as the part was measured and, once the seams all round
// are taken off, cover what the part says that it covers. Measured, drafted and
// covered are told apart from each other, of the demo line and of every operation
// at every place that takes a part.
func TestDraftsCloseAndCover(t *testing.T) {
	texts := map[string][]byte{}
	for _, path := range plans(t, "../../../testdata/line/*.plan.json") {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(path)] = text
	}
	for _, p := range crossed.Plans() {
		texts[p.Name()] = []byte(p.Text)
	}
	drafted := map[string]bool{} // operations, by their type
	for name, text := range texts {
		for _, s := range sizes(name, text) {
			d := drafting.Of(s)
			for _, p := range s.Parts {
				if refused(s, p) {
					continue // reference/wrong-kind says so
				}
				if w, ok := d.Part(p.Name.Text); ok && len(w.Patches) <= 400 {
					closesAndCovers(t, name+", "+p.Name.Text, p, w)
					drafted[fmt.Sprintf("%T", p.Operation)] = true
				}
			}
		}
	}
	if len(drafted) < 18 {
		t.Errorf("only parts of %v were drafted", slices.Sorted(maps.Keys(drafted)))
	}
}

// refused reports whether a part takes another that is not of the kind that it needs.
func refused(s *derive.Size, p *derive.Part) bool {
	return slices.ContainsFunc(p.Room.Wants(), func(w derive.Want) bool {
		q := s.Part(w.Part.Text)
		if q == nil {
			return true
		}
		_, serves := q.Room.Serves(w.To)
		return !serves
	})
}

func closesAndCovers(t *testing.T, what string, p *derive.Part, w piecing.Patchwork) {
	t.Helper()
	if !w.Closed() {
		t.Errorf("%s does not close", what)
	}
	if size := w.Size(); !size.Width.Equal(p.Width) || !size.Height.Equal(p.Height) {
		t.Errorf("%s is drafted %v and measures %v", what, size, p.Box)
	}
	seam := p.Seam.Allowance.Length
	least, most, ok := p.Room.Covers(seam)
	if !ok || w.Patches[0].Fabric == piecing.Untold {
		return // not proved, or used whole
	}
	inner, ok := w.Finished(seam)
	if !ok {
		t.Errorf("%s has nothing inside its seams", what)
		return
	}
	if area := inner.Outline.Area(); area.Cmp(least) < 0 || area.Cmp(most) > 0 {
		t.Errorf("%s is drafted to cover %v square ticks, and covers %v to %v", what, area, least, most)
	}
}
