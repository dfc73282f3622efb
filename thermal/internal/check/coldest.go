package check

// ColdestC is the coldest to which the enthalpy of frozen food is known, degC.
const ColdestC = -90.0
