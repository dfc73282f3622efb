// Package apportion is the mathematics of shares: whole units, shared out exactly.
//
// Start with [Method.Apportion], which shares a total over claims:
//
//   - [Claim] is a weight with a minimum and a maximum; [Method] is a rule:
//     [LargestRemainder], five divisor methods from [Jefferson] to [Dean], and
//     [QuotaMethod].
//   - [Ideal] is what is rounded: shares as real numbers within the bounds.
//   - [Biproportional] shares over a table with the totals of both sides exact,
//     [ControlledRounding] rounds one up or down, with all its totals.
//   - [BoundsError] and [MarginError] say why no sharing exists.
//
// Ties are decided by the rule that the doc comment states, on exact quantities, the
// same on every machine. Portions of food are shared by the package portion above.
//
// Calls are safe from many goroutines. Apportion takes well under a microsecond a
// claim, the quota method one for every claim and unit; tables of a thousand cells
// take milliseconds, of a million some seconds.
package apportion
