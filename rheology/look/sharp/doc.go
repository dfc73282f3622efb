// Package sharp freezes what moves: how far a stream, a drop or a crown's rim runs on the
// sensor while the light is on, which flash keeps that within a pixel, and when to press.
//
//   - [Camera] knows the magnification; [Camera.Blur] gives the blur of an [Exposure].
//   - [Camera.Freezes] gives the longest light that keeps the blur within a limit, and
//     [Unit.For] the setting of a flash that is short enough.
//   - [Contact.Moments] says when a crater is deepest and a jet stands, within what is
//     known of it.
//
// # Cautions
//
// Flash capacitors hold enough charge to kill long after they were switched off: do not
// open them. Keep leads and packs out of the reach of droplets, and follow local codes
// for electricity near liquids. Fast flashes in a row disturb people with photosensitive
// epilepsy: say so before.
package sharp
