// Package svg writes pictures as SVG files: in real units for print, without
// fonts, links or scripts, with a title and a description for those who cannot
// see them. The same picture gives the same bytes.
//
// It must not know what a picture shows: package drawing lays it out. Start
// reading at Bytes.
package svg
