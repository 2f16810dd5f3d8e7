/**
 * Trim: how far the seat of the trim element moves so that the axle stands at its ride height
 * under its weight, as a mechanic sets it on the flat patch. Every other gap and preload holds at
 * design position.
 *
 * At rest ∂U/∂z equals the load that each wheel puts on the elements (`carriedLoads`).
 *
 * Absent where the weight cannot be carried by the seat alone, with the reason.
 */
import type { Deflection, Element } from "../elements/element.js";
import { deflectionAt } from "../elements/laws/inverse.js";
import type { AxleMechanism, KeptSeats } from "../elements/mechanism.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent, isAbsent } from "./absent.js";
import { staticForce, stiffnessMissing } from "./carrying.js";
import { carriedLoads } from "./loads.js";
import type { Absent, RodsSet, TrimResult } from "./results.js";

/** Difference between the wheels that a single seat may leave, as a share of their load. */
const UNEVEN = 0.005;

/** Deflections of the elements at rest, from design; by element. */
export type Standing = ReadonlyMap<Element, Deflection>;

export interface Trim {
  readonly results: readonly TrimResult[] | Absent;
  readonly rods?: RodsSet | undefined;
  /** Seat of every trim element; empty where the trim is absent. */
  readonly seats: ReadonlyMap<Element, number>;
}

/** What the loads leave to the trim element once everything else carries its part. */
function remaining(
  loads: { readonly left: number; readonly right: number },
  elements: readonly Element[],
  trimmed: readonly Element[],
  standing: Standing,
): { left: number; right: number } {
  let { left, right } = loads;
  for (const element of elements) {
    const d = standing.get(element);
    if (d === undefined || trimmed.includes(element)) continue;
    const force = staticForce(element, d.s);
    left -= force * d.dL;
    right -= force * d.dR;
  }
  return { left, right };
}

/** Forces of the trim elements that leave nothing over. */
function forces(
  trimmed: readonly Element[],
  rest: { readonly left: number; readonly right: number },
  standing: Standing,
): readonly number[] | Absent {
  const [first, second] = trimmed;
  const a = first && standing.get(first);
  if (first === undefined || a === undefined) return absent("the trim element is not connected");
  if (second === undefined) return oneForce(first, a, rest);
  const b = standing.get(second);
  if (b === undefined) return absent("the trim element is not connected on both sides");
  const determinant = a.dL * b.dR - a.dR * b.dL;
  if (!(Math.abs(determinant) > 1e-9 * (a.dL * a.dL + a.dR * a.dR + b.dL * b.dL + b.dR * b.dR))) {
    return absent(
      `${first.path} and ${second.path} are hardly moved by the wheels, so that no seat of theirs carries the weight`,
    );
  }
  return [(rest.left * b.dR - rest.right * b.dL) / determinant, (a.dL * rest.right - a.dR * rest.left) / determinant];
}

function oneForce(
  element: Element,
  { dL, dR }: Deflection,
  rest: { readonly left: number; readonly right: number },
): readonly number[] | Absent {
  const heave = dL + dR;
  if (!(Math.abs(heave) > 1e-6 * (Math.abs(dL) + Math.abs(dR)))) {
    return absent(`${element.path} is not moved in heave, so that no seat of it carries the weight`);
  }
  const force = (rest.left + rest.right) / heave;
  const uneven = Math.abs(rest.left - force * dL);
  if (uneven > UNEVEN * (Math.abs(rest.left) + Math.abs(rest.right))) {
    return absent(
      `${element.path} alone cannot hold both wheels at ride height: it would leave ${Math.round(uneven)} N at each`,
    );
  }
  return [force];
}

function seatsFor(trimmed: readonly Element[], loads: readonly number[], standing: Standing): Trim {
  const seats = new Map<Element, number>();
  const results: TrimResult[] = [];
  for (const [i, element] of trimmed.entries()) {
    const load = loads[i] ?? 0;
    const carrying = element.law?.kind === "spring" ? deflectionAt(element.law, load) : undefined;
    if (carrying === undefined) {
      const unit = element.connection?.torsional === true ? "N*m" : "N";
      return none(
        `${element.path} would have to carry ${Math.round(load)} ${unit}, which its law cannot give at any seat`,
      );
    }
    const seat = carrying - (standing.get(element)?.s ?? 0);
    seats.set(element, seat);
    results.push({ path: element.path, seat, load });
  }
  return { results, seats };
}

const none = (reason: string): Trim => ({ results: absent(reason), seats: new Map() });

/** What the seats carry that are left where they were. */
function onKeptSeats({ elements }: AxleMechanism, kept: KeptSeats, standing: Standing): Trim {
  const seats = new Map<Element, number>();
  const results: TrimResult[] = [];
  for (const element of elements) {
    const seat = kept.seats.get(element.path);
    const d = standing.get(element);
    if (seat === undefined || d === undefined || element.part !== undefined) continue;
    seats.set(element, seat);
    results.push({ path: element.path, seat, load: staticForce(element, d.s + seat) });
  }
  return { results, seats };
}

/** The elements whose seat is to move. */
export function trimElements({ trim, elements }: AxleMechanism): readonly Element[] {
  return trim.by === "element" || trim.by === "kept"
    ? elements.filter(({ name, law }) => name === trim.element && law?.kind !== "damper")
    : [];
}

/**
 * The trim of an axle at its ride height.
 *
 * @param motion of both corners at rest
 */
export function trimAxle(mechanism: AxleMechanism, motion: AxleMotion, standing: Standing): Trim {
  const { name, trim, elements } = mechanism;
  if (mechanism.keptMissing !== undefined) return none(mechanism.keptMissing);
  if (mechanism.kept !== undefined) return onKeptSeats(mechanism, mechanism.kept, standing);
  // Its rods are set already (`rod-trim.ts`): every seat stays.
  if (trim.by === "push-rod") return { results: [], seats: new Map() };
  if (trim.by === "nothing") return none(`nothing on the ${name} axle can be set so that it carries the weight`);
  const missing = stiffnessMissing(elements);
  if (missing !== undefined) return none(missing);
  const loads = carriedLoads(mechanism, motion);
  if (isAbsent(loads)) return { results: loads, seats: new Map() };
  const { joined } = mechanism;
  if (typeof joined === "string") return none(joined);
  const own = { left: loads.left - (joined?.left ?? 0), right: loads.right - (joined?.right ?? 0) };
  const trimmed = trimElements(mechanism);
  const needed = forces(trimmed, remaining(own, elements, trimmed, standing), standing);
  return isAbsent(needed) ? { results: needed, seats: new Map() } : seatsFor(trimmed, needed, standing);
}
