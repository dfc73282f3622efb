package seal

import (
	"bytes"
	"crypto/ed25519"
	"encoding/json"
	"fmt"

	"example.org/honestplate"
)

// A Link is one revision of a file with its detached signature.
type Link struct {
	Canonical []byte // canonical bytes of an object with revision and, above 1, previous
	Signature []byte
}

// Chain returns, for each revision from the first on, which pinned key signed it, or
// the error of the first that fails: its field begins with Revisions[i].
func Chain(links []Link, pinned []ed25519.PublicKey) ([]int, error) {
	signers, previous := make([]int, len(links)), ""
	for i, link := range links {
		at := fmt.Sprintf("Revisions[%d]", i)
		var head struct {
			Revision int    `json:"revision"`
			Previous string `json:"previous"`
		}
		if err := json.Unmarshal(link.Canonical, &head); err != nil {
			return nil, &honestplate.InputError{Field: at, Got: err.Error(), Want: "an object with the number of its revision"}
		}
		if head.Revision != i+1 {
			return nil, &honestplate.InputError{Field: at + ".Revision", Got: fmt.Sprint(head.Revision),
				Want: fmt.Sprintf("%d: one file a revision, in order, none left out", i+1)}
		}
		if head.Previous != previous {
			got := "the sum " + head.Previous
			if head.Previous == "" {
				got = "missing"
			}
			want := "the sum of the revision before, " + previous
			if i == 0 {
				want = "nothing before the first revision"
			}
			return nil, &honestplate.InputError{Field: at + ".Previous", Got: got, Want: want}
		}
		signer, err := Signer(link.Canonical, link.Signature, pinned)
		if err != nil {
			return nil, honestplate.In(at, err)
		}
		signers[i], previous = signer, Sum(link.Canonical)
	}
	return signers, nil
}

// A Change is a place at which two documents differ, such as items[2].weighed.grams.
type Change struct {
	Field          string
	Earlier, Later bool // whether there is anything in the earlier and in the later one
}

// Changes lists the places at which two canonical documents differ.
func Changes(earlier, later []byte) ([]Change, error) {
	a, err := decode(earlier)
	if err != nil {
		return nil, err
	}
	b, err := decode(later)
	if err != nil {
		return nil, err
	}
	return differences(nil, "", a, b), nil
}

func decode(canonical []byte) (v any, err error) {
	d := json.NewDecoder(bytes.NewReader(canonical))
	d.UseNumber()
	return v, d.Decode(&v)
}
