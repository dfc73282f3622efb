package record

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/seal"
)

// canonical returns the record's canonical bytes by RFC 8785: what is hashed and
// signed, whatever spaces and order the file has. Errors: those of Validate.
func (r Record) canonical() ([]byte, error) { return canonicalOf(r) }

// SHA256 returns the sum of the canonical bytes in hexadecimal. Give that of the last
// revision into other hands: a chain cannot show that its end was cut off.
func (r Record) SHA256() (string, error) {
	b, err := r.canonical()
	if err != nil {
		return "", err
	}
	return seal.Sum(b), nil
}

// Next returns the record as a start for the revision that replaces it: one number
// on, chained to this one by its sum, unsigned. Errors: those of Validate.
func (r Record) Next() (Record, error) {
	sum, err := r.SHA256()
	if err != nil {
		return Record{}, err
	}
	r.Revision, r.Previous, r.Signed = r.Revision+1, sum, nil
	return r, nil
}

// Sign returns the detached Ed25519 signature (RFC 8032) over the canonical bytes, 64
// bytes to be kept in a file of their own beside the record. It says that the key's
// holder saw these bytes, not that they are true, nor when. Errors: those of
// Validate; [honestplate.InputError] for a key of another length.
func (r Record) Sign(key ed25519.PrivateKey) ([]byte, error) {
	b, err := r.canonical()
	if err != nil {
		return nil, err
	}
	return seal.Sign(b, key)
}

// Changes lists the fields in which the record differs from an earlier one, by their
// names in the JSON, such as items[2].weighed.grams. Errors: those of Validate.
func (r Record) Changes(earlier Record) ([]string, error) {
	a, err := earlier.canonical()
	if err != nil {
		return nil, honestplate.In("Earlier", err)
	}
	b, err := r.canonical()
	if err != nil {
		return nil, err
	}
	return changedFields(a, b)
}

func changedFields(earlier, later []byte) ([]string, error) {
	changes, err := seal.Changes(earlier, later)
	fields := make([]string, len(changes))
	for i, c := range changes {
		fields[i] = c.Field
	}
	return fields, err
}

// A Revision is a record as it was kept, with its detached signature.
type Revision struct {
	Record    Record `json:"record"`    // as it was read
	Signature []byte `json:"signature"` // over its canonical bytes, 64 bytes
}

// A RevisionCheck is what verification found of one revision that holds.
type RevisionCheck struct {
	SHA256  string   `json:"sha256"`           // of its canonical bytes
	Key     int      `json:"key"`              // which of the pinned keys signed it
	Changed []string `json:"changed,omitzero"` // fields that differ from the revision before it
}

// Verify verifies all revisions of one record, from the first: that each is
// the one that was signed, by a pinned key, and follows upon the one before. The first
// that fails is named in the error, an [honestplate.InputError] about Revisions[i]; with a good copy
// at hand [Record.Changes] says what was changed in it. keys are the public keys that
// may sign: pin them, from a letter or a site, never take them from where the record
// comes from.
//
// That the last revision was not followed by another only its SHA256 in other hands
// can show; that what they say is true, no signature.
func Verify(revisions []Revision, keys ...ed25519.PublicKey) ([]RevisionCheck, error) {
	if len(revisions) == 0 {
		return nil, check.Input("Revisions", "none", "", "all of one record, from the first")
	}
	links := make([]seal.Link, len(revisions))
	checks := make([]RevisionCheck, len(revisions))
	for i, v := range revisions {
		b, err := v.Record.canonical()
		if err != nil {
			return nil, honestplate.In(fmt.Sprintf("Revisions[%d]", i), err)
		}
		links[i] = seal.Link{Canonical: b, Signature: v.Signature}
		checks[i].SHA256 = seal.Sum(b)
		if i > 0 {
			if checks[i].Changed, err = changedFields(links[i-1].Canonical, b); err != nil {
				return nil, err
			}
		}
	}
	signers, err := seal.Chain(links, keys)
	if err != nil {
		return nil, err
	}
	for i, key := range signers {
		checks[i].Key = key
	}
	return checks, nil
}

// FileSHA256 returns the SHA-256 of a file, such as a picture's, in hexadecimal.
// Errors: the reader's; [honestplate.InputError] for none.
func FileSHA256(from io.Reader) (string, error) {
	if from == nil {
		return "", check.Input("From", "nil", "", "a reader")
	}
	sum := sha256.New()
	if _, err := io.Copy(sum, from); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
