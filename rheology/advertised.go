package rheology

import (
	"fmt"
	"strings"

	"example.org/honestplate"
)

// advertised refuses to blend: thickened or thinned the product would no longer be what
// the customer gets. What advertising law asks for is for the client and local counsel
// to say.
func advertised(names ...string) error {
	return &honestplate.RefusedError{
		Field: "Advertised", Kind: honestplate.ErrAdvertised,
		Reason: fmt.Sprintf("%s would be blended, and the advertised product is shown as it is sold", strings.Join(names, " and ")),
		Advice: "choose its temperature instead (ServeAt)",
	}
}
