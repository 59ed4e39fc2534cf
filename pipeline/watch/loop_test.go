package watch

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

// fake drives a loop with changes and a clock of its own: no test waits for a
// time to pass.
type fake struct {
	t       *testing.T
	events  chan fsnotify.Event
	errors  chan error
	timers  chan timer
	looks   chan string
	refuses error
	ended   chan error
	cancel  context.CancelFunc
}

type timer struct {
	length time.Duration
	rings  chan time.Time
}

func begin(t *testing.T) *fake {
	f := &fake{
		t: t, events: make(chan fsnotify.Event), errors: make(chan error),
		timers: make(chan timer, 8), looks: make(chan string), ended: make(chan error, 1),
	}
	ctx, cancel := context.WithCancel(t.Context())
	f.cancel = cancel
	loop := Loop{
		Events: f.events, Errors: f.errors,
		Matters: func(path string) bool { return !strings.HasPrefix(path, "dull") },
		Recheck: func(_ context.Context, changed []string) error {
			f.looks <- strings.Join(changed, " ")
			return f.refuses
		},
		After: func(d time.Duration) <-chan time.Time {
			made := timer{d, make(chan time.Time, 1)}
			f.timers <- made
			return made.rings
		},
	}
	go func() { f.ended <- loop.Run(ctx) }()
	return f
}

// timer is the next one that the loop sets, which must be of this length.
func (f *fake) timer(length time.Duration) timer {
	f.t.Helper()
	made := <-f.timers
	if made.length != length {
		f.t.Fatalf("a timer of %v was set, not of %v", made.length, length)
	}
	return made
}

func (f *fake) change(op fsnotify.Op, path string) { f.events <- fsnotify.Event{Name: path, Op: op} }

func (f *fake) look(want string) {
	f.t.Helper()
	if got := <-f.looks; got != want {
		f.t.Errorf("looked at %q, not %q", got, want)
	}
}

func (f *fake) end() error {
	f.cancel()
	return <-f.ended
}

func TestLoopSettles(t *testing.T) {
	f := begin(t)
	f.change(fsnotify.Create, "b")
	f.timer(Longest)
	early := f.timer(Settle)
	f.change(fsnotify.Write, "a")
	f.change(fsnotify.Write, "dull")
	f.change(fsnotify.Chmod, "c")
	f.timer(Settle)
	f.change(fsnotify.Rename, "b")
	last := f.timer(Settle)
	early.rings <- time.Time{} // nobody listens to it any more
	last.rings <- time.Time{}
	f.look("a b")

	// What comes later is a burst of its own.
	f.change(fsnotify.Remove, "a")
	f.timer(Longest)
	f.timer(Settle).rings <- time.Time{}
	f.look("a")
	if err := f.end(); err != nil {
		t.Errorf("an interrupt gives %v", err)
	}
}

func TestLoopDoesNotStarve(t *testing.T) {
	f := begin(t)
	f.change(fsnotify.Write, "a")
	overdue := f.timer(Longest)
	f.timer(Settle)
	for range 50 {
		f.change(fsnotify.Write, "a")
		f.timer(Settle)
	}
	overdue.rings <- time.Time{}
	f.look("a")
	f.change(fsnotify.Write, "b")
	f.timer(Longest)
	f.timer(Settle).rings <- time.Time{}
	f.look("b")
	f.end()
}

func TestLoopTroubles(t *testing.T) {
	f := begin(t)
	f.errors <- fsnotify.ErrEventOverflow // too many changes to tell one by one
	f.timer(Longest)
	f.timer(Settle).rings <- time.Time{}
	f.look("")
	f.errors <- errors.New("gone")
	if err := <-f.ended; err == nil || err.Error() != "follow changes: gone" {
		t.Errorf("an error of the system gives %v", err)
	}

	f = begin(t)
	f.refuses = errors.New("no")
	f.change(fsnotify.Write, "a")
	f.timer(Longest)
	f.timer(Settle).rings <- time.Time{}
	f.look("a")
	if err := <-f.ended; !errors.Is(err, f.refuses) {
		t.Errorf("an error of the look gives %v", err)
	}

	f = begin(t)
	close(f.events)
	if err := <-f.ended; err == nil {
		t.Error("it goes on without changes")
	}
}

// A real folder: what is written in it is told, and a folder that has gone is
// no error.
func TestDisk(t *testing.T) {
	dir := t.TempDir()
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	defer d.Close()
	added, err := d.Follow([]string{dir, filepath.Join(dir, "gone")})
	if err != nil || !added || !d.Follows(dir) || d.Follows(filepath.Join(dir, "gone")) {
		t.Fatalf("added %v: %v", added, err)
	}
	if added, err = d.Follow([]string{dir}); err != nil || added {
		t.Errorf("the second time added %v: %v", added, err)
	}
	path := filepath.Join(dir, "a.plan.json")
	if err := os.WriteFile(path, []byte("{}"), 0o666); err != nil {
		t.Fatal(err)
	}
	for e := range d.Events() {
		if e.Name == path && counts(e) {
			break
		}
	}
}
