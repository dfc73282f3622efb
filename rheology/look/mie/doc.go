// Package mie says how a sphere scatters light: the solution of Lorenz and Mie for one
// sphere, and what many spheres of many sizes scatter together.
//
//   - [Sphere] gives the efficiencies of one clear sphere, to a size parameter of 20,000.
//   - [LogNormal] makes size classes of a log-normal distribution of volume.
//   - [Suspended.At] gives what spheres in a clear liquid scatter at one wavelength.
//
// Each sphere is taken to scatter by itself. That holds in milk; in cream the
// globules are near each other and scatter less than their sum.
//
// Source of the formulas: Bohren and Huffman 1983, "Absorption and scattering of light by
// small particles", chapter 4 (from memory; its values and those of Wiscombe 1979 are
// compared in examples/published).
package mie
