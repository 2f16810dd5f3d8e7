/**
 * Coupling: the leak of an element into modes that it is not for, in the element's own scope (heave and
 * roll of its axle for an axle element, the other wheel against its own for a corner element).
 *
 * First-order |ds/dq unclaimed| / |ds/dq claimed| at static; finite, the largest deflection from rest that a
 * pure motion in the unclaimed mode causes over the largest in its own, across the envelope; rate, the share of
 * the unclaimed mode's stiffness (or damping) that it adds, F∇²s included.
 */
import type { Deflection, Element, Mode } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { absent, isAbsent } from "./absent.js";
import type { Contributions } from "./contributions.js";
import { type Form, inHeave } from "./form.js";
import type { Absent, Figure, Leak } from "./results.js";
import { largest, type Span, spanOver } from "./sampled.js";
import { settled } from "./sensitivity.js";
import type { AxleStates } from "./states.js";

/** Below this a claimed mode hardly moves the element, as a share of what moves it most. */
const IDLE = 0.02;
/** Below this, m/m or rad/m, nothing moves it: rounding. */
const STILL = 1e-9;
/** Parts that cancel to less than this share of them are nothing. */
const ROUNDING = 1e-12;

/** Deflections of the element in pure heave and pure roll across the envelope. */
export interface Spans {
  readonly heave: Span | Absent;
  readonly roll: Span | Absent;
}

/** What the leak of an element is worked out from. */
export interface LeakContext {
  readonly mechanism: AxleMechanism;
  readonly states: AxleStates;
  readonly parts: Contributions;
}

/** A mode of the element's own scope, with how strongly it moves the element. */
interface Drive {
  readonly mode: Leak["mode"];
  readonly claimed: boolean;
  readonly strength: number;
}

function drivesOf(element: Element, { dL, dR }: Deflection): readonly Drive[] {
  if (element.side !== undefined) {
    const [own, other] = element.side === "left" ? [dL, dR] : [dR, dL];
    return [
      { mode: "other-wheel", claimed: false, strength: Math.abs(other) },
      { mode: "other-wheel", claimed: true, strength: Math.abs(own) },
    ];
  }
  return [
    { mode: "heave", claimed: element.for.includes("heave"), strength: Math.abs(settled(dL, dR)) },
    { mode: "roll", claimed: element.for.includes("roll"), strength: Math.abs(settled(dR, -dL)) },
  ];
}

const strongest = (drives: readonly Drive[]): Drive | undefined =>
  drives.reduce<Drive | undefined>(
    (best, d) => (best === undefined || d.strength > best.strength ? d : best),
    undefined,
  );

/** Deflections that one mode alone causes across the envelope. */
function spanIn(
  element: Element,
  { mode, claimed }: Drive,
  { states, mechanism }: LeakContext,
  spans: Spans,
  rest: number,
): Span | Absent {
  if (mode === "heave") return spans.heave;
  if (mode === "roll") return spans.roll;
  const left = (element.side === "left") === claimed;
  const { staticTravel: still } = mechanism;
  return spanOver(
    element,
    states.travels.map((z) => (left ? states.at(z, still) : states.at(still, z))),
    rest,
  );
}

/** True where only the element's own wheel can move it: nothing to look for on the other side. */
function ownWheelOnly(element: Element, d: Deflection): boolean {
  const other = element.side === "left" ? [d.dR, d.dRR] : [d.dL, d.dLL];
  return d.dLR === 0 && other.every((value) => value === 0);
}

function finiteLeak(
  element: Element,
  d: Deflection,
  into: Drive,
  own: readonly Drive[],
  context: LeakContext,
  spans: Spans,
): Figure {
  if (element.side !== undefined && ownWheelOnly(element, d)) return 0;
  const leaked = spanIn(element, into, context, spans, d.s);
  if (isAbsent(leaked)) return leaked;
  let travel = 0;
  for (const drive of own) {
    const span = spanIn(element, drive, context, spans, d.s);
    if (isAbsent(span)) return span;
    travel = Math.max(travel, largest(span, d.s));
  }
  return travel > 0 ? largest(leaked, d.s) / travel : absent("its own mode does not move it within the travel");
}

/** What a form comes to in a mode, over how large its parts are: N/m at the wheel that the leak is about. */
function inMode(
  form: Form,
  mode: Leak["mode"],
  side: Element["side"],
): { readonly value: number; readonly size: number } {
  const { LL, LR, RR } = form;
  const size = Math.abs(LL) + 2 * Math.abs(LR) + Math.abs(RR);
  if (mode === "heave") return { value: inHeave(form), size };
  return { value: mode === "roll" ? LL - 2 * LR + RR : side === "left" ? RR : LL, size };
}

/** The unclaimed mode's stiffness or damping that the element adds; the track falls out of the share. */
function rateLeak(element: Element, mode: Leak["mode"], { parts }: LeakContext): Figure {
  const damper = element.law?.kind === "damper";
  const sum = damper ? parts.dampingSum : parts.stiffnessSum;
  if (typeof sum === "string") return absent(sum);
  const own = (damper ? parts.damping : parts.stiffness).get(element);
  if (own === undefined) return absent(element.lawMissing ?? "it has neither rate nor damping");
  const part = inMode(own, mode, element.side);
  const whole = inMode(sum, mode, element.side);
  if (Math.abs(part.value) <= ROUNDING * part.size) return 0;
  const known = Math.abs(whole.value) > ROUNDING * whole.size;
  return known ? part.value / whole.value : absent("there is no rate in that mode to be a share of");
}

/** The leak of an element; undefined where it is for every mode of its scope. */
export function leakOf(element: Element, d: Deflection, context: LeakContext, spans: Spans): Leak | Absent | undefined {
  const drives = drivesOf(element, d);
  const own = drives.filter(({ claimed }) => claimed);
  const into = strongest(drives.filter(({ claimed }) => !claimed));
  if (into === undefined) return undefined;
  if (own.length === 0) return absent("it is for no mode of its own axle");
  const unstated = notStated(element, into.mode);
  if (unstated !== undefined) return absent(unstated);
  const claimed = strongest(own)?.strength ?? 0;
  if (!(claimed > STILL)) return absent(`it is not moved in ${modeWord(element)}`);
  return {
    mode: into.mode,
    firstOrder: into.strength / claimed,
    finite: finiteLeak(element, d, into, own, context, spans),
    rate: rateLeak(element, into.mode, context),
  };
}

/** A ratio knows only the modes that it states. */
function notStated({ connection }: Element, mode: Leak["mode"]): string | undefined {
  const stated = connection?.statedFor;
  if (stated === undefined || stated.some((word) => word === mode)) return undefined;
  return `its ratio is for ${stated.join(" and ")} and says nothing of ${mode === "other-wheel" ? "the other wheel" : mode}`;
}

const modeWord = (element: Element): string =>
  element.side === undefined ? `${element.for.join(" or ")}, which it is for` : "its own wheel's travel";

/** Claimed modes that hardly move it. */
export function idleModes(element: Element, d: Deflection): readonly Mode[] {
  const drives = drivesOf(element, d);
  const most = strongest(drives)?.strength ?? 0;
  const idle = drives.filter(({ claimed, strength }) => claimed && !(strength > Math.max(STILL, IDLE * most)));
  return idle.map(({ mode }) => (mode === "other-wheel" ? "corner" : (mode as Mode)));
}
