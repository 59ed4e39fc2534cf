// Package tabulate lays out what was derived as the tables a studio works
// from: overview, fabric requirements, cut lists, sewing, costing, and the
// line's own sheets. It chooses what stands where and in which words; the
// numbers come from package derive and package costing.
//
// It must not know formats: a table here becomes a sheet, a CSV file or a
// JSON object elsewhere. Start reading at Plan.
package tabulate
