// Package portion decides who gets how much of a declared quantity, exactly: not a
// gram or a piece is lost. Start with [Declaration]: [Declaration.Share] and [Table]
// share it out, [Formula] and [Quid] turn recipes into grams, [Pick] chooses pieces that
// weigh it, one set or all at once, [Heroes] counts units, [Scale] says what a weighing
// proves, and [Limits] is the rule by which something agrees, differs or cannot be told.
//
// Package [example.org/honestplate/portion/plate] lays what was shared on a dish;
// [example.org/honestplate/portion/record] holds a build against what its maker signed and
// keeps how the picture was made; [example.org/honestplate/portion/apportion] is the
// mathematics. Conventions and errors: package honestplate. What must be shown, and how,
// is for local law.
package portion
