package drafting_test

import (
	"os"
	"testing"

	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
)

// The points of a sawtooth star reach outwards: each goose, of the ground, has
// its long side on the block's edge and points inwards, and the sky beside it is
// a point of the star. Common practice, no source.
func TestSawtoothStarPointsOutwards(t *testing.T) {
	const path = "../../../testdata/line/harbour-lamps.plan.json"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s := sizes(path, text)[0]
	star, ok := drafting.Of(s).Part("star")
	if !ok {
		t.Fatal("the star is not drafted")
	}
	of := map[string]int{}
	for i, f := range s.Fabrics {
		of[f.Role.Text] = i
	}
	size := star.Size()
	for _, c := range []struct {
		x, y int64 // in fiftieths of the block
		want string
	}{
		{25, 2, "night"}, {48, 25, "night"}, {25, 48, "night"}, {2, 25, "night"}, // the geese, at the edges
		{14, 10, "brass"}, {36, 10, "brass"}, {40, 14, "brass"}, {40, 36, "brass"}, // the points, clockwise
		{36, 40, "brass"}, {14, 40, "brass"}, {10, 36, "brass"}, {10, 14, "brass"},
		{25, 25, "lamp"}, {3, 3, "night"}, {47, 3, "night"}, {47, 47, "night"}, {3, 47, "night"},
	} {
		shows(t, "star", star, piecing.Point{X: size.Width.MulInt(c.x).DivInt(50), Y: size.Height.MulInt(c.y).DivInt(50)}, of[c.want])
	}
}
