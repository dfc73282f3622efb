package rheology_test

import "example.org/honestplate/rheology"

// cup is a standard cup by its short name.
func cup(name string) rheology.Cup {
	c, err := rheology.CupNamed(name)
	if err != nil {
		panic(err)
	}
	return c
}
