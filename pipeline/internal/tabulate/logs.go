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
	text := fmt.Sprintf("centre square %s of %s, then logs %s wide, %s; lengths", p.Unit.Pieces[0].Width.AsCut(u), op.Centre.Text, p.Unit.Pieces[1].Height.AsCut(u), way)
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
		text += fmt.Sprintf("%s%s %s %s", sep, sideName(log.Side), piece.Width.AsCut(u), piece.Fabric.Role.Text)
	}
	return text
}

func sideName(s piecing.Side) string { return [...]string{"top", "right", "bottom", "left"}[s] }

// logsNote is the strip that the logs of one block take in all, by fabric:
// only what they sum to, as a strip is cut into whole logs.
func logsNote(p *derive.Part, u measure.Unit) string {
	var roles []string
	sum := map[string]measure.Length{}
	for _, c := range p.Unit.Pieces[1:] {
		role := c.Fabric.Role.Text
		if sum[role] == 0 {
			roles = append(roles, role)
		}
		sum[role] += c.Width
	}
	for i, role := range roles {
		roles[i] = sum[role].AsCut(u) + " of " + role
	}
	return "logs of one: " + strings.Join(roles, ", ") + ", to be cut from strips in whole logs"
}
