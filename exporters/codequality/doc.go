// Package codequality writes a run's findings as Code Quality JSON, which a
// continuous integration service shows in a merge request. GitLab publishes the
// format as "Code Quality report format": a list of objects with description,
// check_name, fingerprint, severity, location.path and location.lines.begin.
//
// What the format has no place for:
//
//   - A finding of no file has the path "." and one of no line the line 1, for
//     both are required. The address of a cell of a workbook stands before the
//     description.
//   - Hint, sizes and the number of findings that may follow end the
//     description.
//   - Findings that the project accepts are left out: whatever stands in the list
//     is a complaint.
//
// A fingerprint is made of rule, plan, JSON pointer and sizes, as in SARIF. It
// stays when lines move and numbers change, and no two in a list are the same.
//
// It must not know a rule. Start reading at codequality.go.
package codequality
