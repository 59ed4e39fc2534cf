package main

import (
	"strconv"
	"time"

	"yardproof/schema/plan"
)

// today is the day that a run takes for today: the one it is told, that of
// SOURCE_DATE_EPOCH in UTC (reproducible-builds.org: seconds since 1970), or
// the system's.
func today(flag, epoch string, now time.Time) (plan.Date, error) {
	if flag != "" {
		if d, ok := plan.ParseDate(flag); ok {
			return d, nil
		}
		return plan.Date{}, misuse("--today %q is no day: write it like 2027-03-31", flag)
	}
	if epoch == "" {
		return plan.DateOf(now), nil
	}
	seconds, err := strconv.ParseInt(epoch, 10, 64)
	if err != nil || seconds < 0 || seconds > lastSecond {
		return plan.Date{}, misuse("SOURCE_DATE_EPOCH is %q, not a number of seconds since 1970", epoch)
	}
	return plan.DateOf(time.Unix(seconds, 0).UTC()), nil
}

// lastSecond ends the year 9999, the last that four digits can write.
const lastSecond = 253402300799
