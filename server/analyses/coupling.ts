/**
 * What moves an element and what it gives: sensitivities, motion ratio, and the leak into modes
 * that it is not for, in the element's own scope (heave and roll of its axle for an axle element,
 * the other wheel against its own for a corner element).
 *
 * Leak: first-order |ds/dq unclaimed| / |ds/dq claimed| at static; finite, the largest deflection that
 * a pure motion in the unclaimed mode causes over the largest in its own, across the envelope; rate,
 * the share of the unclaimed mode's stiffness (or damping) that it adds, F∇²s included.
 */
import type { Deflection, Element, Mode } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { absent, isAbsent } from "./absent.js";
import { staticForce, staticRate } from "./carrying.js";
import type { Contributions } from "./contributions.js";
import { type Form, inHeave, inRoll } from "./form.js";
import type { Absent, ElementFigures, Figure, Leak } from "./results.js";
import { largest, type Span, spanOver } from "./sampled.js";
import { sensitivity } from "./sensitivity.js";
import type { AxleStates, State } from "./states.js";
import { type AtDesign, type Trim, trimElements } from "./trim.js";

/** Below this a claimed mode hardly moves the element, as a share of what moves it most. */
const IDLE = 0.02;
/** Below this, m/m or rad/m, nothing moves it: rounding. */
const STILL = 1e-9;

export interface AxleContext {
  readonly mechanism: AxleMechanism;
  readonly states: AxleStates;
  readonly design: AtDesign;
  readonly trim: Trim;
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
    { mode: "heave", claimed: element.for.includes("heave"), strength: Math.abs(dL + dR) },
    { mode: "roll", claimed: element.for.includes("roll"), strength: Math.abs(dR - dL) },
  ];
}

const strongest = (drives: readonly Drive[]): Drive | undefined =>
  drives.reduce<Drive | undefined>(
    (best, d) => (best === undefined || d.strength > best.strength ? d : best),
    undefined,
  );

/** Wheel motions of one mode across the envelope. */
function statesOf(element: Element, { mode, claimed }: Drive, { states }: AxleContext): readonly State[] {
  if (mode !== "other-wheel") return mode === "heave" ? states.heave : states.roll;
  const left = (element.side === "left") === claimed;
  return states.travels.map((z) => (left ? states.at(z, 0) : states.at(0, z)));
}

/** True where only the element's own wheel can move it: nothing to look for on the other side. */
function ownWheelOnly(element: Element, d: Deflection): boolean {
  const other = element.side === "left" ? [d.dR, d.dRR] : [d.dL, d.dLL];
  return d.dLR === 0 && other.every((value) => value === 0);
}

function finiteLeak(element: Element, d: Deflection, into: Drive, own: readonly Drive[], context: AxleContext): Figure {
  if (element.side !== undefined && ownWheelOnly(element, d)) return 0;
  const leaked = spanOver(element, statesOf(element, into, context));
  if (isAbsent(leaked)) return leaked;
  let travel = 0;
  for (const drive of own) {
    const span = spanOver(element, statesOf(element, drive, context));
    if (isAbsent(span)) return span;
    travel = Math.max(travel, largest(span));
  }
  return travel > 0 ? largest(leaked) / travel : absent("its own mode does not move it within the travel");
}

/** What a form comes to in a mode: N/m, N·m/rad in roll, N/m at the wheel that the leak is about. */
function inMode(form: Form, mode: Leak["mode"], element: Element, track: number | undefined): number | undefined {
  if (mode === "heave") return inHeave(form);
  if (mode === "roll") return track === undefined ? undefined : inRoll(form, track);
  return element.side === "left" ? form.RR : form.LL;
}

function rateLeak(element: Element, mode: Leak["mode"], { parts, mechanism }: AxleContext): Figure {
  const damper = element.law?.kind === "damper";
  const sum = damper ? parts.dampingSum : parts.stiffnessSum;
  if (typeof sum === "string") return absent(sum);
  const own = (damper ? parts.damping : parts.stiffness).get(element);
  if (own === undefined) return absent(element.lawMissing ?? "it has neither rate nor damping");
  const part = inMode(own, mode, element, mechanism.track);
  const whole = inMode(sum, mode, element, mechanism.track);
  if (part === undefined || whole === undefined) return absent(`the ${mechanism.name} axle has no track`);
  if (part === 0) return 0;
  return Math.abs(whole) > 0 ? part / whole : absent("there is no rate in that mode to be a share of");
}

