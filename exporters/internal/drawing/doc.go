// Package drawing lays a report's picture out on a page: at which scale its
// panels stand where, how keys are filled so that they can be told apart
// without colours, which labels fit. The formats draw what comes out, so that a
// picture looks the same in each.
//
// It does no arithmetic but that of the page and must not know any format.
// Start reading at Lay.
package drawing
