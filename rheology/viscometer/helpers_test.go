package viscometer_test

import (
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/viscometer"
)

// cup is a standard cup by its short name.
func cup(name string) viscometer.Cup {
	c, err := viscometer.CupNamed(name)
	if err != nil {
		panic(err)
	}
	return c
}

// kitchen is milk with cream at 6 degC.
func kitchen(batch, step float64) rheology.Recipe {
	return rheology.Recipe{
		Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Dairy{FatPercent: 36},
		BatchGrams: batch, StepGrams: step, TempC: 6,
	}
}