function leakOf(element: Element, d: Deflection, context: AxleContext): Leak | Absent | undefined {
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
    finite: finiteLeak(element, d, into, own, context),
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
function idleModes(element: Element, d: Deflection): readonly Mode[] {
  const drives = drivesOf(element, d);
  const most = strongest(drives)?.strength ?? 0;
  const idle = drives.filter(({ claimed, strength }) => claimed && !(strength > Math.max(STILL, IDLE * most)));
  return idle.map(({ mode }) => (mode === "other-wheel" ? "corner" : (mode as Mode)));
}

function ownRate(element: Element, d: Deflection, { trim, mechanism }: AxleContext): Figure {
  const stated = statedRate(element) ?? seatUnknown(element, trim, mechanism);
  return stated ?? staticRate(element, d.s + (trim.seats.get(element) ?? 0));
}

/** The rate or damping that an element has wherever it stands, or why it never has one. */
function statedRate({ law, lawMissing }: Element): Figure | undefined {
  if (law === undefined) return absent(lawMissing ?? "it has no law");
  if (law.kind === "damper") return law.lowSpeed;
  return law.kind === "inerter" ? absent("an inerter has neither rate nor damping") : law.constantRate;
}

/** Why the deflection at rest is not known. */
function seatUnknown(element: Element, trim: Trim, mechanism: AxleMechanism): Absent | undefined {
  if (!isAbsent(trim.results)) return undefined;
  const concerned = mechanism.trim.by === "push-rod" || trimElements(mechanism).includes(element);
  return concerned ? trim.results : undefined;
}

function staticLoad(element: Element, d: Deflection, { trim, mechanism }: AxleContext): Figure {
  if (element.law === undefined) return absent(element.lawMissing ?? "it has no law");
  return seatUnknown(element, trim, mechanism) ?? staticForce(element, d.s + (trim.seats.get(element) ?? 0));
}

function atWheels(element: Element, { parts, mechanism, trim }: AxleContext): Figure {
  if (element.law === undefined) return absent(element.lawMissing ?? "it has no law");
  const form = (element.law.kind === "damper" ? parts.damping : parts.stiffness).get(element);
  if (form === undefined) return seatUnknown(element, trim, mechanism) ?? absent("it has neither rate nor damping");
  if (element.side !== undefined) return element.side === "left" ? form.LL : form.RR;
  if (element.for[0] !== "roll") return inHeave(form);
  return mechanism.track === undefined
    ? absent(`the ${mechanism.name} axle has no track`)
    : inRoll(form, mechanism.track);
}

function travelOf(element: Element, { states }: AxleContext): Span | Absent {
  const heave = spanOver(element, states.heave);
  if (isAbsent(heave)) return heave;
  const roll = spanOver(element, states.roll);
  if (isAbsent(roll)) return roll;
  return { from: Math.min(heave.from, roll.from), to: Math.max(heave.to, roll.to) };
}

/** Figures of an element that cannot move or is not joined to anything. */
export function elementWithout(element: Element, why: Absent): ElementFigures {
  return {
    ...identity(element),
    sensitivity: why,
    motionRatio: element.side === undefined ? undefined : why,
    leak: why,
    rate: statedRate(element) ?? why,
    atWheels: why,
    staticLoad: why,
    travel: why,
    idleIn: [],
  };
}

const identity = (element: Element) => ({
  path: element.path,
  kind: element.kind,
  for: element.for,
  basis: element.connection?.basis ?? ("hardpoints" as const),
  torsional: element.connection?.torsional ?? false,
});

/** Everything that is told about one element of an axle. */
export function elementFigures(element: Element, context: AxleContext): ElementFigures {
  const d = context.design.get(element);
  const idle = element.connection?.idle;
  if (idle !== undefined) return elementWithout(element, absent(idle));
  if (d === undefined) return elementWithout(element, absent(element.connectionMissing ?? "it is not connected"));
  return {
    ...identity(element),
    sensitivity: sensitivity(context.mechanism.name, d),
    motionRatio: element.side === undefined ? undefined : element.side === "left" ? d.dL : d.dR,
    leak: leakOf(element, d, context),
    rate: ownRate(element, d, context),
    atWheels: atWheels(element, context),
    staticLoad: staticLoad(element, d, context),
    travel: travelOf(element, context),
    idleIn: idleModes(element, d),
  };
}
