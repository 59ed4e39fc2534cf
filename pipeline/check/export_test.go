package check

// For the fixtures, which run the whole pipeline from outside the package.
var (
	Catalogued = catalogued
	Golden     = golden
	Short      = short
)
