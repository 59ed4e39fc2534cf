package check

import "slices"

// knownShop is where a generated quilt is made, one thing at a time.
type knownShop struct {
	cloths  []*knownCloth
	wants   map[string]*knownWant
	made    map[string]int64 // of each part
	batches map[string]int64 // sets, tubes and pairs that were begun
	each    map[string]int64 // what one of them gives
	ready   map[string]int64 // of what they gave
	finish  [2]int64         // finished width and length
	joined  map[string]int64 // strips that were joined, by border or binding
	sashes  int64
	stones  int64
	lengths map[string][2]int64 // cut length of a border's sides and ends, rounded up to a tick
	backing [2]int64
	panels  [2]int64 // of the backing, how many and how long each
	fails   bool     // something does not fit its cloth
	slack   int64    // that a set or tube is to leave, if need be by giving one less
}

func newKnownShop(cloths []*knownCloth) *knownShop {
	s := &knownShop{
		cloths: cloths, wants: map[string]*knownWant{}, made: map[string]int64{}, batches: map[string]int64{}, each: map[string]int64{},
		ready: map[string]int64{}, joined: map[string]int64{}, lengths: map[string][2]int64{},
	}
	for _, c := range cloths {
		s.wants[c.role] = &knownWant{cloth: c}
	}
	return s
}

func (s *knownShop) cloth(role string) *knownCloth { return s.wants[role].cloth }

// cut cuts one piece.
func (s *knownShop) cut(by, role string, across, down int64) {
	w := s.wants[role]
	s.fails = s.fails || !w.cloth.holds(across, down)
	w.pieces = append(w.pieces, knownPiece{by: by, across: across, down: down})
}

// log cuts one log from a strip of its own width.
func (s *knownShop) log(by, role string, length, width int64) {
	s.cut(by, role, length, width)
	w := s.wants[role]
	w.pieces[len(w.pieces)-1].inLengths = true
}

// tear cuts one strip that is used whole.
func (s *knownShop) tear(by, role string, height int64) {
	w := s.wants[role]
	s.fails = s.fails || w.cloth.pack > 0 && height > w.cloth.short
	w.strips = append(w.strips, knownStrip{by, height})
}

// take takes one of a part that comes in batches, beginning the next batch
// where none is left.
func (s *knownShop) take(part string, batch func() int64) {
	if s.ready[part] == 0 {
		n := batch()
		if n == 0 {
			s.fails = true
			return
		}
		s.batches[part]++
		s.each[part], s.ready[part] = n, n
	}
	s.ready[part]--
	s.made[part]++
}

// cutUp cuts a set or tube up: so long for the first piece, and so much for each
// further one.
func (s *knownShop) cutUp(length, first, further int64) (n int64) {
	left := length
	for each := first; each <= left; each = further {
		left -= each
		n++
	}
	if n > 1 && left < s.slack {
		n--
	}
	return n
}

// sewSet cuts the strips of one set, and gives the length of the shortest.
func (s *knownShop) sewSet(part string, strips []knownSetStrip) int64 {
	length := int64(0)
	for i, t := range strips {
		s.tear(part, t.role, t.width)
		if l := s.cloth(t.role).strip(); i == 0 || l < length {
			length = l
		}
	}
	return length
}

// join cuts strips until, joined, they are as long as is needed.
func (s *knownShop) join(by, role string, width, loss, need int64) int64 {
	strip := s.cloth(role).strip()
	if strip <= 2*loss {
		s.fails = true
		return 0
	}
	strips := int64(0)
	for have := int64(0); have < need; strips++ {
		s.tear(by, role, width)
		if have += strip; strips > 0 {
			have -= loss
		}
	}
	s.joined[by] = strips
	return strips
}

// back lays panels side by side until they cover the backing, along the quilt
// and across it, and takes the way that needs less cloth.
func (s *knownShop) back(role string, overhang, seam int64) {
	s.backing = [2]int64{s.finish[0] + 2*overhang, s.finish[1] + 2*overhang}
	width, best := s.cloth(role).strip(), int64(0)
	for way := range 2 {
		cover, run := s.backing[way], s.backing[1-way]
		panels := int64(1)
		for have := width; have < cover; have += width - 2*seam {
			panels++
		}
		if best == 0 || panels*run < best {
			best, s.panels = panels*run, [2]int64{panels, run}
		}
	}
	s.wants[role].panels += best
}

// stripsFor is how many strips of a taker there are, and their widths.
func (s *knownShop) stripsFor(by string) (n int64, widths []int64) {
	for _, c := range s.cloths {
		for _, t := range s.wants[c.role].strips {
			if t.by == by {
				n++
				if !slices.Contains(widths, t.height) {
					widths = append(widths, t.height)
				}
			}
		}
	}
	return n, widths
}
