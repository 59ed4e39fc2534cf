package derive

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// The count without a list agrees with the strips listed one by one, which
// piecing's tests hold against polygons.
func TestBiasStripsWithoutAList(t *testing.T) {
	const inch = measure.Inch
	for _, a := range []measure.Length{0, inch, 2 * inch, 18 * inch, 24*inch + inch/2, 36 * inch} {
		for _, w := range []measure.Length{inch / 64, inch, 9 * inch / 4, 5 * inch / 2, 60 * inch} {
			for n := int64(1); n < 4; n++ {
				var all []measure.Surd
				for range n {
					all = append(all, piecing.BiasStrips(a, w)...)
				}
				strips, length := biasStrips(a, w, inch/4, n)
				if strips != int64(len(all)) || !length.Equal(joined(all, inch/4)) {
					t.Errorf("%d squares of %s at %s: %d strips, %s; listed %d, %s", n, a.Format(measure.In), w.Format(measure.In),
						strips, length.Format(measure.In), len(all), joined(all, inch/4).Format(measure.In))
				}
			}
		}
	}
}

// joined is bias strips sewn end to end on the straight grain: each join takes
// 2s*sqrt2 along the middle. Derived from geometry.
func joined(strips []measure.Surd, s measure.Length) measure.Surd {
	if len(strips) == 0 {
		return measure.Surd{}
	}
	join := measure.Root2().Mul((2 * s).Surd())
	return measure.Sum(strips...).Sub(join.MulInt(int64(len(strips) - 1)))
}
