// Package honestplate is the front door of a library for photographing food and
// drink honestly: the client's real product, in its declared amount, looking its
// best in front of hot lights, in a window of seconds to minutes, with a record
// of how the picture was made.
//
// There is no code here. The work is in three packages that do not import each
// other:
//
//   - rheology: how a liquid pours. Viscosity of milk-cream blends by a
//     log-mixing rule, syrups, sauces; recipes on the scale's step; flow cups;
//     the pour, its stream, splash and spread.
//   - thermal: how long it holds. Fog, beads and runs on a cold glass; scoops
//     and ice under lamps; freezing times; melted cheese.
//   - portion: who gets how much. Declared quantities shared over slices and
//     zones, exact to the scale's step; pieces chosen by weight; tolerances;
//     hero units; the record.
//
// The folder examples composes them: a notebook of worked chapters, and the
// program callsheet, which turns a shoot brief into a call sheet.
//
// # Conventions
//
// Numbers are float64 in SI units, except temperatures in degrees Celsius (names
// ending in TempC or C) and masses in grams (names with Grams). Fractions are
// 0..1 unless the name says Percent. Times are time.Duration. Every prediction
// carries a 95 % band. Outside a model's stated range there is an error that says
// which value, which limit and whose; nothing is clamped in silence.
//
// # Cautions
//
// These are estimates, not guarantees. Hot lamps, mains near liquids, dry ice,
// deep-frozen surfaces and glass under thermal shock injure people; food that
// was out under lights is not eaten; allergens and the law of advertising and of
// weights and measures are local. Follow local codes and licensed practice.
package honestplate
