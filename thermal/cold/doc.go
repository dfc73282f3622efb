// Package cold says what takes heat from food and drink: freezers, refrigerators, iced
// water, dry ice.
//
//   - [Medium]: its temperature and how well it takes heat.
//   - [Freezers] and [Chillers]: the usual ones, each with its source and its caution.
//
// All types are plain values, safe for many goroutines. What is this cold hurts: bare skin
// sticks to it, and dry ice suffocates.
package cold
