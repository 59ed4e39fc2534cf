//go:build !unix

package main

import "time"

var began = time.Now()

// processor is the time that has passed, where the system tells no better.
func processor() time.Duration { return time.Since(began) }
