package tabulate

import (
	"fmt"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// howLogs is the order of sewing, round by round, with the length of each log.
func howLogs(s *derive.Size, p *derive.Part, op plan.Logs) string {
	u := s.Plan.Units
	way := "one after the other"
	if op.Courthouse {
		way = "in pairs on opposite sides"
	}
	text := fmt.Sprintf("centre square %s of %s, then logs %s wide, %s; lengths", p.Unit.Pieces[0].Width.AsCut(u), op.Centre.Text, (op.Log.Length + 2*p.Seam.Allowance.Length).AsCut(u), way)
	round := 0
	for i, log := range derive.LogBlock(op).List(p.Seam.Allowance.Length) {
		sep := ", "
		if log.Round != round {
			round = log.Round
			sep = fmt.Sprintf("; round %d: ", round)
			if round == 1 {
				sep = " in round 1: "
			}
		}
		piece := p.Unit.Pieces[i+1]
		text += fmt.Sprintf("%s%s %s %s", sep, sideName(log.Side), log.Cut.AsCut(u), piece.Fabric.Role.Text)
	}
	return text
}

func sideName(s piecing.Side) string { return [...]string{"top", "right", "bottom", "left"}[s] }

// logsNote is the strip that the logs of one block take in all, by fabric:
// only what they sum to, as a strip is cut into whole logs. Logs that are cut along
// the fabric are named apart.
func logsNote(p *derive.Part, u measure.Unit) string {
	var roles, along []string
	sum := map[string]measure.Length{}
	for _, c := range p.Unit.Pieces[1:] {
		role := c.Fabric.Role.Text
		if !c.InLengths {
			along = append(along, role)
			continue
		}
		if sum[role] == 0 {
			roles = append(roles, role)
		}
		sum[role] += c.Width
	}
	for i, role := range roles {
		roles[i] = sum[role].AsCut(u) + " of " + role
	}
	note := "logs of one: " + strings.Join(roles, ", ") + ", to be cut from strips in whole logs"
	if len(roles) == 0 {
		note = "no logs are cut in lengths from strips"
	}
	if len(along) > 0 {
		note += "; those right and left of " + strings.Join(unique(along), ", ") + " with their length along the fabric, so that the print stands upright"
	}
	return note
}
