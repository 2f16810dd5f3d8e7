/** What is said wherever figures leave the tool for a car: one wording for every face. */
export const cautions = `Calculated figures are an aid, not a release. A competent person checks parts, torques, clearances
and the energy stored in springs and gas before the car runs; the event's regulations and the
makers' limits rule; verify on the flat patch.`;
