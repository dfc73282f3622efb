// Package portion decides who gets how much of a declared quantity, exactly, and keeps
// the record of it.
//
// Start with [Declaration]: an item's mass or count in whole steps of the scale, and
// whether it is the advertised product.
//
//   - [Declaration.Share] spreads it over zones, [Table] over slices and zones with both
//     totals exact; the methods behind are in package apportion below.
//   - [Strips] and [Spread] lay it on a [Round], an [Oval] or a [Rectangle], [Scatter]
//     places separate pieces; [Layout.SVG] and [Placing.SVG] draw the bench sheet.
//   - [Pick] chooses the best-looking pieces that weigh what is declared, with proof.
//   - [Heroes] says how many units to prepare.
//   - [Scale] says what a weighing is worth, [Declaration.JudgePicture] and
//     [Declaration.JudgeCount] whether the picture shows what is declared.
//   - [Formula] scales a recipe, [Quid] declares its percentages.
//   - [Record] keeps what was declared, planned, weighed and signed: for a machine by
//     [Record.Write] and [ReadRecord], for a client by [Record.Statement].
//
// Inside, everything is counted in whole steps: not a gram or a piece is lost, and ties
// are decided by the stated rule, the same on every machine. Errors are those of
// package honestplate; [StepError], [InfeasibleError] and those of apportion say more.
//
// Values are plain and safe from many goroutines. Sharing takes microseconds, laying
// and drawing milliseconds, a hard [Pick] what its Effort allows.
//
// What must be declared and shown, and within which tolerance, is for local law.
// Favouring the camera with a true total can still mislead about a slice that is sold.
package portion
