package published

// Checks of liquids and their flow curves.
var rheologyLiquids = []Check{}
