package published

// Checks of air, surfaces, light and cold glass.
var thermalAir = []Check{}
