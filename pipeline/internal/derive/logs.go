package derive

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// LogBlock is the log block that an operation describes.
func LogBlock(op plan.Logs) piecing.Logs {
	g := op.Log.Length
	return piecing.Logs{
		Centre: square(op.Finished.Surd()), Widths: [4]measure.Length{g, g, g, g},
		Rounds: op.Rounds.N, Courthouse: op.Courthouse,
	}
}

// logs is strips sewn round a centre.
type logs struct {
	unitRoom
	op plan.Logs
}

// Logs implements plan.Maker.
func (o *opening) Logs(op plan.Logs) { o.room = &logs{unitRoom: unitRoom{o.p, o.s}, op: op} }

// wide is how wide the block is, unfinished: c + 2 x R x g + 2s. Derived from
// geometry.
func (r *logs) wide() figure.F {
	c := figure.Said("c", "centre, finished", r.op.Finished.Length, r.op.Finished.At)
	rounds := figure.Counted("R", "rounds", int64(r.op.Rounds.N), r.op.Rounds.At)
	g := figure.Said("g", "width of a log, finished", r.op.Log.Length, r.op.Log.At)
	return c.Plus(figure.Whole(2).Times(rounds).Times(g)).Plus(r.p.both()).
		Telling(c, rounds, g, r.p.Figures.seam, g.Plus(r.p.both()).Spelt("", "cut width of a log"))
}

// Measure implements Operation.
func (r *logs) Measure() {
	centre := r.s.byFabric[r.op.Centre.Text]
	if centre == nil {
		return
	}
	seam, block := r.p.Seam.Allowance.Length, LogBlock(r.op)
	wide := r.wide()
	u := &Unit{Each: 1, Sewn: square(wide.Surd())}
	middle := squarePiece("centre square", centre, exactly((r.op.Finished.Length + 2*seam).Surd()), plan.Length{}, r.op.Finished.At)
	middle.Nothing = 2 * seam
	u.Pieces = []Piece{middle}
	for _, log := range block.List(seam) {
		f := r.s.byFabric[r.op.Fabric(int(log.Side), log.Round).Text]
		if f == nil {
			return
		}
		length := log.Cut.NearestTo(measure.Tick) // exact: a sum of the plan's own lengths
		piece := Piece{
			What: "log", Fabric: f, Width: length, Height: log.CutWidth, Exact: piecing.Box{Width: log.Cut, Height: log.CutWidth.Surd()},
			Nothing: 2 * seam, Count: 1, At: r.op.Log.At, InLengths: true,
		}
		if upright(int(log.Side), f) {
			piece.Width, piece.Height, piece.InLengths, piece.Stood = log.CutWidth, length, false, true
			piece.Exact.Width, piece.Exact.Height = piece.Exact.Height, piece.Exact.Width
		}
		u.Pieces = append(u.Pieces, piece)
	}
	r.p.becomes(u)
	r.p.Figures.Size = wide.Is(r.p.Name.Text, "width as sewn")
}

// upright reports whether the log on a side, from the top clockwise, is cut with its
// length along the fabric: right and left of the centre a directional print stands
// up in no other. A piece of a pack is no higher than it is, and its logs are cut
// along it all the same.
func upright(side int, f *Fabric) bool {
	return side%2 == 1 && f.Directional() && f.Form == plan.Yardage
}

// Seams implements Operation.
func (r *logs) Seams() (l measure.Surd, ok bool) {
	if r.p.Unit == nil {
		return l, false
	}
	for _, log := range LogBlock(r.op).List(r.p.Seam.Allowance.Length) {
		l = l.Add(log.Cut)
	}
	return r.p.batches(l)
}

// Wants implements Operation.
func (r *logs) Wants() []Want { return nil }

// Serves implements Operation.
func (r *logs) Serves(w Wanted) (Misfit, bool) { return sewn(w) }

