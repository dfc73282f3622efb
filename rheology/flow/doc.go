// Package flow holds flow curves: the shear stress of a liquid against its shear rate.
//
//   - A [Model] is a curve: [Newtonian], [PowerLaw], [Bingham], [HerschelBulkley], [Casson],
//     [Carreau]; [Viscosity] is its stress over its rate, and says what is wrong with it.
//   - [ReadPoints] reads a rheometer's file; [FitAll] tries every model, [Fit] one.
//
// All types are plain values, safe for concurrent use. A model takes nanoseconds, a fit
// milliseconds.
package flow
