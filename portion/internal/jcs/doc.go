// Package jcs writes JSON in its canonical form by RFC 8785 (JSON canonicalization
// scheme), so that what is signed and hashed does not hang on spaces, on the order of
// names or on how a number was typed.
//
// It reads strictly what RFC 7493 (I-JSON) allows: UTF-8 without a byte order mark,
// names that come once in their object, no lone surrogates, numbers that a binary64
// holds. Digits beyond a binary64 are lost, as RFC 8785 has it: a long code must be
// text. Text is not normalised: two names that look alike may differ.
package jcs
