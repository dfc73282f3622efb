package rheology

import (
	"maps"
	"slices"
)

// Catalogue lists the liquids that come with the library, one of each kind with
// usual contents and every [Food], so that a program can show what there is. Print Describe
// of each for its source, range and band. The list is new at every call.
func Catalogue() []Liquid {
	out := []Liquid{
		Water{},
		Dairy{FatPercent: 0.1}, Dairy{FatPercent: 1.5}, Dairy{FatPercent: 3.5}, Dairy{FatPercent: 12}, Dairy{FatPercent: 30}, Dairy{FatPercent: 36},
		Sucrose{50}, Sucrose{65}, Syrup{Of: "maple"}, Syrup{Of: "invert"}, Syrup{Of: "glucose"}, Honey{},
		Glycerol{50}, Glycerol{85}, Glycerol{100},
	}
	for _, f := range slices.Sorted(maps.Keys(foods)) {
		out = append(out, f)
	}
	return out
}
