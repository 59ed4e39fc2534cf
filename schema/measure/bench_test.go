package measure

import "testing"

// Operands of the size a plan has: a bias-edged square, and a cut size.
func benchmarkOperands() (root, length, mixed Surd) {
	root = Root2().Mul((6 * Inch).Surd())
	length = (Inch * 83 / 8).Surd()
	return root, length, root.Add(length)
}

func BenchmarkSurd(b *testing.B) {
	root, length, mixed := benchmarkOperands()
	third := mixed.DivInt(3)
	wide := mixed.Mul(mixed).Mul(mixed).Mul(mixed)
	operations := []struct {
		name string
		run  func()
	}{
		{"add", func() { root.Add(length) }},
		{"add-denominators", func() { third.Add(root) }},
		{"mul", func() { mixed.Mul(root) }},
		{"div-length", func() { mixed.Div(length) }},
		{"div-mixed", func() { root.Div(mixed) }},
		{"cmp-lengths", func() { length.Cmp(length) }},
		{"cmp-roots", func() { root.Cmp(length) }},
		{"floor-div-lengths", func() { FloorDiv(length, length) }},
		{"floor-div-roots", func() { FloorDiv(mixed, length) }},
		{"ceil-to", func() { root.CeilTo(Inch / 8) }},
		{"wide-add", func() { wide.Add(mixed) }},
		{"wide-cmp", func() { wide.Cmp(mixed) }},
		{"format", func() { _ = root.Format(In) }},
	}
	for _, operation := range operations {
		b.Run(operation.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				operation.run()
			}
		})
	}
}

func BenchmarkParseLength(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseLength("2 1/2", In); err != nil {
			b.Fatal(err)
		}
	}
}
