package food

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
)

func TestDrinkRefusesWhatIsNoDrink(t *testing.T) {
	for _, d := range []Drink{{Brix: -1}, {Brix: 70}, {AlcoholPercent: 60}, {Brix: math.NaN()}, {Brix: 45, AlcoholPercent: 40}} {
		_, err := d.FreezesC()
		testkit.Typed(t, err)
	}
	if _, err := (Drink{Brix: 20, AlcoholPercent: 20}).FreezesC(); err != nil {
		t.Error(err)
	}
}
