package starter

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"text/template"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
	"yardproof/schema/style"
)

// Shape is one way to begin.
type Shape struct {
	Name    string // as the command line takes it
	Summary string // what it is, in a line
}

// Shapes lists all of them, the simplest first.
func Shapes() []Shape {
	return []Shape{
		{"squares", "a grid of squares, light and dark in turn"},
		{"rail-fence", "strip sets cut into squares, turn about upright and across"},
		{"nine-patch", "blocks of nine patches from two strip sets, and plain squares between"},
		{"half-squares", "a checkerboard of half-square triangle units and plain squares"},
		{"triangle-squares", "pinwheels of squares cut once diagonally, sewn and trimmed"},
		{"tube", "tubes of a 40-strip roll cut into bias squares, and a border"},
	}
}

// Begin is what a new plan says of itself.
type Begin struct {
	ID    string // as the schema wants ids
	Title string
	Units string // "in" or "cm"
}

// plans are the shapes in both units: "by" gives the first for inches and the
// second for centimetres, round figures in either and no conversions.
//
//go:embed shapes/*.json
var plans embed.FS

// Plan is the text of a new plan of a shape, in the one style. The problems
// are those of b: an id or title that no plan can have. It is an error to ask
// for another shape or unit than there is.
func Plan(shape string, b Begin) ([]byte, []source.Problem, error) {
	if b.Units != "in" && b.Units != "cm" {
		return nil, nil, fmt.Errorf("no plan is measured in %q: choose in or cm", b.Units)
	}
	raw, err := plans.ReadFile("shapes/" + shape + ".json")
	if err != nil {
		return nil, nil, fmt.Errorf("there is no shape %q", shape)
	}
	words := template.FuncMap{
		"json": quoted,
		"by": func(in, cm string) string {
			if b.Units == "in" {
				return in
			}
			return cm
		},
	}
	var text bytes.Buffer
	if err := template.Must(template.New(shape).Funcs(words).Parse(string(raw))).Execute(&text, b); err != nil {
		return nil, nil, fmt.Errorf("fill in the shape %s: %w", shape, err)
	}
	return styled(text.Bytes())
}

func styled(text []byte) ([]byte, []source.Problem, error) {
	f := source.New("", text)
	tree, problems := jsontree.Parse(f, jsontree.DefaultLimits())
	if len(problems) > 0 {
		return nil, problems, nil
	}
	if problems = schema.Plan(tree); len(problems) > 0 {
		return nil, problems, nil
	}
	if _, problems = plan.Decode(f, tree, plan.Merge(tree), nil); len(problems) > 0 {
		return nil, problems, nil
	}
	return style.Format(f, tree), nil, nil
}

// quoted is a JSON text without the escapes that only HTML needs.
func quoted(text string) (string, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(text)
	return string(bytes.TrimSpace(b.Bytes())), err
}
