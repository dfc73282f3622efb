// Package rheology says what a liquid is. Start with a liquid, ask a [Recipe] for grams, measure,
// and [Batch.Correct]:
//
//   - Liquids: [Catalogue] lists them, [CompositionOf] what is in them, [ReadLiquid] reads
//     one; [Measured] and [Custom] are yours. What was done to a cream is its [Treatment].
//   - Blends: [Blend], [Mix.Departure], [Recipe.FitRule]; each is mixed at
//     one shear rate, which its [Description] states. They are log-mixing with its departure
//     named, ln eta = sum w_i ln eta_i + E, E from the composition that the parts share: [Rule].
//   - The advertised product is not blended: [ServeAt].
//
// Package viscometer holds cups, and what they say of a batch; pour what a liquid does, look
// what the lens sees of it, flow flow curves, law closed forms. Bands are 95 %. Values are
// safe for concurrent use; properties take about a microsecond and allocate nothing. Hot oil
// and syrup burn; food that stood warm is not eaten; mind allergens and local food law.
package rheology
