// Package markdown writes a run's findings as a comment on a pull request, in
// GitHub Flavored Markdown: a line that sums up, a table by plan and size, and
// the findings by plan, with excerpts and consequences folded away.
//
// A comment holds 65,536 characters. What does not fit is left out, the least
// grave first, and the comment says how much that is. Bytes are counted, which
// are never fewer than characters however a service counts those.
//
// Text of a plan is shown and never obeyed: it cannot become markup, a link, a
// reference or a mention of somebody. It must not know a rule. Start reading
// at markdown.go; escape.go has the rules for text, and fit.go decides what
// is shown.
package markdown
