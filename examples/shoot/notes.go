package shoot

// A NoteCode says what a note is about; the comment says what its values are.
type NoteCode string

// The notes.
const (
	NoUnitFits     NoteCode = "no unit fits"             // text: what limits them
	UnitsLimited   NoteCode = "units limited"            // value: chance that results; text: what limits them
	Overtime       NoteCode = "overtime"                 // value: minutes after the wrap
	HandsShort     NoteCode = "hands short"              // value: hands wanted at once; second: there are
	StoreFull      NoteCode = "store full"               // value: units wanted; second: fit; text: the store
	NoColdStore    NoteCode = "no store so cold"         // value: wanted degC; text: the nearest
	StoreTooCold   NoteCode = "store colder than wanted" // value: wanted degC; second: the store's; text: the store
	NoOven         NoteCode = "no oven so hot"           // value: wanted degC
	NeverLooks     NoteCode = "the look never comes by itself"
	CannotStand    NoteCode = "the real thing cannot stand so long" // value: wanted min; second: likely min, left out where it likely never ends; share: of units that stand so long
	HardlyStands   NoteCode = "hardly any unit shows the picture"   // share: of units that do at the best moment
	NotSigned      NoteCode = "specification not signed"
	SpecExpired    NoteCode = "specification out of date"
	ScaleTooCoarse NoteCode = "scale too coarse" // value: tolerance, g; second: what the scale can tell, g
	NotWorthIt     NoteCode = "not worth it"     // value: minutes gained
	MayStay        NoteCode = "may stay, may gush"
	ClockChanges   NoteCode = "clocks change" // value: hours
	PastMidnight   NoteCode = "past midnight"
	StandInHolds   NoteCode = "stand-in does not change"
	LongDay        NoteCode = "long day"                  // value: hours
	ManyUnits      NoteCode = "more units than a day has" // value: units
	TooThinForCup  NoteCode = "no cup tells it: time the pour"
	RevisedBatch   NoteCode = "batch corrected"
	WeightOff      NoteCode = "weight is not as declared"   // value: weighed, g; second: declared, g; text: the unit
	MayBurst       NoteCode = "may burst"                   // value: minutes until it may
	FavourFlagged  NoteCode = "favour beyond the allowance" // value: favour; second: allowance
)
