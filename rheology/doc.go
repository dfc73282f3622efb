// Package rheology says what a liquid is: its viscosity from what is in it, what a blend
// of two must hold to pour as wanted, and what a flow cup tells of it.
//
// Start with a liquid, ask a [Recipe] for grams, time a [Cup], correct the [Batch]:
//
//   - Liquids: [Water], [Dairy], [Sucrose], [Syrup], [Honey], [Glycerol], [Food];
//     [Catalogue] lists them, [CompositionOf] says what is in them.
//   - Your own: [Measured] is one of them by your cup or rheometer, [Custom] one that the
//     library does not know.
//   - Blends: [Blend], [Rule], [Recipe]; [CompareRules] against blends that were measured.
//   - The bench: [CupNamed], [Cup.TimeOf], [Batch.CorrectFromCup], [Batch.Chill],
//     [FallingBall]. The advertised product is not blended: [ServeAt] chooses its temperature.
//   - The wire: [ReadLiquid] reads what each liquid writes.
//
// What a liquid does is in package pour (outlets, streams, splashes, puddles, bubbles), flow
// curves and their fits in package flow, published closed forms in package law.
//
// Blending is log-mixing by mass: ln eta = sum w_i ln eta_i. Every prediction is an Estimate
// with a 95 % band. Cold cream is known to a factor, not to per cents, so the honest way is:
// predict with a band, mix, time a flow cup, correct.
//
// Errors are those of the root: InputError, RangeError and RefusedError, each with the field
// it is about. All types are plain values, safe for concurrent use; a property of a liquid
// takes less than a microsecond and allocates nothing.
//
// Hot oil and syrup burn; food that stood warm is not eaten; allergens stay in what they
// touch. Follow local food law.
package rheology
