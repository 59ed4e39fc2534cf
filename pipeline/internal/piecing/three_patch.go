package piecing

import "yardproof/schema/measure"

// ThreePatch is the squares for a three-patch unit, which is half of one and two
// quarters, cut twice, of the others.
type ThreePatch struct {
	Half    Fit // f + (2 + sqrt2)s
	Quarter Fit // f + (2 + 2 sqrt2)s
}

// ThreePatchFit is the squares for three-patch units of unfinished side u, rounded
// to grid: the half's is that of a half-square unit, the quarters' that of a
// quarter-square unit, whether they are cut into triangles first or sewn in pairs.
// Derived from geometry; at s = 1/4 in the trade says 7/8 and 1 1/4 in, widely
// published, no authority.
func ThreePatchFit(u measure.Surd, s, grid measure.Length, r Rounding) ThreePatch {
	return ThreePatch{
		Half:    fit(HalfSquareCut(u, s, 2), one(), grid, r),
		Quarter: QuarterSquareFit(u, s, grid, r),
	}
}

// DraftThreePatch is a three-patch unit of unfinished side u: fabric 0 above the
// diagonal from the bottom left, 1 below it on the right, 2 at the bottom.
func DraftThreePatch(u measure.Surd) Patchwork {
	w := DraftHalfSquare(u)
	middle := Point{u.DivInt(2), u.DivInt(2)}
	low, high, corner := w.Outline[3], w.Outline[1], w.Outline[2]
	w.Patches = append(w.Patches[:1], Patch{1, Polygon{high, corner, middle}}, Patch{2, Polygon{corner, low, middle}})
	return w
}
