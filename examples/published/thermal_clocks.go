package published

// Checks of scoops, ice and the enthalpy solver.
var thermalClocks = []Check{}
