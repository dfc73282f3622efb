package record

import (
	"crypto/ed25519"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/honestplate"
)

// keys returns two keys made from fixed seeds: for tests only.
func testKeys() (stylist, client ed25519.PrivateKey) {
	return ed25519.NewKeyFromSeed([]byte(strings.Repeat("a", 32))), ed25519.NewKeyFromSeed([]byte(strings.Repeat("b", 32)))
}

// chain returns three signed revisions of the invented record.
func chain(t *testing.T) []Revision {
	t.Helper()
	stylist, client := testKeys()
	r := goodRecord()
	var out []Revision
	for i, key := range []ed25519.PrivateKey{stylist, client, stylist} {
		if i > 0 {
			next, err := r.Next()
			if err != nil {
				t.Fatal(err)
			}
			r = next
			r.Items = slices.Clone(r.Items)
			r.Items[0].How += ", again"
		}
		signature, err := r.Sign(key)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, Revision{r, signature})
	}
	return out
}

func TestRevisionsVerify(t *testing.T) {
	stylist, client := testKeys()
	pinned := []ed25519.PublicKey{stylist.Public().(ed25519.PublicKey), client.Public().(ed25519.PublicKey)}
	revisions := chain(t)
	checks, err := Verify(revisions, pinned...)
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range checks {
		sum, _ := revisions[i].Record.SHA256()
		if c.SHA256 != sum || c.Key != i%2 {
			t.Errorf("%d: %+v", i, c)
		}
	}
	if got := strings.Join(checks[1].Changed, " "); got != "items[0].how previous revision signed" {
		t.Errorf("changed: %s", got)
	}
	for field, change := range map[string]func([]Revision) []Revision{
		"Revisions[0].Signature": func(v []Revision) []Revision { v[0].Record.Picture = "another"; return v },
		"Revisions[1].Signature": func(v []Revision) []Revision {
			v[1].Record.Items[0].Weighed = &Weighed{Grams: 61.9, ErrorGrams: 0.5}
			return v
		},
		"Revisions[2].Signature": func(v []Revision) []Revision { v[2].Signature = v[2].Signature[:63]; return v },
		"Revisions[1].Revision":  func(v []Revision) []Revision { return append(v[:1], v[2]) },
		"Revisions[0].Revision":  func(v []Revision) []Revision { return v[1:] },
		"Revisions[2].Previous":  func(v []Revision) []Revision { v[2].Record.Previous = strings.Repeat("0", 64); return v },
		"Revisions[1].Picture":   func(v []Revision) []Revision { v[1].Record.Picture = ""; return v },
	} {
		if _, err := Verify(change(chain(t)), pinned...); fieldOf(err) != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	// A good copy at hand says what was changed in the one that fails.
	good, bad := chain(t), chain(t)
	bad[1].Record.Items[0].Weighed = &Weighed{Grams: 95, ErrorGrams: 0.5, LeastGrams: 2, Scale: "class II, d = 0.1 g", Basis: Raw}
	changed, err := bad[1].Record.Changes(good[1].Record)
	if err != nil || strings.Join(changed, " ") != "items[0].verdict items[0].weighed.grams" {
		t.Errorf("%v, %v", changed, err)
	}
	// The end cut off verifies: only the last sum in other hands shows it.
	if cut, err := Verify(revisions[:2], pinned...); err != nil || cut[1].SHA256 == checks[2].SHA256 {
		t.Error(err)
	}
	if _, err := Verify(revisions, pinned[0]); fieldOf(err) != "Revisions[1].Signature" {
		t.Errorf("a key that is not pinned: %v", err)
	}
	if _, err := Verify(nil, pinned...); fieldOf(err) != "Revisions" {
		t.Errorf("nothing to verify: %v", err)
	}
	if _, err := Verify(revisions); fieldOf(err) != "Revisions[0].Keys" {
		t.Errorf("no keys: %v", err)
	}
}

func TestChainRefusesBadRecords(t *testing.T) {
	stylist, _ := testKeys()
	bad := Record{}
	for name, err := range map[string]error{
		"Canonical": failure(bad.canonical()), "SHA256": failure(bad.SHA256()), "Next": failure(bad.Next()),
		"Sign": failure(bad.Sign(stylist)), "Changes": failure(goodRecord().Changes(bad)), "Changes of": failure(bad.Changes(goodRecord())),
		"Key": failure(goodRecord().Sign(stylist[:32])), "nil": failure(FileSHA256(nil)),
	} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := FileSHA256(iotest.ErrReader(io.ErrClosedPipe)); !errors.Is(err, io.ErrClosedPipe) {
		t.Error(err)
	}
	if err := goodRecord().Write(failingWriter{}); !errors.Is(err, io.ErrShortWrite) {
		t.Error(err)
	}
	if _, err := Read(iotest.ErrReader(io.ErrClosedPipe)); !errors.Is(err, io.ErrClosedPipe) {
		t.Error(err)
	}
}

type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func failure[T any](_ T, err error) error { return err }
