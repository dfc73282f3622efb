// Package food says what food is made of, thermally: how much of it is ice, how dense
// it is, how it conducts and how much heat it takes to warm.
//
//   - [FrozenMix]: the recipe of a frozen dessert, whose freezing curve is published;
//     [FrozenMix.FrozenAtC] and [FrozenMix.IceShare] ask that curve, [FrozenMix.Enthalpy]
//     says what heat it holds.
//   - [Recipes]: [TypicalRecipes], nobody's product.
//   - [Structure]: how the fat and the gums of a frozen dessert hold its melt.
//   - [SoftFood]: chocolate, butter, cream; [SoftFoods] the usual ones.
//   - [Drink]: what is poured; [IceFor]: how much ice brings it to a temperature.
//   - [Overrun]: how much air a frozen dessert holds, by weighing equal volumes.
//
// Temperatures are degC, fractions 0..1 unless called Percent. All types are plain
// values or do not change once made, safe for use from many goroutines.
package food
