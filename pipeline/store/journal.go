package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"sync"

	"yardproof/pipeline/report"
)

// journal is a file beside the ledger's. A run writes the name of each output file
// into it before it writes that file, so that after a killed run the next one
// knows every file that may be there. Each run has a journal of its own.
type journal struct {
	root *os.Root
	name string
	old  []string        // journals of other runs
	said map[string]bool // lines of those, where the run only skims them

	mu   sync.Mutex
	file *os.File // nil as long as nothing was added
}

// done records that all files of a plan are written, so that the next run need not
// make them again.
func (j *journal) done(e entry) error {
	text, err := json.Marshal(e)
	if err != nil {
		return err
	}
	line := string(text) + "\n"
	if j.said[line] {
		return nil
	}
	return j.write(line)
}

const journalPrefix, journalSuffix = ".yardproof-", ".journal"

func newJournal(root *os.Root) *journal {
	return &journal{root: root, name: fmt.Sprintf("%s%016x%s", journalPrefix, rand.Uint64(), journalSuffix)}
}

// add records files that are about to be written.
func (j *journal) add(files []report.File) error {
	if len(files) == 0 {
		return nil
	}
	var lines strings.Builder
	for _, f := range files {
		lines.WriteString(Sum(f.Bytes) + " " + f.Name + "\n")
	}
	return j.write(lines.String())
}

// write writes whole lines at once, so that those of two goroutines are not mixed.
func (j *journal) write(lines string) error {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.file == nil {
		f, err := j.root.OpenFile(j.name, os.O_CREATE|os.O_EXCL|os.O_WRONLY|os.O_APPEND, 0o666)
		if err != nil {
			return err
		}
		j.file = f
	}
	_, err := j.file.WriteString(lines)
	return err
}

// read passes on every file and every finished plan in the journals of other runs,
// one journal after the other in the order of their names. If a line is
// incomplete, its file was not begun. The journals are reliable only for a run
// that is alone in the folder: the other runs have ended.
func (j *journal) read(tell func(report.Output), plan func(entry)) error {
	return j.lines(func(line string) {
		var e entry
		if strings.HasPrefix(line, "{") && json.Unmarshal([]byte(line), &e) == nil {
			plan(e)
			return
		}
		sum, file, ok := strings.Cut(line, " ")
		if file, whole := strings.CutSuffix(file, "\n"); ok && whole {
			tell(report.Output{Name: file, SHA256: sum})
		}
	})
}

// skim notes which plans other runs recorded as done, for a run that shares the
// folder with them: it does not rely on that, but need not record the same again.
func (j *journal) skim() error {
	j.said = map[string]bool{}
	return j.lines(func(line string) { j.said[line] = strings.HasPrefix(line, "{") })
}

// lines are those of the journals of other runs.
func (j *journal) lines(each func(string)) error {
	dir, err := j.root.Open(".")
	if err != nil {
		return err
	}
	defer dir.Close()
	names, err := dir.Readdirnames(-1)
	for _, name := range slices.Sorted(slices.Values(names)) {
		if !strings.HasPrefix(name, journalPrefix) || !strings.HasSuffix(name, journalSuffix) {
			continue
		}
		text, failed := readRegular(j.root, name)
		if failed != nil {
			continue // it is no journal of ours
		}
		j.old = append(j.old, name)
		for line := range strings.Lines(string(text)) {
			each(line)
		}
	}
	return err
}

func (j *journal) close() error {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.file == nil {
		return nil
	}
	f := j.file
	j.file = nil
	return f.Close()
}

// remove deletes the run's own journal, or all of them, once the ledger's file
// holds what they say.
func (j *journal) remove(all bool) error {
	var names []string
	if all {
		names = j.old
	}
	if j.file != nil {
		names = append(names, j.name)
	}
	err := j.close()
	for _, name := range names {
		if failed := j.root.Remove(name); failed != nil && !os.IsNotExist(failed) {
			err = errors.Join(err, failed)
		}
	}
	return err
}
