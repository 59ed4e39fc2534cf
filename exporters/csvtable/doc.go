// Package csvtable writes a table of a report as comma-separated values in
// UTF-8 (RFC 4180). It writes data, not looks; a table's heading and what is said
// above and below it are rows that say so in their first field.
//
// It must not know what a table is about. Start reading at [Bytes].
package csvtable
