package tabulate

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
)

// unitTall is how high the picture of a unit may be on paper, in millimetres.
const unitTall = 28.0

// stepShare is how much of the page's width a step has, in per cent.
const stepShare = 68

// steps is how the quilt is sewn, step by step in the order of making, with a picture
// of each unit beside its step.
func (in Input) steps(units []report.Picture) report.Sheet {
	sheet := report.Sheet{ID: "sewing", Title: "Sewing", Pages: 2, Share: stepShare}
	for i, group := range in.stepGroups() {
		t := in.step(i+1, group)
		t.Under = i > 0
		t.Beside = besideStep(group, units)
		sheet.Tables = append(sheet.Tables, t)
	}
	for _, s := range in.Sizes {
		sheet.Tables = append(sheet.Tables, in.finishing(s))
	}
	sheet.Tables = append(sheet.Tables, cautionsOf("sewing-cautions", in.Sizes...))
	return sheet
}

// stepOf is a part as one size makes it: from how much, and how.
type stepOf struct {
	size      *derive.Size
	part      *derive.Part
	from, how string
}

// stepGroups are the parts in the order of making, each with the sizes that make it.
func (in Input) stepGroups() [][]stepOf {
	var groups [][]stepOf
	for _, s := range in.Sizes {
		variants, last := s.Variants(), -1
		for _, p := range s.Parts {
			if p.Needed == 0 || !p.Room.Traits().Sewn {
				continue
			}
			from, says := apart(how(s, p))
			one := stepOf{s, p, from, says + heed(s, p, variants[p])}
			at := slices.IndexFunc(groups, func(g []stepOf) bool { return g[0].part.Name.Text == p.Name.Text })
			if at < 0 {
				at = last + 1
				groups = slices.Insert(groups, at, nil)
			}
			groups[at] = append(groups[at], one)
			last = max(last, at)
		}
	}
	return groups
}

// batch begins how a part is made: so many sets, tubes or lots of something.
var batch = regexp.MustCompile(`^([0-9]+ ([a-z][a-z ]*?)) of `)

// apart takes how many sets, tubes or lots are sewn, which differs from size to size, out of
// how a part is made.
func apart(says string) (from, how string) {
	found := batch.FindStringSubmatch(says)
	if found == nil {
		return "", says
	}
	return found[1], strings.TrimSuffix(found[2], "s") + "s of " + says[len(found[0]):]
}

// heed is what whoever sews the part has to heed.
func heed(s *derive.Size, p *derive.Part, variants []derive.Variant) string {
	if !p.Known {
		return ""
	}
	var all []string
	if p.Press.Given() {
		all = append(all, "press "+p.Press.Text)
	}
	all = append(all, variantNotes(s, p, variants)...)
	if p.Mirrored > 0 && p.Room.Traits().Handed {
		all = append(all, fmt.Sprintf("%d of them as mirror images, sewn the other way round", p.Mirrored))
	}
	if p.Bias {
		all = append(all, "its edges are on the bias")
	}
	if len(all) == 0 {
		return ""
	}
	return "; " + strings.Join(all, "; ")
}

// step is how a part is made in every size.
func (in Input) step(number int, group []stepOf) report.Table {
	u := unitName(in.units())
	t := report.Table{
		ID: "step-" + group[0].part.Name.Text, Heading: fmt.Sprintf("Step %d: %s", number, group[0].part.Name.Text), Narrow: true,
		Columns: []report.Column{
			{ID: "size", Title: "Size"}, {ID: "sew", Title: "Sew", Wide: true}, {ID: "make", Title: "Make"}, {ID: "width", Title: "Measures", Unit: u}, {ID: "height", Title: "by", Unit: u},
		},
	}
	for _, one := range group {
		if says := sentence(one.how); !slices.ContainsFunc(t.Lead, func(l string) bool { return strings.HasSuffix(l, says) }) {
			if len(t.Lead) > 0 {
				says = one.size.Called() + ": " + says
			}
			t.Lead = append(t.Lead, says)
		}
		w, h := report.Cell{}, report.Cell{}
		if one.part.Known {
			box := asCut(one.part)
			w, h = report.L(box.Width, in.units()), report.L(box.Height, in.units())
		}
		t.Rows = append(t.Rows, row(report.T(one.size.Called()), report.T(one.from), report.N(one.part.Made), w, h))
	}
	return t
}

// pictures reports whether a panel draws a part, or one of its kinds.
func pictures(panel report.Panel, p *derive.Part) bool {
	rest, ok := strings.CutPrefix(panel.Caption[0], p.Name.Text)
	return ok && (strings.HasPrefix(rest, ", make ") || strings.HasPrefix(rest, " ("))
}

// besideStep is the picture of a step's unit.
func besideStep(group []stepOf, units []report.Picture) []report.Beside {
	for _, one := range group {
		for _, p := range units {
			if !strings.HasPrefix(p.ID, unitsID(one.size)) {
				continue
			}
			small := report.Picture{ID: "step-" + one.part.Name.Text, Title: one.part.Name.Text, About: "The unit as it should measure, seam allowances included.", Unit: p.Unit, Plain: true}
			for _, panel := range p.Panels {
				if len(panel.Caption) > 0 && pictures(panel, one.part) {
					from := p
					from.Panels = []report.Panel{panel}
					add(&small, from, "")
				}
			}
			for i := range small.Panels {
				name, _, _ := strings.Cut(small.Panels[i].Caption[0], ", make ")
				small.Panels[i].Caption = []string{name}
				if len(small.Panels) == 1 {
					small.Panels[i].Caption = nil
				}
			}
			if len(small.Panels) > 0 {
				return []report.Beside{{Picture: small, Tall: unitTall}}
			}
		}
	}
	return nil
}

// finishing is how the blocks of a size are laid out, and the top put together and
// finished.
func (in Input) finishing(s *derive.Size) report.Table {
	t := sewTop(s, in.works)
	t.ID, t.Heading = "finish-"+s.Of.Name.Text, "Top and finishing: "+s.Called()
	laid := arrangement(s)
	t.Lead = append(t.Lead, laid.Lead...)
	var rows []report.Row
	for _, r := range laid.Rows {
		rows = append(rows, row(report.T("row "+r.Cells[0].Text), r.Cells[1]))
	}
	t.Rows = append(rows, t.Rows...)
	for i := range t.Rows {
		for j := range t.Rows[i].Cells {
			t.Rows[i].Cells[j].Why = nil
		}
	}
	return t
}
