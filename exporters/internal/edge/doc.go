// Package edge is a run in which everything is out of the ordinary: findings
// without a file or a position, text that means something to the format it is
// written in, long messages, file names of several systems. The tests of every
// format write it; all of it is invented.
//
// Only tests may import it. Start reading at edge.go.
package edge
