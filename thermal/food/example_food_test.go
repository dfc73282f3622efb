package food_test

import (
	"fmt"
	"os"
	"text/tabwriter"

	"example.org/honestplate/thermal/food"
)

// The freezing curve of a vanilla mix, and what a cold core has to give.
func ExampleFrozenMix() {
	mix := food.Recipes().VanillaIceCream
	start, err := mix.FrozenAtC(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	density, _ := mix.Density() // the same checks hold
	fmt.Printf("%s: %.0f kg/m3, begins to freeze at %.1f degC\n", mix.Name, density, start)
	melted, err := mix.Enthalpy(start)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, temp := range []float64{-8, -13, -18, -30} {
		ice, err := mix.IceShare(temp)
		if err != nil {
			fmt.Println(err)
			return
		}
		h, _ := mix.Enthalpy(temp) // in the same range
		fmt.Printf("%4.0f degC: %2.0f %% of the water is ice, %3.0f kJ/kg until melted\n",
			temp, 100*ice, (melted-h)/1000)
	}
	// Output:
	// vanilla ice cream (typical): 580 kg/m3, begins to freeze at -2.6 degC
	//   -8 degC: 64 % of the water is ice, 139 kJ/kg until melted
	//  -13 degC: 76 % of the water is ice, 175 kJ/kg until melted
	//  -18 degC: 82 % of the water is ice, 197 kJ/kg until melted
	//  -30 degC: 88 % of the water is ice, 231 kJ/kg until melted
}

// The typical mixes beside one another: how much of the water is ice at -14 degC.
func ExampleFrozenMix_presets() {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	for _, mix := range []food.FrozenMix{
		food.Recipes().VanillaIceCream, food.Recipes().PremiumIceCream, food.Recipes().ChocolateIceCream, food.Recipes().Gelato,
		food.Recipes().FrozenYogurt, food.Recipes().SoftServe, food.Recipes().Sorbet, food.Recipes().IcePop,
	} {
		start, _ := mix.FrozenAtC(0) // the same checks hold
		ice, err := mix.IceShare(-14)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Fprintf(w, "%s\tfrom %.1f degC\t%.0f %% of the water is ice\n", mix.Name, start, 100*ice)
	}
	w.Flush()
	// Output:
	// vanilla ice cream (typical)    from -2.6 degC  78 % of the water is ice
	// premium ice cream (typical)    from -2.5 degC  78 % of the water is ice
	// chocolate ice cream (typical)  from -2.7 degC  77 % of the water is ice
	// gelato (typical)               from -3.0 degC  74 % of the water is ice
	// frozen yogurt (typical)        from -2.4 degC  79 % of the water is ice
	// soft serve (typical)           from -2.3 degC  80 % of the water is ice
	// sorbet (typical)               from -2.9 degC  75 % of the water is ice
	// ice pop (typical)              from -1.3 degC  88 % of the water is ice
}

// A litre of mix weighs 1090 g, a litre of the ice cream 560 g.
func ExampleOverrun() {
	percent, err := food.Overrun(1090, 560)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f %% of air\n", percent)
	// Output:
	// 95 % of air
}