// How implements Operation: the order of sewing, round by round, with the length
// of each log.
func (r *logs) How() say.Sentence {
	pieces, way := r.p.Unit.Pieces, "one after the other"
	if r.op.Courthouse {
		way = "in pairs on opposite sides"
	}
	text := say.That("centre square %s of %s, then logs %s wide, %s; lengths", say.AsCut(pieces[0].Width), r.op.Centre.Text, say.AsCut(r.op.Log.Length+2*r.p.Seam.Allowance.Length), way)
	round := 0
	for i, log := range LogBlock(r.op).List(r.p.Seam.Allowance.Length) {
		sep := ", "
		if log.Round != round {
			round = log.Round
			sep = fmt.Sprintf("; round %d: ", round)
			if round == 1 {
				sep = " in round 1: "
			}
		}
		side := [...]string{"top", "right", "bottom", "left"}[log.Side]
		text = text.And(say.That("%s%s %s %s", sep, side, say.AsCut(log.Cut), pieces[i+1].Fabric.Role.Text))
	}
	return text
}

// Fit implements Fitted: first the strip that the logs of one block take in all, by
// fabric, and only what they sum to, as a strip is cut into whole logs. Logs that are
// cut along the fabric are named apart.
func (r *logs) Fit() []say.Sentence {
	var roles, along []string
	sum := map[string]measure.Length{}
	for _, c := range r.p.Unit.Pieces[1:] {
		role := c.Fabric.Role.Text
		switch {
		case !c.InLengths && !slices.Contains(along, role):
			along = append(along, role)
		case c.InLengths && sum[role] == 0:
			roles = append(roles, role)
		}
		if c.InLengths {
			sum[role] += c.Width
		}
	}
	var all []say.Sentence
	for _, role := range roles {
		all = append(all, say.That("%s of %s", say.AsCut(sum[role]), role))
	}
	note := say.That("logs of one: %s, to be cut from strips in whole logs", say.List(", ", all...))
	if len(roles) == 0 {
		note = say.That("no logs are cut in lengths from strips")
	}
	if len(along) > 0 {
		note = note.And(say.That("; those right and left of %s with their length along the fabric, so that the print stands upright", strings.Join(along, ", ")))
	}
	return append([]say.Sentence{note}, r.unitRoom.Fit()...)
}

// Traits implements Operation.
func (r *logs) Traits() Traits { return Traits{Sewn: true, Handed: true, Cut: true} }

// Draft implements Operation.
func (r *logs) Draft(d Drafts) (w piecing.Patchwork, ok bool) {
	var roles []string
	for _, piece := range r.p.Unit.Pieces {
		roles = append(roles, piece.Fabric.Role.Text)
	}
	return r.p.drafted(d, piecing.DraftLogs(LogBlock(r.op), r.p.Seam.Allowance.Length), roles...)
}

// InOrder implements InOrder: the centre is first, then the logs as they are sewn on.
func (r *logs) InOrder() {}

// Lay implements Operation. Those above and below the centre lie as they are cut,
// along the strip. Those right and left of it lie so where they are cut along the
// fabric, and else are turned by a quarter, one way or the other.
func (r *logs) Lay(l *Laying, n Turns) {
	l.Place(r.op.Centre, r.p.Name, Turned, n, Quarters.turned)
	for round := 1; round <= r.op.Rounds.N; round++ {
		for side := range 4 {
			role := r.op.Fabric(side, round)
			if f := r.s.byFabric[role.Text]; side%2 == 0 || f != nil && upright(side, f) {
				l.Place(role, r.p.Name, Turned, n, Quarters.turned)
				continue
			}
			l.Place(role, r.p.Name, Beside, n, func(q Quarters, f *Fabric) int64 {
				right, left := Quarters{q[3], q[0], q[1], q[2]}, Quarters{q[1], q[2], q[3], q[0]}
				return min(right.turned(f), left.turned(f))
			})
		}
	}
}
