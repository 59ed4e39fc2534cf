// Package revision reads the files that a git revision holds.
//
// It asks the git program, and asks little: the revision is resolved once, and
// from then on only objects are named, by their ids; of these only regular files
// are read, as they were committed. Nothing that a repository's settings can
// name is run: no hook, watcher of files, text conversion, filter, external
// diff, pager, helper or transport. Nothing is fetched, replaced or locked; links
// are not followed, and submodules not entered. Which repository it is, git
// decides, also where it runs a hook.
//
// It must not know what a plan is. Start reading at Open.
package revision
