// Package supply works out what a run of kits over several plans takes: which
// kits are still to be made, what they take of each article, and which bolts and
// packs are ordered for it. What plans and sizes share is worked out once,
// together. It must not know recipes: what a kit takes is told it. Start reading
// at Of.
package supply
