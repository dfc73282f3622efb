package seal_test

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/jcs"
	"example.org/honestplate/portion/internal/seal"
	"example.org/honestplate/testdata"
)

func load(t *testing.T, table string) []testdata.Row {
	t.Helper()
	read, err := testdata.Load(table)
	if err != nil {
		t.Fatal(err)
	}
	return read.Rows
}

func unhex(t *testing.T, r testdata.Row, column string) []byte {
	t.Helper()
	b, err := hex.DecodeString(r.Text(column))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The sum is the standard library's; the vectors say that it is the right one.
func TestPublishedSums(t *testing.T) {
	for _, r := range load(t, "sha256_vectors") {
		times, err := strconv.Atoi(r.Text("times"))
		if err != nil {
			t.Fatal(err)
		}
		if testing.Short() && times > 1e6 {
			continue
		}
		message := []byte(strings.Repeat(string(unhex(t, r, "message_hex")), times))
		if got := seal.Sum(message); got != r.Text("sha256") || !seal.IsSum(got) {
			t.Errorf("%s: %s", r.Text("case"), got)
		}
	}
	rows, k := load(t, "sha256_monte_carlo"), 0
	digest := unhex(t, rows[0], "seed_hex")
	for count := range 100 {
		a, b, c := digest, digest, digest
		for range 1000 {
			sum := sha256.Sum256(slices.Concat(a, b, c))
			a, b, c = b, c, sum[:]
		}
		digest = c
		if k < len(rows) && rows[k].Text("count") == strconv.Itoa(count) {
			if got := hex.EncodeToString(digest); got != rows[k].Text("sha256") {
				t.Errorf("count %d: %s", count, got)
			}
			k++
		}
	}
	if k != len(rows) {
		t.Errorf("%d of %d counts compared", k, len(rows))
	}
	for _, no := range []string{"", "abc", strings.Repeat("g", 64), strings.Repeat("A", 64), strings.Repeat("a", 66)} {
		if seal.IsSum(no) {
			t.Errorf("%q passes for a sum", no)
		}
	}
}

func TestPublishedSignatures(t *testing.T) {
	for _, r := range load(t, "ed25519_vectors") {
		key := ed25519.NewKeyFromSeed(unhex(t, r, "seed_hex"))
		public := key.Public().(ed25519.PublicKey)
		if !slices.Equal(public, unhex(t, r, "public_key_hex")) {
			t.Errorf("%s: public key %x", r.Text("case"), public)
		}
		want := unhex(t, r, "signature_hex")
		if len(want) == 0 {
			continue
		}
		message := unhex(t, r, "message_hex")
		got, err := seal.Sign(message, key)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%s: %x, %v", r.Text("case"), got, err)
		}
		other := ed25519.PublicKey(make([]byte, ed25519.PublicKeySize))
		if who, err := seal.Signer(message, want, []ed25519.PublicKey{other, public}); who != 1 || err != nil {
			t.Errorf("%s: signer %d, %v", r.Text("case"), who, err)
		}
	}
}

func TestPublishedSignatureRefusals(t *testing.T) {
	for _, r := range load(t, "ed25519_refusals") {
		_, err := seal.Signer(unhex(t, r, "message_hex"), unhex(t, r, "signature_hex"), []ed25519.PublicKey{unhex(t, r, "public_key_hex")})
		want := r.Text("expected")
		if strings.HasPrefix(want, "key ") {
			continue // a key alone: the standard library judges it when it verifies
		}
		if refused := errors.Is(err, honestplate.ErrInput); refused != (want == "refuse") {
			t.Errorf("%s: %v, want %s", r.Text("case"), err, want)
		}
	}
	for _, r := range load(t, "ed25519_edge_cases") {
		_, err := seal.Signer(unhex(t, r, "message_hex"), unhex(t, r, "signature_hex"), []ed25519.PublicKey{unhex(t, r, "public_key_hex")})
		if (err == nil) != (r.Text("go") == "accept") {
			t.Errorf("edge case %s: %v, published %s", r.Text("case"), err, r.Text("go"))
		}
	}
	if _, err := seal.Sign(nil, make([]byte, 32)); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a private key of 32 bytes: %v", err)
	}
	if _, err := seal.Signer(nil, make([]byte, 64), nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no pinned key: %v", err)
	}
}

