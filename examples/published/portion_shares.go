package published

import "example.org/honestplate/portion"

// Checks of shares, tolerances, weighing and heroes.
var portionShares = []Check{
	{
		Table: "apportionment_small", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: smallApportionment,
	},
	{
		Table: "apportionment_us_1790", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1790",
			house{"hamilton_120_seats", "population", portion.LargestRemainder, 120, 0},
			house{"jefferson_105_seats", "population", portion.Jefferson, 105, 0}),
	},
	{
		Table: "apportionment_us_1880", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1880",
			house{"seats_of_299", "population", portion.LargestRemainder, 299, 1},
			house{"seats_of_300", "population", portion.LargestRemainder, 300, 1}),
	},
	{
		Table: "apportionment_us_1900", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1900",
			house{"seats_of_386", "population_1900", portion.LargestRemainder, 386, 1},
			house{"seats_of_391", "population_1907", portion.LargestRemainder, 391, 1}),
	},
	{
		Table: "apportionment_us_1970_2020", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: seats("apportionment_us_1970_2020", house{"seats", "population", portion.HuntingtonHill, 435, 1}),
	},
	{
		Table: "biproportional", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: biproportional,
	},
	{
		Table: "proportional_fit", Package: "portion", Quantity: "fitted entry", Claim: "the printed 6 digits",
		Points: proportionalFit,
	},
	{
		Table: "controlled_rounding", Package: "portion", Quantity: "rounded entry", Unit: "bases", Claim: "both round down or up: within 1",
		Points: controlledRounding,
	},
}
