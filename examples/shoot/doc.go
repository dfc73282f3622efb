// Package shoot is a studio day as data: a brief goes in, a plan comes out, facts come
// back in, and the plan of the rest of the day follows.
//
//	brief, err := shoot.Read(file)     // strict: every fault at once, by line and field
//	plan, err := brief.Plan(facts)     // a pure function: same input, same bytes
//
// Start with the type you have: [Read] and [ReadFacts] for files ([Faults] is all that is
// wrong with one), [Brief] and [Facts] for values of your own; [Brief.Plan] for the [Plan],
// whose [Shot] values are the pictures in their order and whose [Task] values are who does
// what when; [Plan.Records] for what is filled in afterwards; [Schema] and [FactsSchema]
// for editors and forms.
//
// A [Brief] says what is to be shot: days, people, the room and its lamps, freezers,
// fridges and ovens, and the dishes, each a list of [Thing] in the frame with its own
// clock. A [Plan] says when, with what, in which window, how many, what to buy and what
// to do in which order; it holds numbers, instants and windows, and leaves the sentences
// to whoever prints it. [Facts] are what has happened since: the time, the room as it was
// measured, events seen, cup times, takes good and bad, weights, what ran out.
//
// The rules that a plan keeps are checked by [Plan.Check], which every call of
// [Brief.Plan] ends with: a plan that contradicts itself is an error, not a page.
//
// The brief's JSON Schema is schema.json beside this file, made from the same tags that
// the reader goes by ([Schema]).
//
// Food that stood under lights or out of the cold is not eaten; allergens, hot lamps,
// dry ice and the law of advertising are for the crew, local codes and counsel.
package shoot
