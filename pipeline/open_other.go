//go:build !unix

package pipeline

// nonBlocking is not needed where there are no named pipes among the files.
const nonBlocking = 0
