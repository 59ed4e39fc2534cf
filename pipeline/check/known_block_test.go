package check

// knownBlock is a way to make a block: as a plan says it, and one at a time.
type knownBlock interface {
	parts(unit int64) map[string]any
	sew(*knownShop)
}

type knownSetStrip struct {
	role  string
	width int64
	own   bool // a precut strip's own width, which the plan leaves out
}

func setPlan(strips []knownSetStrip, segment, unit int64) any {
	var all []any
	for _, s := range strips {
		if s.own {
			all = append(all, s.role)
			continue
		}
		all = append(all, map[string]any{"fabric": s.role, "width": knownText(s.width, unit)})
	}
	set := map[string]any{"strips": all}
	if segment > 0 {
		set["segment"] = knownText(segment, unit)
	}
	return map[string]any{"strip_set": set}
}

// knownPlain is a square.
type knownPlain struct {
	name, role string
	side       int64
}

func (b knownPlain) parts(unit int64) map[string]any {
	return map[string]any{b.name: map[string]any{"cut": map[string]any{"fabric": b.role, "square": knownText(b.side, unit)}}}
}

func (b knownPlain) sew(s *knownShop) {
	s.cut(b.name, b.role, b.side, b.side)
	s.made[b.name]++
}

// knownColumns is segments of two strip sets in turn, or of one and a cut
// rectangle.
type knownColumns struct {
	name     string
	order    string // "aba" or "ab"
	sets     [2][]knownSetStrip
	segments [2]int64
	role     string // of the rectangles in place of segments of the second set
	side     int64
}

func (b knownColumns) parts(unit int64) map[string]any {
	all := map[string]any{}
	var row []string
	for _, c := range b.order {
		row = append(row, b.name+"-"+string(c))
	}
	all[b.name] = map[string]any{"rows": [][]string{row}}
	all[b.name+"-a"] = setPlan(b.sets[0], b.segments[0], unit)
	all[b.name+"-b"] = setPlan(b.sets[1], b.segments[1], unit)
	if b.role != "" {
		size := []string{knownText(b.segments[1], unit), knownText(b.side, unit)}
		all[b.name+"-b"] = map[string]any{"cut": map[string]any{"fabric": b.role, "size": size}}
	}
	return all
}

func (b knownColumns) sew(s *knownShop) {
	for _, c := range b.order {
		part, i := b.name+"-"+string(c), int(c-'a')
		if i == 1 && b.role != "" {
			s.cut(part, b.role, b.segments[1], b.side)
			s.made[part]++
			continue
		}
		s.take(part, func() int64 { return s.cutUp(s.sewSet(part, b.sets[i]), b.segments[i], b.segments[i]) })
	}
	s.made[b.name]++
}

// knownHalves is four half-square units, or one, each trimmed.
type knownHalves struct {
	name         string
	roles        [2]string
	across       int // units along a side of the block
	square, trim int64
	atATime      int64
}

func (b knownHalves) parts(unit int64) map[string]any {
	u := map[string]any{"half_squares": map[string]any{
		"fabrics": b.roles, "square": knownText(b.square, unit), "at_a_time": b.atATime, "trim": knownText(b.trim, unit),
	}}
	if b.across == 1 {
		return map[string]any{b.name: u}
	}
	unitName := b.name + "-unit"
	turned := map[string]any{"part": unitName, "turn": 90}
	return map[string]any{unitName: u, b.name: map[string]any{"rows": [][]any{{unitName, turned}, {turned, unitName}}}}
}

func (b knownHalves) sew(s *knownShop) {
	part := b.name
	if b.across == 2 {
		part = b.name + "-unit"
		s.made[b.name]++
	}
	for range b.across * b.across {
		s.take(part, func() int64 {
			for _, role := range b.roles {
				s.cut(part, role, b.square, b.square)
			}
			return b.atATime
		})
	}
}

// knownGeese is two geese, one above the other.
type knownGeese struct {
	name         string
	goose, sky   string
	side, seam   int64 // side finished
	large, small int64 // squares of four at a time; 0 for one at a time
}

