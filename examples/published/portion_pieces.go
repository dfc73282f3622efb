package published

// Checks of pieces, layouts and the record.
var portionPieces = []Check{}
