package supply

import (
	"fmt"
	"testing"

	"yardproof/schema/plan"
)

// Worked by hand: of pieces of 3 and 2 yd two kits of 1 3/8 yd take 2 3/4 of the first and
// leave 1/4 yd and 2 yd, which hold one more; of 5 rolls two are taken and three left.
// Nobody takes C, and of D all is taken.
func TestLeftOfWhatIsNoLongerMade(t *testing.T) {
	list := prices(t, "A,,yd,6.00,,,,,,,yes", "roll,,pack,31.00,,,,,,,yes", "C,,yd,6.00,,,,,,,yes", "D,,pack,6.00,,,,,,,yes", "E,,yd,6.00")
	stock := &plan.Stock{Parts: []plan.PartBolt{
		{SKU: "A", Length: 24 * eighth}, {SKU: "A", Length: 16 * eighth}, {SKU: "roll", Pieces: 5}, {SKU: "C", Length: 8 * eighth}, {SKU: "D", Pieces: 2}, {SKU: "E", Length: 8 * eighth},
	}}
	k := twenty("steps", map[string]int{"A": 11})
	k.Planned = 2
	k.Takes = append(k.Takes, Take{SKU: "roll", Pieces: 1}, Take{SKU: "D", Pieces: 1})
	left := Of([]Asked{k}, list, stock).Left
	var got []string
	for _, l := range left {
		total := int64(0)
		for _, piece := range l.Lengths {
			total += int64(piece / eighth)
		}
		got = append(got, fmt.Sprintf("%s: %d pieces, %d eighths; %v, %d", l.SKU, len(l.Lengths), total, l.More, l.Pieces))
	}
	want := []string{"A: 2 pieces, 18 eighths; [{0 1}], 0", "roll: 0 pieces, 0 eighths; [{0 3}], 3", "C: 1 pieces, 8 eighths; [], 0"}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %q", got)
	}
}
