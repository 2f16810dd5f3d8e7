/** Deflections of one element over the states of its axle: a step that coupling and kinematics share. */
import type { Element, NoDeflection } from "../elements/element.js";
import { absent, bindsReason, noDeflectionReason } from "./absent.js";
import type { Absent, Figure } from "./results.js";
import { deflectionIn, type State } from "./states.js";

/** What an element does at one state, m or rad from design; absent where a link binds or it has no deflection. */
export function deflectionAt(element: Element, state: State): Figure {
  const { motion } = state;
  if ("why" in motion) return absent(bindsReason(motion.why, motion.side));
  if (element.connection === undefined) return absent(element.connectionMissing ?? `${element.path} is not connected`);
  const d = deflectionIn(state, motion, element.connection);
  return isNone(d) ? absent(noDeflectionReason(d, element.path)) : d.s;
}

const isNone = (d: object): d is NoDeflection => "kind" in d;

/** Smallest and largest deflection over states, from design. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** @param rest the element's deflection at rest, which is among them */
export function spanOver(element: Element, states: readonly State[], rest: number): Span | Absent {
  let from = rest;
  let to = rest;
  for (const state of states) {
    const s = deflectionAt(element, state);
    if (typeof s !== "number") return s;
    from = Math.min(from, s);
    to = Math.max(to, s);
  }
  return { from, to };
}

/** The furthest that it gets from where it rests. */
export const largest = ({ from, to }: Span, rest: number): number => Math.max(rest - from, to - rest);
