package pipeline

import (
	"slices"
	"sync"
)

// Progress is how far a run is.
type Progress struct {
	Done, Total int    // plans
	At          string // what is worked on, of several at a time the longest; empty for nothing
	Of          string // the revision that the plans are of; empty for those that lie here
}

// progress follows a run and tells Config.Progress.
type progress struct {
	mu    sync.Mutex
	tell  func(Progress)
	state Progress
	under []string // plans under work, the longest first
}

func (l *line) progress() *progress {
	return &progress{tell: l.Progress, state: Progress{Total: len(l.plans)}}
}

// wholeLine is what is worked on once the plans are done.
const wholeLine = "what the line takes together"

// begin tells that something is worked on.
func (p *progress) begin(what string) {
	p.change(func() { p.under = append(p.under, what) })
}

// end tells that a plan is done.
func (p *progress) end(what string) {
	p.change(func() {
		p.state.Done++
		if i := slices.Index(p.under, what); i >= 0 {
			p.under = slices.Delete(p.under, i, i+1)
		}
	})
}

func (p *progress) change(do func()) {
	if p.tell == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	do()
	p.state.At = ""
	if len(p.under) > 0 {
		p.state.At = p.under[0]
	}
	p.tell(p.state)
}
