// Package csvtable writes a table of a report as comma-separated values in
// UTF-8 (RFC 4180). It writes data, not looks: no headings, no sentences
// around the table.
//
// It must not know what a table is about. Start reading at [Bytes].
package csvtable
