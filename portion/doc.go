// Package portion decides who gets how much of a declared quantity, exactly.
//
// A Declaration states an item's mass or count in whole steps of the scale and
// whether it is the advertised product. Share spreads it over zones, by largest
// remainder or any other Method; ShareNear follows wishes in grams; Table shares
// over slices and zones with both totals exact, or says which contradict. Quid and
// Formula turn percentages and recipes into grams and back.
//
// Layouts put the shares on a round, oval or rectangular dish and draw them. Pick
// chooses the best-looking pieces that still weigh what is declared, and proves it.
//
// Scale, Combine, the tolerances and Lot say what a weighing proves: about a
// package, a batch, and the picture. Heroes says how many units to prepare. Record
// keeps what was declared, planned, weighed and signed.
//
// Inside, everything is counted in whole steps: not a gram or a piece is lost.
// What must be declared and shown, and within which tolerance, is for local law.
package portion
