/**
 * What of an element's strength and room is not enough, read off its figures: the one place that says what counts, so
 * that a check and the proof of its fix cannot differ.
 */
import type { CoilFigures, ElementFigures, StressFigures, StrokeFigures, Where } from "../../analyses/results.js";
import { elementsOf } from "../axle-parts.js";
import type { CheckedCar } from "../context.js";
import type { Severity } from "../finding.js";

/** Every one with the place on the travel where it first comes about. */
export type StrengthFault = { readonly where: Where } & (
  | { readonly kind: "over-stress"; readonly stress: StressFigures }
  | { readonly kind: "coil-bind"; readonly coil: CoilFigures }
  | { readonly kind: "unseated" }
  /** `short`: by how much the travel ends before it, in the element's own deflection. */
  | { readonly kind: "gap-beyond-travel"; readonly short: number; readonly isStop: boolean }
  | { readonly kind: "over-travel"; readonly way: "bump" | "rebound"; readonly room: StrokeFigures["bump"] }
);

export type FaultKind = StrengthFault["kind"];
export type FaultOf<K extends FaultKind> = Extract<StrengthFault, { readonly kind: K }>;

export function faultsOf(figures: ElementFigures): readonly StrengthFault[] {
  return [...boundOf(figures), ...neverWorks(figures)];
}

/** A spring that is loose at rest and all over the travel: what would take up its gap lies beyond both ends. */
function neverWorks({ kind, events, travel, staticLoad }: ElementFigures): readonly StrengthFault[] {
  if (events === undefined || "kind" in events || "kind" in travel || staticLoad !== 0) return [];
  const free = events.flatMap(({ what, at }) => (what === "free" ? [at] : []));
  const short = free.map((at) => (at > travel.to ? at - travel.to : travel.from - at));
  if (short.length === 0 || !short.every((one) => one > 0)) return [];
  const where: Where = { mode: "rest", travel: 0 };
  return [{ kind: "gap-beyond-travel", short: Math.min(...short), isStop: kind === "bump-stop", where }];
}

function boundOf({ strength }: ElementFigures): readonly StrengthFault[] {
  if (strength === undefined || "kind" in strength) return [];
  const { stresses, coil, stroke, unseated } = strength;
  const found: StrengthFault[] = [];
  for (const stress of stresses) {
    if (stress.passed !== undefined) found.push({ kind: "over-stress", stress, where: stress.passed });
  }
  if (coil?.binds !== undefined) found.push({ kind: "coil-bind", coil, where: coil.binds });
  if (unseated !== undefined) found.push({ kind: "unseated", where: unseated });
  for (const way of ["bump", "rebound"] as const) {
    const room = stroke?.[way];
    if (room?.passed !== undefined) found.push({ kind: "over-travel", way, room, where: room.passed });
  }
  return found;
}

/** What cannot even be put together at rest is wrong; what comes about on the way may be meant. */
export function severityOf(fault: StrengthFault): Severity {
  const { kind, where } = fault;
  // A stop may be meant for what lies beyond the envelope.
  if (kind === "gap-beyond-travel") return fault.isStop ? "information" : "warning";
  return where.mode === "rest" && (kind === "coil-bind" || kind === "over-travel") ? "error" : "warning";
}

/** Tells faults apart within an element: which part, which way. */
export const nameOfFault = (fault: StrengthFault): string => {
  if (fault.kind === "over-stress") return `${fault.kind} ${fault.stress.part}`;
  return fault.kind === "over-travel" ? `${fault.kind} ${fault.way}` : fault.kind;
};

/** `front.third coil-bind`, of every element of the car. */
export const everyFault = (car: CheckedCar): ReadonlySet<string> =>
  new Set(
    elementsOf(car).flatMap(({ model, figures }) =>
      faultsOf(figures).map((fault) => `${model.path} ${nameOfFault(fault)}`),
    ),
  );
