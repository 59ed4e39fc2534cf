// Package hostile makes plans that the schema takes and that are as hard on a
// machine as they can be: each at one of the schema's limits, and random ones at
// several. They are invented, and no quilt is like them. What they cost is
// measured by scripts/bench-hostile.sh; command worst looks for harder ones.
//
// Start reading at Plans.
package hostile
