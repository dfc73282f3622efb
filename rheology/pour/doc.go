// Package pour says what a liquid does once it leaves its vessel, and for how long.
//
// Start with an outlet, a [Spout] (bottle, tube, hole) or a [Lip] (jug, bowl), and ask it to
// pour:
//
//   - [Spout.Pour] and [Lip.Pour] give a [Pour]: how long, how fast, what stays behind;
//     [Pour.Dribble] whether it runs back under the edge.
//   - [Pour.Stream] falls, thins and breaks; where it lands it may [Stream.Splash], raise a
//     [Stream.Crown] or [Stream.Coil].
//   - [Pour.Puddle] spreads, [Pour.Settled] lies; [Wall.Drain] is what a glass keeps.
//   - [BubbleRise] and [BubblesClear] say when stirred liquid is clear.
//
// Every prediction carries a 95 % band; words say which regime it is. All types are plain
// values, safe for concurrent use, and a call takes microseconds.
//
// Liquids and mains: keep jugs away from lamps, packs and leads. Hot syrup and oil burn, wet
// floors are slippery.
package pour
