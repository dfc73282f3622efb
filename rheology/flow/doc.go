// Package flow holds flow curves: the shear stress of a liquid against its shear rate.
//
//   - A [Model] is a curve: [Newtonian], [PowerLaw], [Bingham], [HerschelBulkley], [Casson],
//     [Carreau]; [Viscosity] is its stress over its rate, [Check] says what is wrong with it.
//   - [ReadPoints] reads a rheometer's file; [FitAll] tries every model, [Fit] one.
//   - A [Pipe] is a needle, a nozzle or a hose: what flows under which pressure.
//
// All types are plain values, safe for concurrent use. A model takes nanoseconds, a fit
// milliseconds. A nozzle under pressure squirts: mind eyes and hot lamps.
package flow
