package seal

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"example.org/honestplate"
)

// Sum returns the SHA-256 of the bytes in lower-case hexadecimal.
func Sum(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}

// IsSum reports whether the text could be a Sum.
func IsSum(text string) bool {
	b, err := hex.DecodeString(text)
	return err == nil && len(b) == sha256.Size && hex.EncodeToString(b) == text
}

// Sign returns the detached signature over canonical bytes.
func Sign(canonical []byte, key ed25519.PrivateKey) ([]byte, error) {
	if len(key) != ed25519.PrivateKeySize {
		return nil, &honestplate.InputError{Field: "Key", Got: fmt.Sprintf("%d bytes", len(key)),
			Want: fmt.Sprintf("an Ed25519 private key of %d", ed25519.PrivateKeySize)}
	}
	return ed25519.Sign(key, canonical), nil
}

// Signer returns which of the pinned keys made the signature over the bytes. Lengths
// are tested first: crypto/ed25519 stops the program on a key of another length.
func Signer(canonical, signature []byte, pinned []ed25519.PublicKey) (int, error) {
	if len(pinned) == 0 {
		return 0, &honestplate.InputError{Field: "Keys", Got: "none", Want: "the public keys that may sign, from a source other than the file"}
	}
	for i, key := range pinned {
		if len(key) != ed25519.PublicKeySize {
			return 0, &honestplate.InputError{Field: fmt.Sprintf("Keys[%d]", i), Got: fmt.Sprintf("%d bytes", len(key)),
				Want: fmt.Sprintf("an Ed25519 public key of %d", ed25519.PublicKeySize)}
		}
	}
	if len(signature) != ed25519.SignatureSize {
		return 0, &honestplate.InputError{Field: "Signature", Got: fmt.Sprintf("%d bytes", len(signature)),
			Want: fmt.Sprintf("an Ed25519 signature of %d", ed25519.SignatureSize)}
	}
	for i, key := range pinned {
		if ed25519.Verify(key, canonical, signature) {
			return i, nil
		}
	}
	return 0, &honestplate.InputError{Field: "Signature", Got: "of other bytes or by another key",
		Want: "one that a pinned key made over exactly these bytes"}
}
