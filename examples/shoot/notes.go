package shoot

// A NoteCode says what a note is about; the comment says what its values are.
type NoteCode string

// The notes.
const (
	NoUnitFits     NoteCode = "no unit fits"     // value: units that fit
	UnitsLimited   NoteCode = "units limited"    // value: chance that results
	Overtime       NoteCode = "overtime"         // value: minutes after the wrap
	HandsShort     NoteCode = "hands short"      // value: hands wanted at once; second: there are
	StoreFull      NoteCode = "store full"       // value: units wanted; second: fit; text: the store
	NoColdStore    NoteCode = "no store so cold" // value: wanted degC; text: the nearest
	NoOven         NoteCode = "no oven so hot"   // value: wanted degC
	NeverLooks     NoteCode = "the look never comes by itself"
	CannotStand    NoteCode = "the real thing cannot stand so long" // value: wanted min; second: likely min
	NotSigned      NoteCode = "specification not signed"
	SpecExpired    NoteCode = "specification out of date"
	ScaleTooCoarse NoteCode = "scale too coarse" // value: tolerance, g; second: what the scale can tell, g
	NotWorthIt     NoteCode = "not worth it"     // value: minutes gained
	MayStay        NoteCode = "may stay, may gush"
	ClockChanges   NoteCode = "clocks change" // value: hours
	PastMidnight   NoteCode = "past midnight"
	TestSettles    NoteCode = "one test unit settles most of it" // value: share of the band that a definition decides
	StandInHolds   NoteCode = "stand-in does not change"
	LongDay        NoteCode = "long day"                  // value: hours
	ManyUnits      NoteCode = "more units than a day has" // value: units
	StockShort     NoteCode = "stock short"               // value: wanted; second: there are
	TooThinForCup  NoteCode = "no cup tells it: time the pour"
	Taught         NoteCode = "taught by today"
	RevisedBatch   NoteCode = "batch corrected"
	MayBurst       NoteCode = "may burst"                   // value: minutes until it may
	FavourFlagged  NoteCode = "favour beyond the allowance" // value: favour; second: allowance
)
