// Package raster draws a laid out picture as a PNG file, for the formats that
// cannot hold the drawing itself. The same drawing gives the same bytes.
//
// It must not know what a picture shows. Start reading at PNG.
package raster
