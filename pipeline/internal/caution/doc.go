// Package caution holds the safety lines that sheets and patterns print: one sentence
// for each key of a plan's "cautions". It must not know which of them a quilt calls for;
// package derive does.
package caution
