// Package junit writes a run as JUnit XML, which continuous integration shows
// as a list of tests. The format has no standard; what is written keeps to
// what the schemas in circulation have in common, so that counts can be added
// up: a case has at most one failure or error.
//
//   - A plan is a suite. It has a case "the plan" for what is not about a
//     size, and one for each size. A finding about several sizes is in each.
//   - The suite "line" has one case, for the files, the project and the line.
//   - Errors are a failure. Warnings and notes are output of the case: a
//     format cannot know what --fail-on the run has.
//   - What the project accepts is output of the case "the plan".
//   - Errors of a plan that could not be read, and whatever kept yardproof
//     from doing its work, are an error.
//   - A plan that waits for its project file is skipped.
//
// There are no times. It must not know a rule. Start reading at junit.go;
// cases.go sorts findings into cases.
package junit
