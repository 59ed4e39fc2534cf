package main

import (
	"testing"
	"time"
)

// Days and seconds are of date -u -d @SECONDS +%F (GNU coreutils 9.1).
func TestToday(t *testing.T) {
	now := time.Date(2026, 5, 6, 23, 59, 0, 0, time.FixedZone("", -5*3600))
	cases := []struct{ flag, epoch, want string }{
		{"", "", "2026-05-06"}, // where the person is, not in UTC
		{"2027-03-31", "", "2027-03-31"},
		{"2027-03-31", "0", "2027-03-31"},
		{"", "0", "1970-01-01"},
		{"", "86399", "1970-01-01"},
		{"", "86400", "1970-01-02"},
		{"", "1806451200", "2027-03-31"},
		{"", "253402300799", "9999-12-31"},
	}
	for _, c := range cases {
		got, err := today(c.flag, c.epoch, now)
		if err != nil || got.String() != c.want {
			t.Errorf("--today %q, SOURCE_DATE_EPOCH %q: %v, %v, wanted %s", c.flag, c.epoch, got, err, c.want)
		}
	}
	for _, bad := range [][2]string{{"tomorrow", ""}, {"2027-02-29", ""}, {"", "x"}, {"", "-1"}, {"", "1.5"}, {"", "253402300800"}} {
		if got, err := today(bad[0], bad[1], now); err == nil {
			t.Errorf("%q is %v", bad, got)
		}
	}
}
