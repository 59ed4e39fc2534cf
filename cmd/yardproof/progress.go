package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"strings"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"

	"yardproof/exporters"
	"yardproof/pipeline"
)

const (
	longBatch = 40                     // plans that make a batch worth a bar from the start
	longWait  = 2 * time.Second        // of fewer plans, before there is one
	redraw    = 100 * time.Millisecond // how often it may be drawn anew
	lookAgain = 500 * time.Millisecond // how often it is, where nothing is done meanwhile
	barWidth  = 20                     // columns
)

// progress shows a bar for long work, on a terminal only. The run is to call
// show; hide, once it is over, takes the bar away.
func progress(stderr io.Writer, quiet bool) (show func(pipeline.Progress), hide func()) {
	f := terminal(stderr)
	if f == nil || quiet {
		return nil, func() {}
	}
	m := &meter{to: f, began: time.Now(), over: make(chan struct{})}
	go m.keep()
	return m.show, m.hide
}

// meter shows how far a run is.
type meter struct {
	mu    sync.Mutex
	to    *os.File
	began time.Time // with the plans of state.Of
	state pipeline.Progress
	bar   *progressbar.ProgressBar // nil while there is none
	over  chan struct{}
}

func (m *meter) show(p pipeline.Progress) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if p.Of != m.state.Of { // other plans, of which it is not known yet how long they take
		m.clear()
		m.began = time.Now()
	}
	m.state = p
	m.draw()
}

// keep draws the bar while one plan takes long.
func (m *meter) keep() {
	tick := time.NewTicker(lookAgain)
	defer tick.Stop()
	for {
		select {
		case <-m.over:
			return
		case <-tick.C:
			m.mu.Lock()
			select {
			case <-m.over:
			default:
				m.draw()
			}
			m.mu.Unlock()
		}
	}
}

func (m *meter) draw() {
	elapsed := time.Since(m.began)
	if m.state.Total == 0 || m.state.Total < longBatch && elapsed < longWait {
		return
	}
	if m.bar == nil {
		// One more than there are plans, for the line as a whole.
		m.bar = progressbar.NewOptions(m.state.Total+1,
			progressbar.OptionSetWriter(m.to), progressbar.OptionSetWidth(barWidth),
			progressbar.OptionSetPredictTime(false), progressbar.OptionSetElapsedTime(false),
			progressbar.OptionThrottle(redraw), progressbar.OptionClearOnFinish())
	}
	m.bar.Describe(shorten(told(m.state, elapsed), columns(m.to)-barWidth-len(" 100% ||")-1))
	m.bar.Set(m.state.Done)
}

func (m *meter) hide() {
	m.mu.Lock()
	defer m.mu.Unlock()
	close(m.over)
	m.clear()
}

func (m *meter) clear() {
	if m.bar != nil {
		m.bar.Finish()
		m.bar = nil
	}
}

// told says how far a run is: "12 of 60 plans, about 20 s left, at long-bench".
func told(p pipeline.Progress, elapsed time.Duration) string {
	text := fmt.Sprintf("%d of %d plans", p.Done, p.Total)
	if p.Total == 1 {
		text = "1 plan"
	}
	if p.Of != "" {
		text += " of " + exporters.OneLine(p.Of)
	}
	if left := leftOf(p, elapsed); left != "" {
		text += ", " + left
	}
	if p.At != "" {
		text += ", at " + exporters.OneLine(strings.TrimSuffix(path.Base(p.At), ".plan.json"))
	}
	return text
}

// leftOf is a rough estimate of how long the other plans take, from how long
// those took that are done; nothing where that says little.
func leftOf(p pipeline.Progress, elapsed time.Duration) string {
	if p.Done < 3 || p.Done >= p.Total || elapsed < time.Second {
		return ""
	}
	left := elapsed * time.Duration(p.Total-p.Done) / time.Duration(p.Done)
	switch {
	case left < 10*time.Second:
		return "a few seconds left"
	case left < 95*time.Second:
		return fmt.Sprintf("about %d s left", (left+5*time.Second)/(10*time.Second)*10)
	case left < 90*time.Minute:
		return fmt.Sprintf("about %d min left", (left+30*time.Second)/time.Minute)
	}
	return fmt.Sprintf("about %d h left", (left+30*time.Minute)/time.Hour)
}

// shorten cuts a text to so many columns of a terminal. A letter beyond ASCII may
// take two.
func shorten(text string, most int) string {
	taken := 0
	for i, r := range text {
		if taken++; r > 0x7e {
			taken++
		}
		if taken > most {
			return text[:i]
		}
	}
	return text
}
