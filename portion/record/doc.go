// Package record keeps what was agreed, what was built and how the picture was made.
//
// Before the picture, [Specification] is the product as its maker signed it:
// [Specification.BeforeWeighing] says whether a scale could tell, and
// [Specification.Check] holds a [Build] against it, layer by layer. After the picture,
// [Record] says of every [Item] what was declared, planned and weighed, what stood in for
// what, which [Take] was chosen and which [Edit] was made: [Record.Statement] for whoever
// uses it, [Record.Write] and [Read] for the file. Each [Revision] is sealed
// ([Record.Sign], [Verify]). What agrees, differs or cannot be told is decided by
// [example.org/honestplate/portion.Limits].
//
// It documents and proves nothing by itself; whether a picture may be used is for local
// advertising and weights-and-measures law. Conventions and errors: package honestplate.
package record
