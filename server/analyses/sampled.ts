/** Deflections of one element over the states of its axle: a step that coupling and kinematics share. */
import type { Element, NoDeflection } from "../elements/element.js";
import { absent, bindsReason, noDeflectionReason } from "./absent.js";
import type { Absent, Figure } from "./results.js";
import type { State } from "./states.js";

/** What an element does at one state, m or rad from design; absent where a link binds or it has no deflection. */
export function deflectionAt(element: Element, { motion }: State): Figure {
  if ("why" in motion) return absent(bindsReason(motion.why, motion.side));
  if (element.connection === undefined) return absent(element.connectionMissing ?? `${element.path} is not connected`);
  const d = element.connection.deflection(motion);
  return isNone(d) ? absent(noDeflectionReason(d, element.path)) : d.s;
}

const isNone = (d: object): d is NoDeflection => "kind" in d;

/** Smallest and largest deflection over states, 0 (design) included. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export function spanOver(element: Element, states: readonly State[]): Span | Absent {
  let from = 0;
  let to = 0;
  for (const state of states) {
    const s = deflectionAt(element, state);
    if (typeof s !== "number") return s;
    from = Math.min(from, s);
    to = Math.max(to, s);
  }
  return { from, to };
}

export const largest = (span: Span): number => Math.max(-span.from, span.to);
