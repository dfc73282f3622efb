// Package heat is the physics of the clocks: moist air, surfaces, conduction with
// change of phase, each by published formulas whose sources stand beside them.
//
// Start with a [MoistAir] and a [Surface] in it:
//
//   - [MoistAir]: dew point, wet bulb, visible steam; its [Properties].
//   - [SaturationPressure], [SaturationTemperature], [LatentHeat], [PressureAtAltitude].
//   - [Surface.In]: what a surface exchanges with the air by convection, radiation, dew
//     and evaporation, as an [Exchanger] that answers with a [Flux].
//   - [Surface.FreeNusselt], [Surface.ForcedNusselt]: the correlations behind it.
//   - [Body]: a ball, cylinder or slab that warms, melts or freezes along a [Curve];
//     [Melting] makes the curve of what melts at one temperature.
//   - [Material], [SodaLime] and the constants of water and ice.
//   - [BlackbodyFraction]: which share of a lamp's radiation lies below a wavelength.
//
// Temperatures are degC, all else SI. Functions that evaluate a formula allocate nothing
// and are safe for use from many goroutines. Outside a published range there is a
// [honestplate.RangeError] that names its source.
package heat
