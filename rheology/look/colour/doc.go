// Package colour turns a spectrum of reflectance into what an eye or a white-balanced
// camera sees of it.
//
//   - [Spectrum] holds reflectance over the visible, [Light] the lamp.
//   - [Light.See] gives [XYZ]; from it come [Lab] and a [Swatch] to look at.
//   - [Difference] is CIEDE2000.
//
// Everything is for the CIE 1931 observer of 2 degrees, in sums over 5 nm from 380 to
// 780 nm, and relative to the white of the same light: what a camera shows that was
// balanced for it. The tables of the CIE are as published in public code for colour
// science; testdata holds them too, and a test compares the two.
package colour
