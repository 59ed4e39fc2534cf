package derive

import "yardproof/schema/plan"

// Turns counts the places of a part by how far it is turned in the quilt:
// eighth turns clockwise.
type Turns [8]int64

func (n Turns) total() (sum int64) {
	for _, k := range n {
		sum += k
	}
	return sum
}

// slanted is how many places lie at 45 degrees.
func (n Turns) slanted() int64 { return n[1] + n[3] + n[5] + n[7] }

// quarter is the places that do not, by quarter turns.
func (n Turns) quarter() Quarters { return Quarters{n[0], n[2], n[4], n[6]} }

// add counts n places whose own turns are given, each turned further.
func (n *Turns) add(of Turns, degrees int) {
	for i, k := range of {
		to := &n[(i+degrees/45)%8]
		*to = min(*to+k, countless)
	}
}

// turned is all places turned further.
func (n Turns) turned(degrees int) (m Turns) {
	m.add(n, degrees)
	return m
}

// Quarters counts places by quarter turns clockwise.
type Quarters [4]int64

// Wrongly is how many of some places lie as the print may not.
type Wrongly func(Quarters, *Fabric) int64

// turned is where each piece is turned with what it is sewn into.
func (n Quarters) turned(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return n[1] + n[3]
	}
	return n[1] + n[2] + n[3]
}

// opposite is where pieces come in pairs half a turn apart, each quarter turn cut
// separately: the two of a pair serve places half a turn apart, and what is over
// of one kind stands on its head.
func (n Quarters) opposite(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return 0
	}
	return gap(n[0], n[2])/2 + gap(n[1], n[3])/2
}

// around is where four come together, a quarter turn apart each.
func (n Quarters) around(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return n.crossed(f)
	}
	each := (n[0] + n[1] + n[2] + n[3] + 3) / 4
	wrong := int64(0)
	for _, k := range n {
		wrong += max(0, k-each)
	}
	return wrong
}

// crossed is where two come together a quarter turn apart, each as good upside
// down.
func (n Quarters) crossed(*Fabric) int64 { return gap(n[0]+n[2], n[1]+n[3]) / 2 }

func gap(a, b int64) int64 { return max(a-b, b-a) }

// turnedAlike is where a square may be laid any way round, the same in all units.
func (n Quarters) turnedAlike(f *Fabric) int64 {
	wrong := n.turned(f)
	for range 3 {
		n = Quarters{n[3], n[0], n[1], n[2]}
		wrong = min(wrong, n.turned(f))
	}
	return wrong
}
