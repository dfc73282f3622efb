package rheology

// Catalogue lists the liquids that come with the library, one of each kind with
// usual contents, so that a program can show what there is. Print Describe of each
// for its source, range and band. The list is new at every call.
func Catalogue() []Liquid {
	return []Liquid{
		Water{},
		Dairy{0.1}, Dairy{1.5}, Dairy{3.5}, Dairy{12}, Dairy{30}, Dairy{36},
		SweetenedCondensed, Evaporated,
		Sucrose{50}, Sucrose{65}, Maple{}, Invert{}, Glucose{}, Honey{},
		Olive, Sunflower, Rapeseed, Corn, Soybean, Peanut, Cottonseed, Safflower, RiceBran, Walnut,
		Glycerol{50}, Glycerol{85}, Glycerol{100},
		Ketchup, Mustard, Mayonnaise, StirredYoghurt, Custard, ChocolateSauce,
		MilkChocolate, DarkChocolate, TemperedChocolate,
	}
}
