// Package seal shows whether a file is the one that was signed: SHA-256 of its
// canonical bytes, detached Ed25519 signatures over them, and chains of revisions, each
// of which names the sum of the one before.
//
// Signed are the canonical bytes themselves, never their sum. Keys are pinned: they
// come from whoever asks, never from the file. A chain shows a revision that was
// changed, left out or put in; it cannot show that its end was cut off, so the last sum
// belongs into other hands. Times in a file are claims.
package seal
