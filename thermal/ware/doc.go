// Package ware says what food stands in and on: glassware, which a sudden change of
// temperature may break, and tabletops, which bring heat from below.
//
//   - [Ware.Shock]: whether a glass stands the change; [Glassware]: the usual kinds.
//   - [Tabletop]: ceramic, wood, plastic, glass, stone, metal, a rack.
//
// All types are plain values, safe for many goroutines. Wear eye protection where a glass
// may break.
package ware