func (b knownGeese) parts(unit int64) map[string]any {
	geese := map[string]any{"goose": b.goose, "sky": b.sky, "finished": []string{knownText(b.side, unit), knownText(b.side/2, unit)}}
	if b.large > 0 {
		geese["at_a_time"] = 4
		geese["cut"] = map[string]any{"goose": knownText(b.large, unit), "sky": knownText(b.small, unit)}
		geese["trim"] = []string{knownText(b.side+2*b.seam, unit), knownText(b.side/2+2*b.seam, unit)}
	}
	part := b.name + "-goose"
	return map[string]any{part: map[string]any{"flying_geese": geese}, b.name: map[string]any{"rows": [][]string{{part}, {part}}}}
}

func (b knownGeese) sew(s *knownShop) {
	part := b.name + "-goose"
	for range 2 {
		s.take(part, func() int64 {
			if b.large > 0 {
				s.cut(part, b.goose, b.large, b.large)
				for range 4 {
					s.cut(part, b.sky, b.small, b.small)
				}
				return 4
			}
			s.cut(part, b.goose, b.side+2*b.seam, b.side/2+2*b.seam)
			for range 2 {
				s.cut(part, b.sky, b.side/2+2*b.seam, b.side/2+2*b.seam)
			}
			return 1
		})
	}
	s.made[b.name]++
}

// knownTube is squares of tubes of one set and itself, turned end for end.
type knownTube struct {
	name       string
	strips     []knownSetStrip
	seam, trim int64
	ears       bool
	side       int64 // sets joined end to end into either side
}

// high is how high the triangles are above the seam that they open along.
func (b knownTube) high() int64 {
	high := -2 * b.seam
	for i, t := range b.strips {
		if high += t.width; i > 0 {
			high -= 2 * b.seam
		}
	}
	return high
}

func (b knownTube) parts(unit int64) map[string]any {
	set := b.name + "-set"
	tube := map[string]any{"sets": []string{set, set}, "lay": "end for end", "trim": knownText(b.trim, unit), "ends": "corners only"}
	if b.ears {
		tube["ends"] = "ears kept"
	}
	if b.side > 1 {
		tube["joined"] = b.side
	}
	return map[string]any{set: setPlan(b.strips, 0, unit), b.name: map[string]any{"tube": tube}}
}

func (b knownTube) sew(s *knownShop) {
	set := b.name + "-set"
	s.take(b.name, func() int64 {
		length := int64(0)
		for range 2 { // sides
			length = 0
			for i := range b.side {
				s.take(set, func() int64 {
					if length += s.sewSet(set, b.strips); i > 0 {
						length -= 2 * b.seam
					}
					return 1
				})
			}
		}
		first := 2 * b.high()
		if b.ears {
			first += 2 * b.seam
		}
		slack := s.slack
		defer func() { s.slack = slack }()
		s.slack *= b.side                       // of every set
		return s.cutUp(length, first, b.high()) // the next tip is one height further along
	})
}

// knownLogs is logs round a centre.
type knownLogs struct {
	name              string
	centre            string
	roles             []string // by round
	core, log, rounds int64    // finished
	seam              int64
	courthouse        bool
}

func (b knownLogs) parts(unit int64) map[string]any {
	logs := map[string]any{
		"centre": map[string]any{"fabric": b.centre, "finished": knownText(b.core, unit)}, "log": knownText(b.log, unit),
		"rounds": b.rounds, "fabrics": map[string]any{"rounds": b.roles},
	}
	if b.courthouse {
		logs["style"] = "courthouse"
	}
	return map[string]any{b.name: map[string]any{"logs": logs}}
}

func (b knownLogs) sew(s *knownShop) {
	s.cut(b.name, b.centre, b.core+2*b.seam, b.core+2*b.seam)
	wide, high := b.core, b.core
	for round := range b.rounds {
		role := b.roles[round%int64(len(b.roles))]
		level := func() { s.log(b.name, role, wide+2*b.seam, b.log+2*b.seam); high += b.log }
		upright := func() { s.log(b.name, role, high+2*b.seam, b.log+2*b.seam); wide += b.log }
		order := []func(){level, upright, level, upright}
		if b.courthouse {
			order = []func(){level, level, upright, upright}
		}
		for _, add := range order {
			add()
		}
	}
	s.made[b.name]++
}
