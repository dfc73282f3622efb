// Package light says what lamps bring to food: how much of their power falls on it, and
// how much of that stays in it as heat.
//
//   - [Lamp]: a head by its power, or by a light meter; [Lamp.Irradiance], [Lamp.At].
//   - [Source] and [Head]: what kinds of light and of heads are worth, [Source.Data].
//   - [Absorptance]: what a food or clear ice keeps, [WhiteFood], [PaleFood], [DarkFood],
//     [ClearIce], [ClearWater]; [Absorptance.Absorbed] sums over the lamps.
//
// Calls cost well under a microsecond; all types are plain values, safe for many
// goroutines. Hot lamps burn skin and set fire to what is near: keep the maker's distances
// and follow local codes.
package light
