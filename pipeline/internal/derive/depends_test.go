package derive_test

import (
	"slices"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// Sizes pass up from strips to the finished quilt, counts down from the
// layout to the fabric; nothing passes the other way.
func TestFollows(t *testing.T) {
	s := derived(t, tubeQuilt)["throw"]
	for _, c := range []struct {
		a, b derive.Quantity
		want bool
	}{
		{size("trio"), size("step"), true},
		{size("trio"), derive.Quantity{Kind: derive.TopSize}, true},
		{size("trio"), cloth("edge"), true}, // the border grows with the squares
		{size("trio"), cloth("back"), true},
		{size("step"), derive.Quantity{Kind: derive.Finish, Name: "binding"}, true},
		{derive.Quantity{Kind: derive.Finish, Name: "binding"}, cloth("edge"), true},
		{derive.Quantity{Kind: derive.Finish, Name: "binding"}, cloth("back"), false},
		{size("step"), count("step"), true},
		{size("trio"), cloth("roll"), true}, // fewer squares a tube, more strips
		{count("step"), count("trio"), true},
		{count("step"), cloth("roll"), true},
		{derive.Quantity{Kind: derive.TopSize}, cloth("edge"), true},

		{size("step"), size("trio"), false},
		{cloth("roll"), count("step"), false},
		{derive.Quantity{Kind: derive.TopSize}, count("step"), false},
		{count("trio"), count("step"), false},
		{derive.Quantity{Kind: derive.TopSize}, cloth("roll"), false},
		{size("step"), size("step"), false},
		{derive.Quantity{}, size("step"), false},
		{size("step"), derive.Quantity{}, false},
		{count("no such part"), cloth("roll"), false},
	} {
		if got := slices.Contains(s.Effects(c.a), s.Number(c.b)); got != c.want {
			t.Errorf("%v -> %v: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

func size(name string) derive.Quantity  { return derive.Quantity{Kind: derive.Geometry, Name: name} }
func count(name string) derive.Quantity { return derive.Quantity{Kind: derive.Count, Name: name} }
func cloth(name string) derive.Quantity { return derive.Quantity{Kind: derive.Cloth, Name: name} }
