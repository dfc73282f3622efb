package published

// Checks of blends, recipes and cups.
var rheologyBlends = []Check{}
