// Package report holds what a run found and derived, as plain data: tables,
// expressions over named inputs, findings. It is all that an exporter may
// see, so an exporter can lay out and number pages but has nothing to
// calculate with. It must not know any rule, any geometry, or any format.
package report
