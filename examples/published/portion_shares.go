package published

// Checks of shares, tolerances, weighing and heroes.
var portionShares = []Check{}
