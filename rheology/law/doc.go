// Package law holds published closed forms of streams, drops, films, puddles and bubbles,
// each with its source, its range and what is known of its accuracy. What pours ask of
// them is in package pour; here a number can be compared with the source itself.
//
//   - [Fluid]: [Fluid.DrippingWeber], [Fluid.PendantDrop], [Fluid.DraggedFilm].
//   - [Jet]: [Jet.Fall] and [Jet.BreakUp].
//   - [FedPuddle] and [ReleasedPuddle] spread; [TerminalSpeed] falls.
//   - [Bubble] rises; [Impact] throws up the sheet that splashes.
//
// Sizes that make no sense are an InputError, those outside a law's range a RangeError.
// The types are plain values, and nothing here allocates on success.
package law
