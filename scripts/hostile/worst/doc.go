// Command worst measures the plans of package hostile one by one, in processor
// time, and random ones for as long as it is told, and lists the slowest.
//
//	go run ./scripts/hostile/worst [-export] [-random N] [-seed N] [-most DURATION] [-write DIR] [NAME...]
//
// With -write it lays the plans into a folder instead. A plan that takes more than
// -most is given up, and says so.
package main
