package main

import (
	"context"
	"errors"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
	"yardproof/pipeline/revision"
)

const sinceName = "changed-since"

func sinceFlag(f *pflag.FlagSet, o *options) {
	f.Func(sinceName, "tell only of plans that differ from a git `REVISION`, such as HEAD or HEAD^, and of findings that it had not, and count the others", func(revision string) error {
		if o.since = revision; revision == "" {
			return errors.New("name a branch, a tag or a commit")
		}
		return nil
	})
	choose(f, sinceName, "HEAD", "HEAD^")
}

// settleSince understands --changed-since.
func (o *options) settleSince(set *settings) error {
	switch set.since = o.since; {
	case o.since == "":
		return nil
	case o.known != "":
		return misuse("--changed-since and --baseline both say what is known already: give one of them")
	case o.record != "":
		return misuse("--changed-since leaves out plans, and --write-baseline records all: give one of them")
	}
	return nil
}

// openEarlier opens the revision that was asked for.
func (set settings) openEarlier(ctx context.Context, c pipeline.Config) (*pipeline.Earlier, error) {
	paths := c.Paths
	if c.Given != nil {
		paths = []string{c.Given.Path}
	}
	earlier, err := pipeline.At(ctx, set.since, paths)
	if refused, ok := errors.AsType[*revision.Error](err); ok {
		return nil, misuse("--changed-since %s: %s; %s", set.since, refused.Message, refused.Hint)
	}
	return earlier, err
}
