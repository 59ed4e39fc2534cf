package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/pipeline/check"
)

// A word that completion offers, and what it is.
type offer struct{ word, about string }

// anyPath stands for all files and folders. The shells' scripts know it by the
// point before it, which begins no word.
const anyPath = ".paths"

// What flags say of their values: the few that there are, those that come after
// FORMAT= or NAME=, and that several are parted by commas.
const (
	choices = "choices"
	second  = "second"
	several = "several"
)

// offers has words for the last of args, those before it being typed
// already. The words are whole: --report sarif= and not arif=.
func offers(args []string) []offer {
	if len(args) == 0 {
		return nil
	}
	typed, last := args[:len(args)-1], args[len(args)-1]
	if len(typed) == 0 && strings.HasPrefix(last, "-") {
		return beginning([]offer{{"--version", "print the version"}, {"--help", "list the commands"}}, last)
	}
	if len(typed) == 0 {
		return beginning(commandOffers(), last)
	}
	if typed[0] == "help" {
		return beginning(append(commandOffers(), helpTopics()...), last)
	}
	c, ok := findCommand(typed[0])
	if !ok {
		return nil
	}
	return c.complete(typed[1:], last)
}

func (c command) complete(typed []string, last string) []offer {
	flags := c.flagSet(new(options))
	if len(typed) > 0 {
		if f := wantsValue(flags, typed[len(typed)-1]); f != nil && !slices.Contains(typed[:len(typed)-1], "--") {
			return values(f, "", last)
		}
	}
	name, value, given := strings.Cut(strings.TrimPrefix(last, "--"), "=")
	switch {
	case slices.Contains(typed, "--") || !strings.HasPrefix(last, "-"):
		return c.words(flags, typed, last)
	case given && strings.HasPrefix(last, "--"):
		if f := flags.Lookup(name); f != nil {
			return values(f, "--"+name+"=", value)
		}
		return nil
	}
	return beginning(flagOffers(flags), last)
}

// wantsValue is the flag whose value comes after a word, nil if none does.
func wantsValue(flags *pflag.FlagSet, word string) *pflag.Flag {
	name, ok := strings.CutPrefix(word, "--")
	if !ok || strings.Contains(name, "=") {
		return nil
	}
	if f := flags.Lookup(name); f != nil && f.NoOptDefVal == "" {
		return f
	}
	return nil
}

// values offers what a flag takes. One that is written FORMAT=PATH takes a path
// after its choice, and one that is written NAME=LEVEL a level.
func values(f *pflag.Flag, before, last string) []offer {
	words := f.Annotations[choices]
	if len(words) == 0 {
		return []offer{{word: anyPath}}
	}
	if comma := strings.LastIndexByte(last, ','); comma >= 0 && f.Annotations[several] != nil {
		before, last = before+last[:comma+1], last[comma+1:]
	}
	if name, _, ok := strings.Cut(last, "="); ok {
		if words = f.Annotations[second]; len(words) == 0 {
			return []offer{{word: anyPath}}
		}
		before, last = before+name+"=", last[len(name)+1:]
	}
	var found []offer
	for _, w := range words {
		found = append(found, offer{before + w, ""})
	}
	return beginning(found, before+last)
}

// words offers what a command takes besides flags.
func (c command) words(flags *pflag.FlagSet, typed []string, last string) []offer {
	if c.takes != nil && arguments(flags, typed) == 0 {
		return beginning(c.takes(), last)
	}
	if c.paths {
		return []offer{{word: anyPath}}
	}
	return nil
}

// arguments counts the words that are neither flags nor values of flags.
func arguments(flags *pflag.FlagSet, typed []string) int {
	count := 0
	for i, w := range typed {
		value := i > 0 && wantsValue(flags, typed[i-1]) != nil
		if !value && !strings.HasPrefix(w, "-") {
			count++
		}
	}
	return count
}

func beginning(found []offer, with string) []offer {
	return slices.DeleteFunc(found, func(o offer) bool { return !strings.HasPrefix(o.word, with) })
}

func commandOffers() []offer {
	var found []offer
	for _, c := range commands() {
		if !c.hidden {
			found = append(found, offer{c.name, c.summary})
		}
	}
	return append(found, offer{"help", "how to use a command"})
}

func flagOffers(flags *pflag.FlagSet) []offer {
	found := []offer{}
	flags.VisitAll(func(f *pflag.Flag) {
		_, usage := pflag.UnquoteUsage(f)
		about, _, _ := strings.Cut(usage, ";")
		found = append(found, offer{"--" + f.Name, about})
	})
	return append(found, offer{"--help", "how to use the command"})
}

func ruleOffers() []offer {
	var found []offer
	for _, r := range check.Rules() {
		found = append(found, offer{r.Rule, r.Summary})
	}
	return found
}

func plainOffers(words ...string) func() []offer {
	return func() []offer {
		var found []offer
		for _, w := range words {
			found = append(found, offer{w, ""})
		}
		return found
	}
}

func completeCommand() command {
	return command{
		name: "complete", args: "[WORD...]", hidden: true,
		summary: "offer words for the last one, for the scripts of `yardproof completion`",
		about: `A line has a word and, after a tab, what it is. The line .paths says that files
and folders are wanted, too.
`,
		run: func(_ context.Context, s streams, _ *options, args []string) (int, error) {
			var out strings.Builder
			for _, o := range offers(args) {
				fmt.Fprintln(&out, strings.TrimRight(o.word+"\t"+oneLine(o.about), "\t"))
			}
			_, err := io.WriteString(s.stdout, out.String())
			return exitClean, err
		},
	}
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
