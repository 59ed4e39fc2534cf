package sarif

import (
	"bytes"
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	_ "github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif" // carries the standard's schema
	"github.com/santhosh-tekuri/jsonschema/v6"
)

const carrier = "github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"

// standard compiles the JSON schema of SARIF 2.1.0 with Errata 01. The library
// that carries its text keeps it to itself and validates only its own structs,
// in which what is absent and what is zero are one; so the text is taken from
// the library's source, and the bytes of a log are validated as they are.
func standard(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(carried(t)))
	if err != nil {
		t.Fatal(err)
	}
	id := doc.(map[string]any)["id"].(string)
	if id != schemaURI {
		t.Fatalf("the schema is %s, a log names %s", id, schemaURI)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource(id, doc); err != nil {
		t.Fatal(err)
	}
	return c.MustCompile(id)
}

// carried finds the constant that holds the schema's text.
func carried(t *testing.T) string {
	t.Helper()
	p, err := build.Import(carrier, ".", build.FindOnly)
	if err != nil {
		t.Fatal(err)
	}
	file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, "schema.go"), nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	ast.Inspect(file, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING && len(l.Value) > len(text) {
			text, err = strconv.Unquote(l.Value)
		}
		return err == nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func valid(t *testing.T, schema *jsonschema.Schema, log []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(log))
	if err != nil {
		t.Fatal(err)
	}
	return schema.Validate(doc)
}
