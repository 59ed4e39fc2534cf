package main

import (
	"context"
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"yardproof/exporters"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
	"yardproof/schema"
	"yardproof/scripts"
)

func initCommand() command {
	return command{
		name: "init", args: "[DIR]",
		summary: "lay a pattern repository to begin from",
		about: `It has a project file, a price list, two plans, the schemas for editors, a hook
for git and files for two CI services; its README.md says what each is for. DIR
is this folder if it is not given, and is created if need be. Nothing is
replaced: where a name is taken, nothing is written at all.
`,
		exits: `Exit status:
  0  the repository was laid
  2  the command line makes no sense, and nothing was done
  3  it could not be laid: a name is taken, the system refused, an interrupt
`,
		paths: true,
		run:   initRepository,
	}
}

func initRepository(ctx context.Context, s streams, _ *options, args []string) (int, error) {
	dir := "."
	switch {
	case len(args) == 1 && args[0] != "":
		dir = args[0]
	case len(args) != 0:
		return 0, misuse("name one folder at most")
	}
	files, err := repositoryFiles()
	if err != nil {
		return 0, err
	}
	if err := store.Lay(ctx, dir, files); err != nil {
		return 0, err
	}
	var told strings.Builder
	shown := filepath.ToSlash(dir)
	for _, f := range files {
		fmt.Fprintln(&told, exporters.Shown(path.Join(shown, f.Name)))
	}
	fmt.Fprintf(&told, "\nNext: yardproof check %s\n", exporters.Shown(shown))
	_, err = s.stdout.Write([]byte(told.String()))
	return exitClean, err
}

// repositoryFiles are the files of a new repository, with the schemas that this
// very program checks by.
func repositoryFiles() ([]report.File, error) {
	originals, err := scripts.Repository()
	if err != nil {
		return nil, err
	}
	var files []report.File
	for _, f := range originals {
		files = append(files, report.File{Name: f.Name, Bytes: f.Bytes})
	}
	for _, name := range []string{"plan", "project"} {
		text, ok := schema.ForEditors(name)
		if !ok {
			return nil, fmt.Errorf("there is no schema %s", name)
		}
		files = append(files, report.File{Name: "schemas/" + name + ".schema.json", Bytes: text})
	}
	return files, nil
}
