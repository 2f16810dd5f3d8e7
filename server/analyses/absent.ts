/** Figures that are not to be had, and how their reasons are worded. */
import type { Unreachable } from "../linkage/corner.js";
import type { NoDeflection } from "../elements/element.js";
import type { Absent, Figure } from "./results.js";

/** @param reason a full clause in plain words, without a capital and without a full stop */
export const absent = (reason: string): Absent => ({ kind: "absent", reason });

export function isAbsent(figure: unknown): figure is Absent {
  return typeof figure === "object" && figure !== null && (figure as { kind?: unknown }).kind === "absent";
}

/** The value, or the reason why there is none. */
export const figureOr = (value: number | undefined, reason: () => string): Figure =>
  value === undefined ? absent(reason()) : value;

const millimetres = (metres: number): string => `${Math.round(metres * 10_000) / 10} mm`;

/** "the push-rod on the left binds at 27.3 mm, short of 30 mm". */
export function bindsReason(bound: Unreachable, side: "left" | "right"): string {
  const { link, limit, travel } = bound;
  return `the ${link} on the ${side} binds at ${millimetres(limit)} of travel, short of ${millimetres(travel)}`;
}

/** Why an element has no deflection where its axle's links do reach. */
export function noDeflectionReason(none: NoDeflection, path: string): string {
  if (none.reason === "drop-link") return `the drop link of ${path} does not reach on the ${none.side ?? "left"} side`;
  if (none.reason === "tie") return `the tie of ${path} does not reach`;
  return `the ends of ${path} fall together`;
}
