// Package diag holds a finding - what yardproof says about a plan - and the
// one order in which findings are shown. It knows nothing of quilts, and of
// files only the places in them.
package diag
