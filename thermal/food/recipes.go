package food

// TypicalRecipes are typical, invented for this library within the ranges that textbooks
// give; nobody's product. Use the recipe on the tub or from the kitchen where there is one.
type TypicalRecipes struct {
	// VanillaIceCream is a typical scooping ice cream: 12 % fat, 90 % overrun.
	VanillaIceCream FrozenMix
	// PremiumIceCream is a dense, rich ice cream: 16 % fat, 30 % overrun.
	PremiumIceCream FrozenMix
	// Gelato is a soft, dense style: 7 % fat, part of the sugar dextrose, 35 % overrun.
	Gelato FrozenMix
	// ChocolateIceCream is VanillaIceCream with cocoa and more sugar.
	ChocolateIceCream FrozenMix
	// FrozenYogurt is low in fat: 4 %, 50 % overrun.
	FrozenYogurt FrozenMix
	// SoftServe is drawn and eaten soft: 5 % fat, 40 % overrun.
	SoftServe FrozenMix
	// Sorbet is fruit, water and sugar: no milk, 25 % overrun.
	Sorbet FrozenMix
	// IcePop is sweetened water frozen on a stick: no air.
	IcePop FrozenMix
}

// Recipes returns them.
func Recipes() TypicalRecipes {
	return TypicalRecipes{
		VanillaIceCream: FrozenMix{Name: "vanilla ice cream (typical)", FatPercent: 12, MSNFPercent: 11, SucrosePercent: 12,
			GlucoseSyrupPercent: 4, OtherSolidsPercent: 0.4, OverrunPercent: 90},
		PremiumIceCream: FrozenMix{Name: "premium ice cream (typical)", FatPercent: 16, MSNFPercent: 9.5, SucrosePercent: 15,
			OtherSolidsPercent: 1.5, OverrunPercent: 30},
		Gelato: FrozenMix{Name: "gelato (typical)", FatPercent: 7, MSNFPercent: 10, SucrosePercent: 14,
			MonosaccharidePercent: 4, OtherSolidsPercent: 0.6, OverrunPercent: 35},
		ChocolateIceCream: FrozenMix{Name: "chocolate ice cream (typical)", FatPercent: 12, MSNFPercent: 10, SucrosePercent: 14,
			GlucoseSyrupPercent: 3, OtherSolidsPercent: 3, OverrunPercent: 85},
		FrozenYogurt: FrozenMix{Name: "frozen yogurt (typical)", FatPercent: 4, MSNFPercent: 12, SucrosePercent: 13,
			GlucoseSyrupPercent: 3, OtherSolidsPercent: 0.5, OverrunPercent: 50},
		SoftServe: FrozenMix{Name: "soft serve (typical)", FatPercent: 5, MSNFPercent: 12, SucrosePercent: 12,
			GlucoseSyrupPercent: 3, OtherSolidsPercent: 0.4, OverrunPercent: 40},
		Sorbet: FrozenMix{Name: "sorbet (typical)", SucrosePercent: 17, MonosaccharidePercent: 6,
			GlucoseSyrupPercent: 5, OtherSolidsPercent: 2, OverrunPercent: 25},
		IcePop: FrozenMix{Name: "ice pop (typical)", SucrosePercent: 14, MonosaccharidePercent: 2, OtherSolidsPercent: 0.4},
	}
}
