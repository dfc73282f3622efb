package published

// Checks of pours, streams and puddles.
var rheologyPours = []Check{}
