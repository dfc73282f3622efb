// Package look says what the lens sees of a liquid: how white it is, how yellow, what it
// hides, and from which depth.
//
// Start with [Milk] (milk or cream by fat, protein, homogenisation and carotene). Its Optics
// are asked how they look in a [Scene] ([Optics.Appear]), how they look beside another
// ([Optics.Beside]), and from which depth they hide a ground ([Optics.Hides]). [Mix] stirs liquids together; [Of] is the
// way from a liquid of rheology, and [CreamFor] the one from a wish to grams.
//
// Below it, [example.org/honestplate/rheology/look/mie] scatters by single spheres,
// [example.org/honestplate/rheology/look/layer] adds and doubles layers,
// [example.org/honestplate/rheology/look/colour] sees colours, and
// [example.org/honestplate/rheology/look/sharp] freezes what moves.
//
// # What it can and cannot say
//
// Scattering of milk is well published, its colour by fat is not: four triplets on a
// known scale, none of cream. So bands are wide, and cream's b* follows its carotene: ask
// for it. By this model a thin coat of a blend with cream is whiter and hides sooner; a
// deep pool looks the same and, unless the cream is pale, yellower. That crews find the
// blend whiter is common practice, no source.
//
// Numbers are for a wide, level surface without bubbles or skin; froth is whiter than any
// of them. A coat of 0.05 to 0.2 mm, as a pour leaves on glass, never hides.
//
// # Cautions
//
// A blend that looks better than what is sold is a stand-in, never the advertised
// product; local law on advertising decides. Milk that stood under lamps is not for
// drinking, and what is in it matters to people with allergies.
package look
