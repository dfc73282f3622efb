package published

// Checks of conduction, food and freezing.
var thermalConduction = []Check{}
