package published

import "example.org/honestplate/portion/apportion"

// Checks of shares, tolerances, weighing and heroes.
var portionShares = []Check{
	{
		Table: "apportionment_small", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: smallApportionment,
	},
	{
		Table: "apportionment_us_1790", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1790",
			house{"hamilton_120_seats", "population", apportion.LargestRemainder, 120, 0},
			house{"jefferson_105_seats", "population", apportion.Jefferson, 105, 0}),
	},
	{
		Table: "apportionment_us_1880", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1880",
			house{"seats_of_299", "population", apportion.Vinton, 299, 1},
			house{"seats_of_300", "population", apportion.Vinton, 300, 1}),
	},
	{
		Table: "apportionment_us_1900", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1900",
			house{"seats_of_386", "population_1900", apportion.Vinton, 386, 1},
			house{"seats_of_391", "population_1907", apportion.Vinton, 391, 1}),
	},
	{
		Table: "apportionment_us_1970_2020", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1970_2020", house{"seats", "population", apportion.HuntingtonHill, 435, 1}),
	},
	{
		Table: "biproportional", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: biproportional,
	},
	{
		Table: "controlled_rounding", Package: "portion", Quantity: "rounded entry", Unit: "bases", Claim: "both round down or up: within 1",
		Points: controlledRounding,
	},
	{
		Table: "tolerable_negative_error", Package: "portion", Quantity: "tolerable negative error", Unit: "g", Claim: "exact, less the rounding up to 0.1 g",
		Points: tolerableNegativeError,
	},
	{
		Table: "scale_errors_r76", Package: "portion", Quantity: "permissible error", Unit: "e", Claim: "equal",
		Points: scaleErrors,
	},
	{
		Table: "scale_classes_r76", Package: "portion", Quantity: "class limit", Unit: "e", Claim: "equal",
		Points: scaleClass,
	},
	{
		Table: "success_run", Package: "portion", Quantity: "lowest success rate", Claim: "half the last printed digit",
		Points: successRun,
	},
	{
		Table: "trials_for_successes", Package: "portion", Quantity: "units to prepare", Unit: "units", Claim: "equal",
		Points: trialsForSuccesses,
	},
	{
		Table: "chance_of_five", Package: "portion", Quantity: "probability", Claim: "half the fifth digit",
		Points: chanceOfFive,
	},
	{
		Table: "quid", Package: "portion", Quantity: "ingredient in the food", Unit: "%", Claim: "the printed digit",
		Points: quid,
	},
	{
		Table: "bounded_allocation", Package: "portion", Quantity: "allocation", Unit: "units", Claim: "half the last printed digit",
		Points: boundedAllocation,
	},
}
