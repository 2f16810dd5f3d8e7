/** A deflection that nothing moves: an element that is linked to nothing. */
import type { Deflection } from "../deflection.js";

export const STILL: Deflection = { s: 0, dL: 0, dR: 0, dLL: 0, dLR: 0, dRR: 0 };
