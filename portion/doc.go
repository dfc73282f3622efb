// Package portion decides who gets how much of a declared quantity, exactly.
//
// A Declaration states an item's mass or count in whole steps of the scale and
// whether it is the advertised product. Share spreads it over zones, Table over
// slices and zones with both margins exact, Layout over the geometry of a dish.
// Pick chooses the best-looking pieces that still weigh what is declared. Scale
// and tolerance say what a weighing proves, Heroes how many units to prepare, and
// Record keeps what was declared, planned, weighed and signed.
//
// Inside, everything is counted in whole steps: not a gram or a piece is lost.
package portion
