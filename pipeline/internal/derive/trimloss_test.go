package derive_test

import "testing"

// Squares of 6 x sqrt2 = 8.4853 in are trimmed to 8 3/8 in: 0.1103 in are lost of
// each side and 0.6617 over a row of six, which is then 47 1/4 in finished and not
// 47.9117. Derived from geometry.
func TestTrimLoss(t *testing.T) {
	s := packed(t, rollOf40, trio, "", "")
	loss, ok := s.TrimLoss(s.Part("square"))
	if !ok {
		t.Fatal("no loss")
	}
	wantDecimal(t, "before", loss.From, "8.485281")
	wantDecimal(t, "lost", loss.Each, "0.110281")
	wantCount(t, "in a row", loss.InRow, 6)
	wantCount(t, "in a column", loss.InColumn, 6)
	wantDecimal(t, "over the row", loss.Each.MulInt(loss.InRow), "0.661688")
	wantDecimal(t, "untrimmed", loss.Each.MulInt(loss.InRow).Add(s.Top.Finished.Width), "47.911688")

	for part, ok := range map[string]bool{
		`"square": {"trim": {"part": "crate", "to": ["8 3/8", "8 3/8"]}}`: true,
		`"square": {"trim": {"part": "crate", "to": ["8 3/8", 8]}}`:       false,
		`"square": {"rows": [["crate"]]}`:                                 false,
	} {
		parts := `"set": {"strip_set": {"strips": [` + trio + `]}}, "crate": {"tube": {"sets": ["set", "set"], "tip": "far seam"}}, ` + part
		s := sized(t, "1/4", rollOf40, parts, `"grid": {"rows": 6, "columns": 5, "blocks": [["square"]]}`, "")
		loss, lost := s.TrimLoss(s.Part("square"))
		if lost != ok {
			t.Errorf("%s: %v", part, lost)
		}
		if lost {
			wantDecimal(t, part, loss.Each, "0.110281")
			wantCount(t, "in a row", loss.InRow, 5)
		}
		if _, lost := s.TrimLoss(s.Part("crate")); lost {
			t.Errorf("%s: something is lost of a square that is not trimmed", part)
		}
	}
}
