// Package layer says what a flat layer of a cloudy liquid returns and lets through, by
// adding and doubling: the layer is built from one so thin that its law is known.
//
//   - [Slab] is the layer; [Slab.Solve] makes a [Solved], which is then asked what it does
//     alone ([Solved.Alone]) or over a ground ([Solved.Over]).
//
// Light is a beam at one angle or comes from all sides ([Fluxes] has both). Surfaces
// reflect by Fresnel's law and are smooth; a ground in contact scatters evenly.
//
// Sources: van de Hulst 1980, "Multiple light scattering", for doubling; Prahl, van
// Gemert and Welch 1993, "Determining the optical properties of turbid media by using the
// adding-doubling method", for layers with surfaces (both from memory; their values are
// compared in examples/published).
package layer
