package plan

import "testing"

// The days of ISO 8601-1:2019, 5.2.2.1 a: four digits, two and two; leap years
// are those of the Gregorian calendar.
func TestParseDate(t *testing.T) {
	for text, ok := range map[string]bool{
		"2027-03-31": true, "2028-02-29": true, "2000-02-29": true, "0001-01-01": true,
		"2027-02-29": false, "1900-02-29": false, "2027-04-31": false, "2027-13-01": false, "2027-00-10": false,
		"2027-3-1": false, "27-03-01": false, "20270301": false, "2027-03-01T00:00:00Z": false, "": false, " 2027-03-01": false,
	} {
		d, got := ParseDate(text)
		if got != ok {
			t.Errorf("%q is a date: %v", text, got)
		}
		if got && d.String() != text {
			t.Errorf("%q comes back as %s", text, d)
		}
	}
}

func TestDatesInOrder(t *testing.T) {
	days := []string{"2026-12-31", "2027-01-01", "2027-01-02", "2027-02-01", "2028-01-01"}
	for i, a := range days {
		for j, b := range days {
			x, _ := ParseDate(a)
			y, _ := ParseDate(b)
			if got := x.Compare(y); got != min(1, max(-1, i-j)) {
				t.Errorf("%s against %s: %d", a, b, got)
			}
		}
	}
}
