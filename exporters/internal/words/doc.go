// Package words is the wording that report formats share: places, counts, and
// text of a plan made fit for one line. What each format escapes on top of
// that is its own business.
//
// It must not know any format. Start reading at words.go; counts.go closes a
// report with its sums.
package words
