// Package portion decides who gets how much of a declared quantity, exactly: not a
// gram or a piece is lost. Start with [Declaration]: [Declaration.Share] and [Table]
// share it out, [Strips], [Spread] and [Scatter] lay it on a [Round], [Oval] or
// [Rectangle], [Pick] chooses pieces that weigh it, one set or all at once, [Heroes]
// counts units, [Scale] says what a weighing proves, [Formula] and [Quid] turn recipes
// into grams. [Specification] is the product as its maker signed it: a build is checked
// against it layer by layer, and [Limits] is the rule by which something agrees, differs
// or cannot be told. [Record] keeps how the picture was made, its revisions sealed
// ([VerifyRevisions]). Conventions and errors: package honestplate. What must be shown,
// and how, is for local law: a true total, favoured towards the camera, can still mislead
// about a slice that is sold ([Layout.SliceSold]).
package portion
