// Package rheology says what a liquid is. Start with a liquid, ask a [Recipe] for grams,
// time a [Cup], correct the [Batch]:
//
//   - Liquids: [Catalogue] lists them, [CompositionOf] what is in them, [ReadLiquid] reads
//     one; [Measured] and [Custom] are yours.
//   - Blends are log-mixing, ln eta = sum w_i ln eta_i: [Blend], [Rule], [CompareRules].
//   - The bench: [CupNamed], [Cup.TimeOf], [Batch.CorrectFromCup], [FallingBall]. The
//     advertised product is not blended: [ServeAt].
//
// Package pour says what a liquid does, look what the lens sees of it, flow holds flow
// curves, law closed forms. Bands are 95 %; cold cream is known to a factor: mix, time a
// cup, correct. Values are safe for concurrent use; properties take under a microsecond and
// allocate nothing. Hot oil and syrup burn; food that stood warm is not eaten; mind
// allergens and local food law.
package rheology
