package rheology

import (
	"errors"
	"fmt"
)

// ErrAdvertised marks the refusal to blend what is advertised, for errors.Is.
var ErrAdvertised = errors.New("rheology: the advertised product is shown as it is sold")

// An AdvertisedError refuses a blend in which a liquid is the advertised product:
// thickened or thinned it would no longer be what the customer gets. Its
// temperature may be chosen instead: see ServeAt. errors.Is(err, ErrAdvertised)
// holds. What advertising law asks for is for the client and local counsel to say.
type AdvertisedError struct {
	Liquids []string // the names of the liquids of the blend
}

// Error names the liquids and says what may be chosen instead.
func (e *AdvertisedError) Error() string {
	return fmt.Sprintf("rheology: will not blend %q: the advertised product is shown as it is sold; choose its temperature instead", e.Liquids)
}

// Is reports that an AdvertisedError is an ErrAdvertised.
func (e *AdvertisedError) Is(target error) bool { return target == ErrAdvertised }
