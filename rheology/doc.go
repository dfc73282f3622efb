// Package rheology says what a liquid is. Blends are log-mixing with its departure named,
// ln eta = sum w_i ln eta_i + E, E from the composition that the parts share: [Rule]. Start
// with a liquid, ask a [Recipe] for grams, time a [Cup], correct the [Batch]:
//
//   - Liquids: [Catalogue] lists them, [CompositionOf] what is in them, [ReadLiquid] reads
//     one; [Measured] and [Custom] are yours. What was done to a cream is its [Treatment].
//   - Blends: [Blend], [Mix.Departure], [CompareRules], [Recipe.FitRule]; each is mixed at
//     one shear rate, which its [Description] states.
//   - The bench: [Cups], [Batch.CupTest], [CupReading], [Batch.CorrectFromCup], each cup at its
//     own rate; [FallingBall]. The advertised product is not blended: [ServeAt].
//
// Package pour says what a liquid does, look what the lens sees of it, flow holds flow
// curves, law closed forms. Bands are 95 %; cold cream is known to a factor: mix, time a
// cup, correct. Values are safe for concurrent use; properties take about a microsecond and
// allocate nothing. Hot oil and syrup burn; food that stood warm is not eaten; mind
// allergens and local food law.
package rheology
