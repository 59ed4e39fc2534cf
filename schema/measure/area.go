package measure

// Area returns the area of a w by h rectangle, in square ticks.
func Area(w, h Surd) Surd {
	return w.Mul(h)
}

// FormatArea prints an area, in square ticks: "637.5 sq in", "464.515 sq cm".
// What is no decimal of at most 4 places is rounded half up to 2 places and
// marked: "about 61.94 sq in".
func FormatArea(a Surd, u Unit) string {
	return decimalOrAbout(a.in(u).in(u), areaPlaces, Nearest) + " sq " + u.String()
}
