package measure

import (
	"math/big"
	"testing"
)

// FuzzParseMoney holds a price to what package big makes of the same text, and
// to its bounds.
func FuzzParseMoney(f *testing.F) {
	for _, text := range []string{"6", "6.00", "0.085", "1000000000000.1", "-1", "1e9", "٣", "1,5", ".5", "5.", "0x1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		price, err := ParseMoney(text, Currency{})
		if err != nil {
			return
		}
		want, ok := new(big.Rat).SetString(text)
		if !ok || price.Cmp(want) != 0 || price.Sign() < 0 || price.Cmp(big.NewRat(MaxPrice, 1)) > 0 {
			t.Fatalf("%q is %v", text, price)
		}
	})
}
