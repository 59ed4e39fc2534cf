package line

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/costing"
)

// The texts that name the kits under their target are never empty, as a program that
// opens the workbook keeps no value for an empty one.
func TestWhichKitsAreUnderTheirTarget(t *testing.T) {
	of := func(n int, under ...int) []string {
		c := &Costing{}
		for i := range n {
			k := &Priced{Label: fmt.Sprint("kit ", i), Under: costing.Result{Name: fmt.Sprint("under_", i), Expr: costing.Fixed(0)}}
			c.Kits = append(c.Kits, k)
		}
		for _, i := range under {
			c.Kits[i].Under.Expr = costing.Fixed(1)
		}
		var texts []string
		for _, e := range c.Which() {
			texts = append(texts, e.Text)
		}
		return texts
	}
	for _, c := range []struct {
		got  []string
		want string
	}{
		{of(2), "[none]"},
		{of(3, 0, 2), "[kit 0; kit 2; ]"},
		{of(mostNamed), "[none]"},
		{of(mostNamed+2, 1), "[kit 1;  none from kit 40 to kit 41]"},
		{of(mostNamed + 1), "[none from kit 0 to kit 39 none from kit 40 to kit 40]"},
	} {
		if got := fmt.Sprint(c.got); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
}
