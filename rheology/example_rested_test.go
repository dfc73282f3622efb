package rheology_test

import (
	"fmt"

	"example.org/honestplate/rheology"
)

// Ketchup that has stood in its bottle, and after a shake.
func ExampleRestedYieldStress() {
	ketchup := rheology.Food("tomato ketchup")
	rested, err := rheology.RestedYieldStress(ketchup, 20)
	if err != nil {
		fmt.Println(err)
		return
	}
	shaken, err := ketchup.YieldStress(20)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("starts at %.0f Pa, goes on down to %.0f Pa\n", rested.Likely, shaken.Likely)
	// Output:
	// starts at 68 Pa, goes on down to 34 Pa
}
