package check

import (
	"slices"
	"strings"
)

// make makes the quilt, one piece at a time. Sets and tubes are to leave so much
// slack.
func (k *knownPlan) make(slack int64) *knownShop {
	s := newKnownShop(k.cloths)
	s.slack = slack
	for _, row := range k.rows {
		for _, b := range row {
			k.blocks[b].sew(s)
		}
	}
	s.finish = [2]int64{int64(len(k.rows[0])) * k.side, int64(len(k.rows)) * k.side}
	if k.sash != nil {
		k.sash.sew(s, k)
	}
	for _, b := range k.borders {
		b.sew(s, k.seam)
	}
	if b := k.binding; b != nil {
		loss := b.cut
		if b.straight {
			loss = 2 * k.seam
		}
		s.join("binding", b.role, b.cut, loss, 2*(s.finish[0]+s.finish[1])+k.in(80))
	}
	if k.back != "" {
		s.back(k.back, k.over, k.panels)
	}
	for _, b := range k.blocks {
		for name := range b.parts(k.unit) {
			if s.made[name] == 0 {
				s.fails = true // a part that nothing is made of
			}
		}
	}
	s.fails = s.fails || k.shares()
	return s
}

// shares reports whether two sets are of equal strips: they may then be cut from
// the same ones, which is left to other tests.
func (k *knownPlan) shares() bool {
	seen := map[string]bool{}
	for _, b := range k.blocks {
		c, ok := b.(knownColumns)
		if !ok {
			continue
		}
		for i, set := range c.sets {
			if i == 1 && c.role != "" {
				continue
			}
			var strips []string
			for _, t := range set {
				strips = append(strips, t.role+knownText(t.width, k.unit))
			}
			slices.Sort(strips)
			key := strings.Join(strips, " ")
			if seen[key] {
				return true
			}
			seen[key] = true
		}
	}
	return false
}

// sew walks along every line between blocks, and round them, and puts a sash
// beside each block and a stone at each crossing.
func (h *knownSash) sew(s *knownShop, k *knownPlan) {
	rows, columns := len(k.rows), len(k.rows[0])
	cut, long := h.width+2*k.seam, k.side+2*k.seam
	inside := func(line, last int) bool { return h.outer || line > 0 && line < last }
	lines := [2]int64{}
	for x := 0; x <= columns; x++ {
		if !inside(x, columns) {
			continue
		}
		lines[0]++
		for range rows {
			s.cut("sashing", h.role, cut, long)
			s.sashes++
		}
	}
	through := s.finish[0] + lines[0]*h.width + 2*k.seam
	for y := 0; y <= rows; y++ {
		if !inside(y, rows) {
			continue
		}
		lines[1]++
		if h.stone == "" {
			s.fails = s.fails || through > s.cloth(h.role).strip() // joined ones are left to other tests
			s.cut("sashing", h.role, through, cut)
			s.sashes++
			continue
		}
		for x := 0; x <= columns; x++ {
			if x < columns {
				s.cut("sashing", h.role, long, cut)
				s.sashes++
			}
			if inside(x, columns) {
				s.cut("cornerstones", h.stone, cut, cut)
				s.stones++
			}
		}
	}
	s.finish[0] += lines[0] * h.width
	s.finish[1] += lines[1] * h.width
}

func (b knownBorder) sew(s *knownShop, seam int64) {
	cut, grown := b.width+2*seam, 2*b.width
	ends, sides := s.finish[0]+2*seam, s.finish[1]+2*seam // as long as what is inside
	tips := int64(0)                                      // of a mitred strip, in roots of 2
	switch {
	case b.corners == "mitred": // seam allowance to the very tip, at both ends; derived from geometry
		ends, sides, tips = ends+grown, sides+grown, 2*seam
	case b.corners == "corner squares":
		for range 4 {
			s.cut(b.name+" corners", b.corner, cut, cut)
		}
	case b.endsFirst:
		sides += grown
	default:
		ends += grown
	}
	loss := cut
	if b.straight {
		loss = 2 * seam
	}
	s.join(b.name, b.role, cut, loss, 2*(ends+sides)+root2Up(4*tips))
	s.lengths[b.name] = [2]int64{sides + root2Up(tips), ends + root2Up(tips)}
	s.finish[0] += grown
	s.finish[1] += grown
}
