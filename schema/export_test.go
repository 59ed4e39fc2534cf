package schema

// MadeUp is the example that hints show of the value at a pointer of the plan's
// or the project file's schema.
func MadeUp(name, pointer string) (text string, ok bool) {
	g := planRules().guide
	if name == "project" {
		g = projectRules().guide
	}
	return g.example(g.root.At(pointer))
}
