package tabulate

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// Fabrics look as light as their names say, in whatever order they stand; the others
// take what is left, and no tone twice.
func TestTonesFollowNames(t *testing.T) {
	fabric := func(role, name string) *derive.Fabric {
		return &derive.Fabric{Fabric: &plan.Fabric{Role: plan.Text{Text: role}, Name: plan.Text{Text: name}}}
	}
	for _, c := range []struct {
		fabrics []*derive.Fabric
		hidden  int
		want    string
	}{
		{[]*derive.Fabric{fabric("dark", ""), fabric("light", "")}, -1, "map[0:3 1:0]"},
		{[]*derive.Fabric{fabric("a", "Dark brick"), fabric("b", "Medium brick"), fabric("c", ""), fabric("d", ""), fabric("e", "Light brick"), fabric("f", "")}, -1, "map[0:3 1:1 2:2 3:4 4:0 5:5]"},
		{[]*derive.Fabric{fabric("dark-red", ""), fabric("dark-blue", ""), fabric("sky", "")}, -1, "map[0:3 1:0 2:1]"},
		{[]*derive.Fabric{fabric("red", ""), fabric("darkroom", ""), fabric("lighthouse", "")}, -1, "map[0:0 1:1 2:2]"},
		{[]*derive.Fabric{fabric("back", ""), fabric("light", ""), fabric("red", "")}, 0, "map[1:0 2:1]"},
	} {
		shown := make([]bool, len(c.fabrics))
		for i := range shown {
			shown[i] = i != c.hidden
		}
		if got := fmt.Sprint(tones(c.fabrics, shown)); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
}