// The sample documents: three revisions that hold, and what was done to others.
func TestSampleChain(t *testing.T) {
	rows := load(t, "record_chain_samples")
	links, keys := make(map[string]seal.Link), []ed25519.PublicKey{}
	var good []seal.Link
	var refused []testdata.Row
	for _, r := range rows {
		link := seal.Link{unhex(t, r, "canonical_utf8_hex"), unhex(t, r, "signature_hex")}
		links[r.Text("case")] = link
		if got := seal.Sum(link.Canonical); got != r.Text("sha256") {
			t.Errorf("%s: sum %s", r.Text("case"), got)
		}
		if again, err := jcs.Canonical(link.Canonical); err != nil || !slices.Equal(again, link.Canonical) {
			t.Errorf("%s: not canonical", r.Text("case"))
		}
		key := ed25519.PublicKey(unhex(t, r, "public_key_hex"))
		if r.Text("expected") != "accept" {
			refused = append(refused, r)
			continue
		}
		good, keys = append(good, link), append(keys, key)
		// A signature over the sum is another thing, and refused.
		if _, err := seal.Signer(link.Canonical, unhex(t, r, "signature_over_hash_hex"), keys); err == nil {
			t.Errorf("%s: a signature over the sum passes", r.Text("case"))
		}
	}
	if len(good) != 3 {
		t.Fatalf("%d revisions to accept", len(good))
	}
	signers, err := seal.Chain(good, keys)
	if err != nil || len(signers) != 3 {
		t.Fatalf("%v, %v", signers, err)
	}
	for _, r := range refused {
		var head struct{ Revision int }
		link := links[r.Text("case")]
		if err := json.Unmarshal(link.Canonical, &head); err != nil {
			t.Fatal(err)
		}
		tampered := slices.Clone(good)
		tampered[head.Revision-1] = link
		_, err := seal.Chain(tampered, keys)
		var input *honestplate.InputError
		if !errors.As(err, &input) {
			t.Errorf("%s: %v", r.Text("case"), err)
			continue
		}
		t.Logf("%s: %v", r.Text("case"), err)
		if !strings.HasPrefix(input.Field, "Revisions["+strconv.Itoa(head.Revision-1)+"].") {
			t.Errorf("%s: reported at %s", r.Text("case"), input.Field)
		}
	}
	// Both of a fork, one left out, and the wrong order.
	for name, list := range map[string][]seal.Link{
		"twice":    {good[0], good[1], good[1]},
		"left out": {good[0], good[2]},
		"turned":   {good[1], good[0]},
		"no JSON":  {{[]byte("x"), nil}},
		"a list":   {{[]byte("[]"), nil}},
	} {
		if _, err := seal.Chain(list, keys); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestChanges(t *testing.T) {
	for _, c := range []struct{ earlier, later, want string }{
		{`{"a":1,"b":[1,2]}`, `{"a":1,"b":[1,2]}`, ""},
		{`{"a":1,"b":[1,2]}`, `{"a":2,"b":[1,3,4]}`, "a b[1] +b[2]"},
		{`{"a":{"x":null}}`, `{"a":{"y":null}}`, "-a.x +a.y"},
		{`{"a":{"x":1}}`, `{"a":[1]}`, "a"},
		{`{"a":[1]}`, `{"a":1}`, "a"},
		{`{"a":1}`, `{"a":[1]}`, "a"},
		{`{"a":"1"}`, `{"a":1}`, "a"},
		{`1`, `2`, ""},
	} {
		changes, err := seal.Changes([]byte(c.earlier), []byte(c.later))
		var got []string
		for _, d := range changes {
			mark := map[[2]bool]string{{true, true}: "", {false, true}: "+", {true, false}: "-"}[[2]bool{d.Earlier, d.Later}]
			got = append(got, mark+d.Field)
		}
		if err != nil || strings.Join(got, " ") != c.want {
			t.Errorf("%s to %s: %q, %v", c.earlier, c.later, got, err)
		}
	}
	for _, bad := range [][2]string{{"{", "{}"}, {"{}", "{"}} {
		if _, err := seal.Changes([]byte(bad[0]), []byte(bad[1])); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
}
