package plan

import (
	"cmp"
	"fmt"
	"time"
)

// BadDate is the rule of a date that is none.
const BadDate = "schema/date"

// Date is a day of the calendar, without a time or a time zone. The zero Date
// is none.
type Date struct{ Year, Month, Day int }

// ParseDate reads an ISO 8601 date in its extended form, YYYY-MM-DD; false
// when there is no such day.
func ParseDate(text string) (Date, bool) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return Date{}, false
	}
	return DateOf(t), true
}

// DateOf is the day of a moment, in the time zone that it is told in.
func DateOf(t time.Time) Date {
	year, month, day := t.Date()
	return Date{year, int(month), day}
}

// Given reports whether it is a day at all.
func (d Date) Given() bool { return d != Date{} }

// Compare orders days by the calendar.
func (d Date) Compare(e Date) int {
	return cmp.Or(cmp.Compare(d.Year, e.Year), cmp.Compare(d.Month, e.Month), cmp.Compare(d.Day, e.Day))
}

// String is the ISO 8601 date.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Since is how many days lie between an earlier day and this one; negative when
// it is a later one.
func (d Date) Since(e Date) int {
	return int(d.time().Sub(e.time()) / (24 * time.Hour))
}

func (d Date) time() time.Time {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
}

// Before is the day so many days earlier.
func (d Date) Before(days int) Date { return DateOf(d.time().AddDate(0, 0, -days)) }
