// Package thermal predicts how long food and drink hold in front of a camera.
//
// Air answers for the room: dew point, wet bulb, humidity. A Surface exchanges
// heat and vapour with it and takes light from a Lamp. From these come the set
// clocks: the Glass that fogs, beads and runs; the Scoop that softens, drips and
// slumps; ice in a drink; Cheese that stops stretching, a HotDish that stops
// steaming; and, before the day, how long a DeepFreeze takes.
//
// Every clock is a Window: earliest, likely, latest, a 95 % band from the stated
// uncertainties of its inputs. What never happens is Never.
//
// # Cautions
//
// Hot lamps burn and set fire; mains and wet sets do not go together; dry ice
// suffocates and burns by its cold; glass breaks under thermal shock; food that
// stood under lights is not eaten. These are estimates, not guarantees: follow local
// codes and licensed practice.
package thermal
