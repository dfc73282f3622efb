// Package viscometer holds what a bench measures viscosity with, and what a reading says about
// a batch.
//
// Start with a cup: [CupNamed] ("ISO 4", "Zahn 2"), [ISOCupFor] a liquid, or one of [Cups]; their
// constants are in cup_constants.go, a certificate's own go into [Cup].
//
//   - Before: [Cup.Test] says what the cup should show of a batch and which times mean "leave
//     it" ([OKTime]); [Cup.TimeOf] what it shows of a liquid.
//   - After: [Cup.Timed] takes the timings, [CupReading.Correct] says what to add,
//     [CupReading.Measure] makes a [rheology.Measured] of the liquid.
//   - What is thick and clear, honey or syrup: [FallingBall].
//
// Each cup is read at its own shear rate ([Cup.ShearRate]). Bands are 95 %. All types are plain
// values, safe for concurrent use.
//
// Hot syrup burns; what stood warm on the bench is not eaten; mind allergens and local food law.
package viscometer
