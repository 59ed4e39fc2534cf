// Command verdicts tells what yardproof's schema stage thinks of plans and
// project files, for comparison with another schema validator. Names of files
// are read from standard input, one a line; for each document a line goes out
// with the file, the size ("" for the file itself), and valid, invalid or
// unread. A file that is unread never got as far as the schema.
package main

import (
	"bufio"
	"fmt"
	"log"
	"os"
	"path/filepath"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func main() {
	out := bufio.NewWriter(os.Stdout)
	defer out.Flush()
	for lines := bufio.NewScanner(os.Stdin); lines.Scan(); {
		if err := judge(out, lines.Text()); err != nil {
			log.Fatal(err)
		}
	}
}

func judge(out *bufio.Writer, path string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	say := func(size, verdict string) { fmt.Fprintf(out, "%s\t%s\t%s\n", path, size, verdict) }
	tree, problems := jsontree.Parse(source.New(path, text), jsontree.DefaultLimits())
	switch {
	case tree == nil || len(problems) > 0:
		say("", "unread")
	case filepath.Base(path) == "yardproof.json":
		say("", verdict(schema.Project(tree)))
	default:
		say("", verdict(schema.Plan(tree)))
		for _, s := range plan.Merge(tree) {
			if !s.Way.Given() { // the sizes are merged anew for the other validator, the colourways are not
				say(s.Name.Text, verdict(schema.Plan(s.Tree)))
			}
		}
	}
	return nil
}

func verdict(problems []source.Problem) string {
	if len(problems) > 0 {
		return "invalid"
	}
	return "valid"
}
