package thermal

// A doubt is what a clock is worth beyond its inputs, as 95 % limits of a factor on all
// its times: lean for all units of a kind, unit from one to the next. It keeps what was
// seen of one unit from being taken for knowledge that the model has not.
type doubt struct{ lean, unit float64 }

// The doubts.
var (
	doubtHot    = doubt{1.10, 1.06}
	doubtCold   = doubt{1.15, 1.10}
	doubtIce    = doubt{1.20, 1.10}
	doubtFrozen = doubt{1.20, 1.10}
	doubtFreeze = doubt{1.15, 1.10}
)
