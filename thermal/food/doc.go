// Package food says what food is made of, thermally: how much of it is ice, how dense
// it is, how it conducts and how much heat it takes to warm.
//
//   - [FrozenMix]: the recipe of a frozen dessert, whose freezing curve is published;
//     [FrozenMix.FrozenAtC] asks that curve, [FrozenMix.Curve] makes enthalpy, ice and
//     conductivity against temperature ready for many questions, an [EnthalpyCurve].
//   - [Recipes]: [TypicalRecipes], nobody's product.
//   - [Structure]: how the fat and the gums of a frozen dessert hold its melt.
//   - [SoftFood]: chocolate, butter, cream; [SoftFoods] the usual ones.
//   - [Drink]: what is poured; [IceFor] and [MixIce]: ice and drink together.
//   - [Overrun]: how much air a frozen dessert holds, by weighing equal volumes.
//   - [Food]: any other food by its composition.
//
// Temperatures are degC, fractions 0..1 unless called Percent. All types are plain
// values or do not change once made, safe for use from many goroutines.
package food
