// Package thermal predicts how long food and drink hold in front of a camera.
//
// Air answers for the room: dew point, wet bulb, humidity. A surface exchanges
// heat and vapour with it and takes light from a Lamp. From these come the set
// clocks: the Glass that fogs, beads and runs; the Scoop that softens, drips and
// slumps; ice in a drink; melted cheese that stops stretching; and, before the
// day, how long a DeepFreeze takes.
//
// Every clock is a Window: earliest, likely, latest, a 95 % band from the stated
// uncertainties of its inputs. What never happens is Never.
package thermal
