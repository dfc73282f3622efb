// Package rheology predicts how a liquid pours: its viscosity from what is in
// it, and what a camera sees of the pour that follows.
//
// The story runs in the order a food technologist works. A Liquid answers for
// its viscosity, density and surface tension at a temperature. Blend mixes
// liquids by a log-mixing rule; Recipe turns a wanted viscosity into grams on the
// scale's step; a Cup measures what was really mixed and Correct says what to
// add. Spout pours it, and the stream that leaves it thins, breaks, splashes or
// coils; then the puddle spreads and the film drains.
//
// Every prediction is an Estimate with a 95 % band. Cold cream is known to a
// factor, not to per cents, so the honest way is: predict with a band, mix, time
// a flow cup, correct.
package rheology
