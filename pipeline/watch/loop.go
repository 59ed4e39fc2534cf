package watch

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
	"time"

	"github.com/fsnotify/fsnotify"
)

// A save is often several changes: a new file beside the old one, a rename,
// an attribute. It is over when Settle has passed without another. Where
// changes never cease, a new look is due after Longest all the same.
const (
	Settle  = 100 * time.Millisecond
	Longest = 2 * time.Second
)

// Loop waits for changes and has them looked at. All of it runs on the
// goroutine that calls Run.
type Loop struct {
	Events <-chan fsnotify.Event
	Errors <-chan error

	// Matters tells of a path that has changed whether it needs a new look.
	Matters func(path string) bool
	// Recheck is told which paths have changed, sorted; none when the system
	// lost count. An error ends the loop.
	Recheck func(ctx context.Context, changed []string) error
	// After is time.After, but for tests.
	After func(time.Duration) <-chan time.Time
}

// Run goes on until the context is cancelled, which is no error, or changes
// can no longer be followed.
func (l Loop) Run(ctx context.Context) error {
	var changed map[string]bool // nil while nothing has
	var settled, overdue <-chan time.Time
	for {
		var path string
		var lost bool
		select {
		case <-ctx.Done():
			return nil
		case e, ok := <-l.Events:
			if !ok {
				return errors.New("follow changes: the system has stopped telling of them")
			}
			if path = e.Name; !counts(e) || !l.Matters(path) {
				continue
			}
		case err := <-l.Errors:
			if lost = errors.Is(err, fsnotify.ErrEventOverflow); !lost {
				return fmt.Errorf("follow changes: %w", err)
			}
		case <-settled:
			settled = nil
		case <-overdue:
			settled = nil
		}
		switch {
		case path != "" || lost:
			if changed == nil {
				changed, overdue = map[string]bool{}, l.After(Longest)
			}
			if path != "" {
				changed[path] = true
			}
			settled = l.After(Settle)
		default:
			paths := slices.Sorted(maps.Keys(changed))
			changed, overdue = nil, nil
			if err := l.Recheck(ctx, paths); err != nil {
				return err
			}
		}
	}
}

// counts reports whether an event can have changed what a file says. Indexers
// and backup programs change attributes all the time.
func counts(e fsnotify.Event) bool {
	return e.Has(fsnotify.Create) || e.Has(fsnotify.Write) || e.Has(fsnotify.Remove) || e.Has(fsnotify.Rename)
}
