package schema

import (
	_ "embed"
	"fmt"
	"sync"

	"github.com/xeipuuv/gojsonschema"

	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

//go:embed plan.schema.json
var planText string

//go:embed project.schema.json
var projectText string

//go:embed baseline.schema.json
var baselineText string

var (
	planRules     = sync.OnceValue(func() rules { return compile("the plan", planText) })
	projectRules  = sync.OnceValue(func() rules { return compile("the project file", projectText) })
	baselineRules = sync.OnceValue(func() rules { return compile("the baseline", baselineText) })
)

// Plan checks a tree against the schema of a plan. The problems are in the
// order of the file; none means that the tree follows the schema. It also
// takes a size's merged tree, whose ranges point into the size's patch where
// the value comes from there.
func Plan(tree *jsontree.Node) []source.Problem { return planRules().check(tree) }

// Project checks a tree against the schema of the project file.
func Project(tree *jsontree.Node) []source.Problem { return projectRules().check(tree) }

// Baseline checks a tree against the schema of a baseline.
func Baseline(tree *jsontree.Node) []source.Problem { return baselineRules().check(tree) }

// Text is the text of a schema: "plan", "project" or "baseline".
func Text(name string) ([]byte, bool) {
	switch name {
	case "plan":
		return []byte(planText), true
	case "project":
		return []byte(projectText), true
	case "baseline":
		return []byte(baselineText), true
	}
	return nil, false
}

// rules is a compiled schema beside its own text, in which the words for a
// problem are looked up.
type rules struct {
	what   string // what the whole file is called
	schema *gojsonschema.Schema
	guide  guide
}

// compile panics on a wrong schema: it is part of the program, and a test
// compiles both.
func compile(what, text string) rules {
	tree, problems := jsontree.Parse(source.New("", []byte(text)), jsontree.Limits{})
	if len(problems) > 0 {
		panic(fmt.Sprintf("schema of %s: %v", what, problems))
	}
	loader := gojsonschema.NewSchemaLoader()
	loader.Draft = gojsonschema.Draft7
	compiled, err := loader.Compile(gojsonschema.NewRawLoader(withoutOneOf(tree.Interface())))
	if err != nil {
		panic(fmt.Sprintf("schema of %s: %v", what, err))
	}
	return rules{what: what, schema: compiled, guide: newGuide(tree)}
}

// withoutOneOf takes away what choices checks instead: the validator words an
// error for every branch that a part does not take, twenty for each part, which
// is more than half of its time.
func withoutOneOf(value any) any {
	switch v := value.(type) {
	case map[string]any:
		delete(v, "oneOf")
		for _, child := range v {
			withoutOneOf(child)
		}
	case []any:
		for _, child := range v {
			withoutOneOf(child)
		}
	}
	return value
}

func (r rules) check(tree *jsontree.Node) []source.Problem {
	if tree == nil {
		return nil
	}
	if huge := hugeNumbers(tree, nil); huge != nil {
		return huge
	}
	result, err := r.validate(tree)
	if err != nil {
		return []source.Problem{{
			Code: NotChecked, Range: tree.Open(),
			Message: fmt.Sprintf("%s could not be checked against its schema: %v", r.what, err),
			Hint:    "look for a value that is out of the ordinary",
		}}
	}
	return r.problems(tree, result.Errors())
}

// validate guards against the validator: it is known to panic on numbers that
// its float arithmetic cannot hold.
func (r rules) validate(tree *jsontree.Node) (result *gojsonschema.Result, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the validator failed: %v", p)
		}
	}()
	return r.schema.Validate(gojsonschema.NewRawLoader(tree.Interface()))
}
