// Package thermal predicts how long food and drink hold in front of a camera.
//
// Start with the room, [Air], the lights, [light.Lamp], and what is in the frame:
//
//   - [Glass]: when it hazes, beads and runs, how long its ice lasts.
//   - [Bottle]: how long it takes to chill, and when it must come out.
//   - [IceOnTable]: when real ice glistens and when it is gone.
//   - [Scoop]: when it softens, drips, puddles and slumps.
//   - [Softening]: when chocolate, butter or cream loses its look.
//   - [Cheese]: when the cheese on a flatbread strings.
//   - [HotDish]: how long it stays hot, how long its steam is seen.
//   - [DeepFreeze]: how long a portion takes in a [cold.Medium], before the day.
//
// Clock gives each [Event] its 95 % window and what decides it, in 20 to 200 ms;
// Likely the nominal course. Plain values, safe for many goroutines.
//
// Hot lamps burn and set fire; mains and wet sets do not go together; dry ice
// suffocates; glass breaks under shock; food under lights is not eaten after.
// Estimates, not guarantees: follow local codes and licensed practice.
package thermal
