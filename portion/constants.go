package portion

import "example.org/honestplate/portion/internal/decimal"

// Limits of masses, in grams: from a microgram balance to a thousand tonnes.
const (
	leastStepGrams = 1e-6
	mostStepGrams  = 1e6
	mostGrams      = 1e9

	mostUnits = 1_000_000        // of heroes and of weighings
	maxSteps  = decimal.MaxSteps // of any count of steps or pieces
)

// Why the limits stand where they do.
const (
	stepReason   = "from a microgram balance to a weighbridge"
	massReason   = "a thousand tonnes: beyond, a float64 loses steps of a microgram"
	stepsReason  = "counts of steps are exact up to here: take a coarser step"
	effortReason = "larger ones take minutes"
)

// defaultName stands for an item without a name.
const defaultName = "the item"
