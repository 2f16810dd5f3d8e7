/**
 * Quantities: what the author wrote, in SI, and back in the author's unit.
 *
 * Invariant: nothing here throws, and no figure that is not finite is shown as a number.
 */
export { dimensionOfUnit, fromSI, matchesDimension, toSI, valueToSI } from "./convert.js";
export { showNumber, showQuantity, writeQuantity } from "./show.js";
export { suggestUnits } from "./suggest.js";
export { parseUnit, type UnitInfo } from "./unit.js";
export { unitsOf, unitSystem, usualUnit } from "./usual.js";
