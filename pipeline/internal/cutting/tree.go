package cutting

import (
	"math"
	"slices"
)

// tree is branch and price over boxes of strip counts, best bound first.
// Bounds on Z change prices of classes only, so every node's pricing problem
// stays one plain knapsack.
type tree struct {
	s    *search
	m    *master
	open []*treeNode
	root *Proof
}

type treeNode struct {
	node
	proof *Proof // of which this node's outcome becomes the content
	stuck bool   // what could be done with its strip counts has been done
}

func newTree(s *search, m *master) *tree {
	t := &tree{s: s, m: m, root: &Proof{}}
	t.open = []*treeNode{{node: node{box: s.in.rootBox(s.goal), bound: 0, duals: noDuals(s.in)}, proof: t.root}}
	return t
}

// noDuals prove that no length is negative.
func noDuals(in *instance) duals {
	return duals{make([]int64, len(in.kinds)), make([]int64, len(in.heights))}
}

// run processes open nodes until none is left, or nodes have been processed,
// or what remains is stuck.
func (t *tree) run(nodes, patterns, inner int) {
	for ; nodes > 0 && !t.s.spent(); nodes-- {
		n := t.next()
		if n == nil {
			return
		}
		t.process(n, patterns, inner)
	}
}

// next takes the open node with the least bound; nodes that an improved plan
// has closed meanwhile are settled on the way.
func (t *tree) next() *treeNode {
	best := -1
	kept := t.open[:0]
	for _, n := range t.open {
		if t.s.closed(n.bound) {
			*n.proof = *leaf(n.duals)
			continue
		}
		kept = append(kept, n)
		if !n.stuck && (best < 0 || n.bound < kept[best].bound) {
			best = len(kept) - 1
		}
	}
	t.open = kept
	if best < 0 {
		return nil
	}
	n := t.open[best]
	t.open = append(t.open[:best], t.open[best+1:]...)
	return n
}

func (t *tree) process(n *treeNode, patterns, inner int) {
	t.s.steps.Boxes++
	if !t.s.in.tighten(n.box, t.s.goal) {
		*n.proof = Proof{Kind: ProofEmpty}
		return
	}
	t.price(n)
	if t.s.closed(n.bound) {
		*n.proof = *leaf(n.duals)
		return
	}
	z := t.fractions()
	if !t.squeeze(n) {
		return
	}
	if t.s.closed(n.bound) {
		*n.proof = *leaf(n.duals)
		return
	}
	if proof, ok := t.s.exact(n.node, patterns, inner); ok {
		*n.proof = *proof
		return
	}
	if !t.branch(n, z) {
		n.stuck = true
		t.open = append(t.open, n)
	}
}

// squeeze tightens a node's box by reduced costs and reports whether a plan is
// left in it.
func (t *tree) squeeze(n *treeNode) bool {
	before := n.box.clone()
	n.duals.squeeze(n.box, t.s.goal*t.s.scaling.scale-n.bound)
	left := t.s.in.tighten(n.box, t.s.goal)
	if left && slices.Equal(before.lo, n.box.lo) && slices.Equal(before.up, n.box.up) {
		return true
	}
	below := &Proof{Kind: ProofEmpty}
	*n.proof = Proof{Kind: ProofFixing, Item: n.duals.item, Class: n.duals.class, Low: below}
	n.proof = below
	n.bound = max(n.bound, n.duals.bound(t.s.demand, n.box))
	return left
}

// price improves a node's bound by column generation; the bound it inherited
// stays if that was better.
func (t *tree) price(n *treeNode) {
	fresh := t.m.generate(n.box, t.s.goal)
	if fresh.bound > n.bound {
		n.bound, n.duals = fresh.bound, fresh.duals
	} else {
		n.bound = max(n.bound, n.duals.bound(t.s.demand, n.box))
	}
}

func (t *tree) fractions() []float64 {
	z := make([]float64, len(t.s.in.heights))
	for k := range z {
		z[k] = t.m.z(k)
	}
	return z
}

// branch splits on the tallest fractional strip count.
func (t *tree) branch(n *treeNode, z []float64) bool {
	for k := len(z) - 1; k >= 0; k-- {
		if !fractional(z[k]) {
			continue
		}
		v := int64(math.Floor(z[k]))
		low, high := n.box.clone(), n.box.clone()
		low.up[k], high.lo[k] = v, v+1
		l, h := t.child(n, low), t.child(n, high)
		*n.proof = Proof{Kind: ProofStrips, At: k, Value: v, Low: l.proof, High: h.proof}
		t.open = append(t.open, l, h)
		return true
	}
	return false
}

// child inherits the duals of its parent, which prove at least as much in the
// smaller box.
func (t *tree) child(n *treeNode, b box) *treeNode {
	return &treeNode{node: node{box: b, duals: n.duals, bound: n.duals.bound(t.s.demand, b)}, proof: &Proof{}}
}

// finish turns what is still open into leaves and returns what the whole tree
// proves.
func (t *tree) finish() proved {
	bound := t.s.sums.from(t.s.goal + 1)
	for _, n := range t.open {
		*n.proof = *leaf(n.duals)
		if !t.s.closed(n.bound) {
			bound = min(bound, t.s.sums.from(ceilUnits(n.bound, t.s.scaling.scale)))
		}
	}
	return proved{bound, t.root}
}

func ceilUnits(v, scale int64) int64 {
	if v <= 0 {
		return 0
	}
	return (v + scale - 1) / scale
}

// pending reports whether some box is still open.
func (t *tree) pending() bool {
	for _, n := range t.open {
		if !t.s.closed(n.bound) {
			return true
		}
	}
	return false
}
