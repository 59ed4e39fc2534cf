package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Logs is strips sewn round a centre square, round by round.
type Logs struct {
	Centre     Text
	Finished   Length // side of the centre square
	Log        Length // finished width of a log
	Rounds     Count
	Courthouse bool    // pairs on opposite sides; otherwise one after the other, a spiral
	Sides      [4]Text // fabrics by side, clockwise from the top; empty where the round decides
	ByRound    []Text  // fabrics from the inside out, repeated as needed
	At         source.Range
}

// sideNames are the sides as the plan names them, clockwise from the top. Nothing writes to it.
var sideNames = [...]string{"top", "right", "bottom", "left"}

// Fabric is what the log of a side, 0 to 3 clockwise from the top, and a
// round, from 1, is cut from: the side's fabric, or else the round's.
func (o Logs) Fabric(side, round int) Text {
	if o.Sides[side].Given() || len(o.ByRound) == 0 {
		return o.Sides[side]
	}
	return o.ByRound[(round-1)%len(o.ByRound)]
}

// Ingredients implements Operation.
func (o Logs) Ingredients() []Ingredient {
	in := []Ingredient{{o.Centre, true}}
	for _, list := range [][]Text{o.Sides[:], o.ByRound} {
		for _, f := range list {
			if f.Given() {
				in = append(in, Ingredient{f, true})
			}
		}
	}
	return in
}

// Make implements Operation.
func (o Logs) Make(m Maker) { m.Logs(o) }

func (r *reader) logs(n *jsontree.Node) Operation {
	centre, fabrics := n.Get("centre"), n.Get("fabrics")
	l := Logs{
		At: n.Range, Centre: text(centre.Get("fabric")), Finished: r.length("finished", centre.Get("finished"), positive),
		Log: r.length("log", n.Get("log"), positive), Rounds: count(n.Get("rounds")),
		Courthouse: word(n.Get("style")) == "courthouse", ByRound: texts(fabrics.Get("rounds")),
	}
	for i, key := range sideNames {
		l.Sides[i] = text(fabrics.Get(key))
		if fabrics != nil && !l.Sides[i].Given() && len(l.ByRound) == 0 {
			r.report(Missing, fabrics.Range, "the logs on the "+key+" have no fabric", "add "+quote(key)+", or \"rounds\" for the sides that are not named")
		}
	}
	return l
}
