/**
 * Everything that is told about one element of an axle: how it is moved, what it gives at the wheels, what
 * it carries at rest, and its leak.
 */
import type { Deflection, Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { absent, isAbsent } from "./absent.js";
import type { Path } from "./along.js";
import { HELD, staticForce, staticRate } from "./carrying.js";
import type { Contributions } from "./contributions.js";
import { idleModes, leakOf, type Spans } from "./coupling.js";
import { atWheel, inHeave, inRoll } from "./form.js";
import { fluidFigures } from "./fluid-figures.js";
import type { Absent, ElementFigures, Figure, FluidFigures } from "./results.js";
import { type Span, spanOver } from "./sampled.js";
import { sensitivity } from "./sensitivity.js";
import type { AxleStates } from "./states.js";
import { lawEvents, strengthFigures } from "./strength.js";
import { type Standing, type Trim, trimElements } from "./trim.js";

export interface AxleContext {
  readonly mechanism: AxleMechanism;
  readonly states: AxleStates;
  readonly rest: Standing;
  readonly trim: Trim;
  readonly parts: Contributions;
  readonly paths: readonly Path[];
}

function ownRate(element: Element, d: Deflection, { trim, mechanism }: AxleContext): Figure {
  const stated = statedRate(element) ?? seatUnknown(element, trim, mechanism);
  return stated ?? staticRate(element, d.s + (trim.seats.get(element) ?? 0));
}

/** The rate or damping that an element has wherever it stands, or why it never has one. */
function statedRate({ law, lawMissing }: Element): Figure | undefined {
  if (law === undefined) return absent(lawMissing ?? "it has no law");
  if (law.kind === "damper") return law.lowSpeed;
  if (law.kind === "hold") return absent(HELD);
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
  if (element.law.kind === "hold") return absent(HELD);
  return seatUnknown(element, trim, mechanism) ?? staticForce(element, d.s + (trim.seats.get(element) ?? 0));
}

function atWheels(element: Element, { parts, mechanism, trim }: AxleContext): Figure {
  if (element.law === undefined) return absent(element.lawMissing ?? "it has no law");
  if (element.law.kind === "hold") return absent(HELD);
  const form = (element.law.kind === "damper" ? parts.damping : parts.stiffness).get(element);
  if (form === undefined) return seatUnknown(element, trim, mechanism) ?? absent("it has neither rate nor damping");
  if (element.side !== undefined) return element.side === "left" ? form.LL : form.RR;
  if (element.for[0] !== "roll") return inHeave(form);
  return mechanism.track === undefined
    ? absent(`the ${mechanism.name} axle has no track`)
    : inRoll(form, mechanism.track);
}

const spansOf = (element: Element, states: AxleStates, rest: number): Spans => ({
  heave: spanOver(element, states.heave, rest),
  roll: spanOver(element, states.roll, rest),
});

function travelOf({ heave, roll }: Spans): Span | Absent {
  if (isAbsent(heave)) return heave;
  if (isAbsent(roll)) return roll;
  return { from: Math.min(heave.from, roll.from), to: Math.max(heave.to, roll.to) };
}

/** Pressures of an element and of its further volumes. */
function fluidOf({ path }: Element, { mechanism, states, rest, trim }: AxleContext): FluidFigures | undefined {
  const bodies = mechanism.elements.flatMap((part) => {
    const { law } = part;
    const d = rest.get(part);
    if (part.path !== path || law?.kind !== "spring" || law.fluid === undefined || d === undefined) return [];
    const seat = trim.seats.get(part) ?? 0;
    const unknown = seatUnknown(part, trim, mechanism);
    const span = travelOf(spansOf(part, states, d.s));
    const travel = unknown ?? (isAbsent(span) ? span : { from: span.from + seat, to: span.to + seat });
    return [{ fluid: law.fluid, atRest: unknown ?? d.s + seat, travel }];
  });
  return fluidFigures(bodies);
}

function ofStrength(
  element: Element,
  { s: rest }: Deflection,
  travel: Span | Absent,
  { trim, mechanism, paths }: AxleContext,
): Pick<ElementFigures, "strength" | "events"> {
  if (isAbsent(travel)) return {};
  const seat = seatUnknown(element, trim, mechanism) ?? trim.seats.get(element) ?? 0;
  const context = { element, rest, travel, seat, paths };
  return { strength: strengthFigures(context), events: lawEvents(context) };
}

/** b ∇s∇sᵀ, as mass at the wheels. */
function inertanceOf({ law }: Element, { dL, dR }: Deflection, mechanism: AxleMechanism): ElementFigures["inertance"] {
  if (law?.kind !== "inerter") return undefined;
  const b = law.inertance;
  const form = { LL: b * dL * dL, LR: b * dL * dR, RR: b * dR * dR };
  const { track } = mechanism;
  return {
    heave: inHeave(form),
    roll: track === undefined ? absent(`the ${mechanism.name} axle has no track`) : inRoll(form, track),
    single: form.LL === 0 || form.RR === 0 ? form.LL + form.RR : atWheel(form),
  };
}

/** Figures of an element that cannot move or is not joined to anything. */
export function elementWithout(element: Element, why: Absent): ElementFigures {
  return {
    path: element.path,
    kind: element.kind,
    for: element.for,
    basis: element.connection?.basis ?? "hardpoints",
    torsional: element.connection?.torsional ?? false,
    measure: element.connection?.measure,
    sensitivity: why,
    motionRatio: element.side === undefined ? undefined : why,
    leak: why,
    rate: statedRate(element) ?? why,
    atWheels: why,
    staticLoad: why,
    deflection: why,
    travel: why,
    idleIn: [],
  };
}

/** Everything that is told about one element of an axle. */
export function elementFigures(element: Element, context: AxleContext): ElementFigures {
  const d = context.rest.get(element);
  const idle = element.connection?.idle;
  if (idle !== undefined) return elementWithout(element, absent(idle));
  if (d === undefined) return elementWithout(element, absent(element.connectionMissing ?? "it is not connected"));
  const { states } = context;
  const spans = spansOf(element, states, d.s);
  const travel = travelOf(spans);
  return {
    path: element.path,
    kind: element.kind,
    for: element.for,
    basis: element.connection?.basis ?? "hardpoints",
    torsional: element.connection?.torsional ?? false,
    measure: element.connection?.measure,
    fluid: fluidOf(element, context),
    ...ofStrength(element, d, travel, context),
    inertance: inertanceOf(element, d, context.mechanism),
    sensitivity: sensitivity(context.mechanism.name, d),
    motionRatio: element.side === undefined ? undefined : element.side === "left" ? d.dL : d.dR,
    leak: leakOf(element, d, context, spans),
    rate: ownRate(element, d, context),
    atWheels: atWheels(element, context),
    staticLoad: staticLoad(element, d, context),
    deflection: d.s,
    travel,
    idleIn: idleModes(element, d),
  };
}
