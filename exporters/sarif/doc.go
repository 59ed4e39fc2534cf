// Package sarif writes a run's findings as SARIF 2.1.0, the Static Analysis
// Results Interchange Format, an OASIS standard (with Errata 01, 28 August
// 2023), for programs that show findings beside the text of a plan.
//
// Where the standard leaves a choice:
//
//   - A finding is a result. One of the family run that has no file is a
//     notification of the invocation instead. Each finding is written once.
//   - What follows from a finding is a related location of its result and is
//     listed in the result's properties. A result of its own would be one more
//     complaint to close for what is mended with its cause.
//   - A column counts code points, as everywhere in yardproof; bytes are given
//     beside it.
//   - The fingerprint of a result is made of rule, plan, JSON pointer and
//     sizes. It stays when lines move and numbers change; it does not when an
//     element is put before the one it points into.
//   - A file that was named by a relative path is relative to %SRCROOT%, the
//     folder that yardproof was started in.
//   - What a project accepts is a suppressed result where the run keeps it,
//     and is counted in the run's properties in any case.
//
// It must not know a rule. Start reading at sarif.go; log.go has the parts of
// the format that are used, in the words of the standard.
package sarif
