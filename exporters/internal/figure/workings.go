package figure

import "yardproof/pipeline/report"

// Workings are the distinct pieces of work behind the cells of some sheets.
// One that several cells share is listed once, and the work behind a term
// stands right after the work it belongs to.
type Workings struct {
	List  []*report.Work
	place map[*report.Work]int
}

// Collect lists the work behind the cells, in the order of sheets, tables, rows
// and cells.
func Collect(sheets []report.Sheet) *Workings {
	w := &Workings{place: map[*report.Work]int{}}
	for _, s := range sheets {
		for _, t := range s.Tables {
			for _, r := range t.Rows {
				for _, c := range r.Cells {
					w.add(c.Why)
				}
			}
		}
	}
	return w
}

func (w *Workings) add(work *report.Work) {
	if work == nil || w.place[work] > 0 {
		return
	}
	w.List = append(w.List, work)
	w.place[work] = len(w.List)
	for _, t := range work.Terms {
		w.add(t.Value.Why)
	}
}

// Number is the place of work in the list, from 1; 0 for nil or unlisted work.
func (w *Workings) Number(work *report.Work) int { return w.place[work] }
