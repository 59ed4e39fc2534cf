package derive

import "slices"

// Cautions are the keys of the cautions that making this size calls for, by
// the techniques used and by whom the quilt is for, sorted.
func (s *Size) Cautions() []string {
	keys := map[string]bool{"rotary-cutter": true, "iron": true}
	if s.Of.Seam.Overlocked() {
		keys["overlock"], keys["pins"] = true, true
	}
	for _, p := range s.Parts {
		p.caution(keys)
	}
	for _, b := range s.Of.Layout.Borders {
		if b.Seam != nil && b.Seam.Overlocked() {
			keys["overlock"], keys["pins"] = true, true
		}
	}
	if s.Of.Use.Text == "cot" {
		keys["bare-cot"] = true
	}
	var out []string
	for k := range keys {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

func (p *Part) caution(keys map[string]bool) {
	if p.Seam.Overlocked() {
		keys["overlock"], keys["pins"] = true, true
	}
	if room, ok := p.Room.(cautioned); ok {
		for _, key := range room.Cautions() {
			keys[key] = true
		}
	}
}
