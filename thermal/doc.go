// Package thermal predicts how long food and drink hold in front of a camera.
//
// Start with the room, [Air], and the lights, [Lamp]. Then ask the clock of what is in
// the frame: each has Clock, with a 95 % band over the stated uncertainties of its
// inputs, and Likely, the nominal course alone, at a few hundredths of the cost.
//
//   - [Glass]: when a cold glass hazes, beads and runs; how long its ice lasts, how cold
//     and how diluted the drink gets. [Glass.IceFor]: how much ice it takes.
//   - [Bottle]: how long a bottle or can takes to chill, and when it must come out.
//   - [IceOnTable]: when real ice glistens and when it is gone.
//   - [Scoop]: when a scoop softens, drips, puddles and slumps.
//   - [Softening]: when chocolate, butter or cream loses its look.
//   - [Cheese]: when the cheese on a flatbread strings.
//   - [HotDish]: how long it stays hot, and how long its steam is seen.
//   - [DeepFreeze]: before the day, how long a portion takes in a [Medium].
//
// Each answer is an [Event]: a window that may be never, and the inputs that decide its
// width, each said to be of this unit alone or shared with the room, the lamps, the
// crew's judgement or the product.
//
// What else is asked: [Ware.Shock] (does the glass break?), [MixIce] (what do ice and
// water come to?), [Air.Steam] (does it steam visibly?), [Absorptance] (how much of the
// light stays in it?). The physics is in the folder heat, what foods are made of in food.
//
// A Clock computes some hundreds of courses on all cores: 20 to 200 ms. Types are plain
// values, safe for use from many goroutines.
//
// # Cautions
//
// Hot lamps burn and set fire; mains and wet sets do not go together; dry ice
// suffocates and burns by its cold; glass breaks under thermal shock; food that
// stood under lights is not eaten. These are estimates, not guarantees: follow local
// codes and licensed practice.
package thermal
