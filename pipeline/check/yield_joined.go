package check

import (
	"fmt"
	"strconv"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// Where strips are too short for another square, strip sets are joined end to end
// and the tube is made of the longer ones. That is offered where it was tried and
// does.

// mostJoined is how many sets joined end to end into a side of a tube are thought
// of as a way out. Each join is a seam across squares; common practice, no source.
const mostJoined = 4

// joining is the fewest sets joined end to end into each side of a part's tubes
// with which something holds of the part, and the part as it is then.
func (p *Pass) joining(part *derive.Part, holds func(*derive.Part) bool) (joined *derive.Part, ok bool) {
	if part.Tube == nil {
		return nil, false
	}
	for sets := part.Tube.Aside + 1; sets <= mostJoined; sets++ {
		with := p.Size.Joining(part, sets).Part(part.Name.Text)
		if with.Tube != nil && holds(with) {
			return with, true
		}
	}
	return nil, false
}

// joinSets says how to join sets, and how the plan says so.
func joinSets(sets int64) string {
	groups := map[int64]string{2: "twos", 3: "threes"}[sets]
	if groups == "" {
		groups = "fours"
	}
	return fmt.Sprintf("join the sets end to end in %s (\"joined\": %d)", groups, sets)
}

// ofJoined says of a length that it is of sets joined end to end.
func ofJoined(y derive.Yield) string {
	if y.Joined < 2 {
		return ""
	}
	return fmt.Sprintf(" (%d sets joined)", y.Joined)
}

// ofSets says of which sets ends are, where several are joined.
func ofSets(y derive.Yield) string {
	if y.Joined < 2 {
		return ""
	}
	return fmt.Sprintf(" of %d sets", y.Joined)
}

// ofEach says of a length that each of the joined ones is to have it.
func ofEach(y derive.Yield) string {
	if y.Joined < 2 {
		return ""
	}
	return " in each"
}

// joinedForOne is the way out for tubes too short for one square.
func (p *Pass) joinedForOne(part *derive.Part) string {
	with, ok := p.joining(part, (*derive.Part).Derived)
	if !ok {
		return ""
	}
	return fmt.Sprintf(", or %s, which gives %s a tube", joinSets(with.Tube.Aside), count(int(with.Tube.Yield.Each), "square"))
}

// joinedForSlack is the way out for tubes that leave nothing to straighten the
// ends, of no more sets.
func (p *Pass) joinedForSlack(part *derive.Part) string {
	wanted := slackWanted(p.Plan.Units)
	with, ok := p.joining(part, func(with *derive.Part) bool {
		return with.Derived() && with.Tube.Yield.Slack() >= wanted && sets(with) <= sets(part)
	})
	if !ok {
		return ""
	}
	return fmt.Sprintf("; or %s, which leaves %s", joinSets(with.Tube.Aside), p.there(with.Tube.Yield.Rest()))
}

// sets is how many strip sets go into each side of all tubes of a part.
func sets(part *derive.Part) int64 { return part.Tube.Count * part.Tube.Aside }

// joinedForPacks is the way out where printed packs do not give the squares;
// asPrinted tells that a tube then gives as many as are printed.
func (p *Pass) joinedForPacks(part *derive.Part, packs plan.PrintedCount) (way diag.Way, asPrinted bool) {
	with, ok := p.joining(part, func(with *derive.Part) bool {
		f := onlyFabric(with.Tube)
		if f.Err != nil || !with.Derived() {
			return false
		}
		zone := f.PackZone(int64(packs.N))
		return zone == derive.Generous || zone == derive.Comfortable || zone == derive.Tight
	})
	if !ok {
		return way, false
	}
	text := fmt.Sprintf("%s for %d from %s", joinSets(with.Tube.Aside), with.Made, count(int(with.Tube.Count), "tube"))
	if asPrinted = p.printedYield(with) == with.Tube.Yield.Each; asPrinted {
		text += fmt.Sprintf(", %d from each as printed", with.Tube.Yield.Each)
	}
	return p.join(part, with.Tube.Aside, text), asPrinted
}

// join is the way out of joining sets end to end, in the words for it.
func (p *Pass) join(part *derive.Part, sets int64, text string) diag.Way {
	making := p.making(part)
	if making == nil {
		return advise(text)
	}
	var e diag.Edit
	switch said := making.Get("joined"); {
	case said == nil:
		e = p.add(making.Range, "joined", strconv.FormatInt(sets, 10))
	case sets == 1:
		e = p.remove(said.Range)
	default:
		e = p.putCount("join", said.Range, sets)
	}
	w := mend(e)
	if w.Kind == 0 {
		return advise(text)
	}
	w.Says = text
	return w
}

// joinedForKinds is the way out where so many tubes give too few of one kind of
// square: longer ones of no more sets.
func (p *Pass) joinedForKinds(part *derive.Part, tubes int64) string {
	with, ok := p.joining(part, func(with *derive.Part) bool { return with.Derived() && sets(with) <= tubes*part.Tube.Aside })
	if !ok {
		return ""
	}
	return fmt.Sprintf("; or %s for %s", joinSets(with.Tube.Aside), count(int(with.Tube.Count), "tube"))
}

// joinedAsPrinted is how many sets joined end to end would give as many squares a
// tube as are printed, where some number does.
func (p *Pass) joinedAsPrinted(part *derive.Part, said int64) diag.Way {
	if part.Tube == nil {
		return diag.Way{}
	}
	for sets := int64(1); sets <= mostJoined; sets++ {
		switch {
		case sets == part.Tube.Aside || part.Tube.Each(sets) != said:
		case sets == 1:
			return p.join(part, sets, fmt.Sprintf("leave out \"joined\": one set a side gives %d", said))
		default:
			return p.join(part, sets, fmt.Sprintf("%s, which gives %d", joinSets(sets), said))
		}
	}
	return diag.Way{}
}
