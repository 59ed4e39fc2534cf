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
	planRules     = sync.OnceValue(func() rules { return compile(ofPlan, planText).near(ofProject, projectGuide) })
	projectRules  = sync.OnceValue(func() rules { return compile(ofProject, projectText).near(ofPlan, planGuide) })
	baselineRules = sync.OnceValue(func() rules { return compile("the baseline", baselineText) })
)

// What is foreign to one of these files may belong in the other.
var (
	planGuide    = sync.OnceValue(func() guide { return read(ofPlan, planText) })
	projectGuide = sync.OnceValue(func() guide { return read(ofProject, projectText) })
)

// What the files are called.
const (
	ofPlan    = "the plan"
	ofProject = "the project file"
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
	beside func() guide // to another file that a key may belong in; nil for none
	other  string       // what that file is called
}

func (r rules) near(other string, beside func() guide) rules {
	r.other, r.beside = other, beside
	return r
}

// read panics on a schema that is no JSON: it is part of the program, and a test
// reads them all.
func read(what, text string) guide {
	tree, problems := jsontree.Parse(source.New("", []byte(text)), jsontree.Limits{})
	if len(problems) > 0 {
		panic(fmt.Sprintf("schema of %s: %v", what, problems))
	}
	return newGuide(tree)
}

// compile panics on a wrong schema, as read does.
func compile(what, text string) rules {
	guide := read(what, text)
	loader := gojsonschema.NewSchemaLoader()
	loader.Draft = gojsonschema.Draft7
	compiled, err := loader.Compile(gojsonschema.NewRawLoader(withoutOneOf(guide.root.Interface())))
	if err != nil {
		panic(fmt.Sprintf("schema of %s: %v", what, err))
	}
	return rules{what: what, schema: compiled, guide: guide}
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
