// Package plate lays a declared amount on a dish as seen from above, in whole steps of
// the scale. Start with a [Round] or a [Rectangle] and its cuts: [Strips] and [Spread]
// lay a mass on it ([Layout]), [Scatter] finds spots for separate pieces ([Placing]).
// Pieces that weigh what is declared come from portion.Pick. The package
// example.org/honestplate/examples/plated draws both for the bench.
//
// A true total, favoured towards the camera, can still mislead about a slice that is
// sold: [Layout.SliceSold]. Conventions and errors: package honestplate. Values are plain
// and safe for concurrent use.
package plate
