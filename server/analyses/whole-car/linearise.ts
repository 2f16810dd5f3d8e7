/**
 * The numbers of the linear whole car about an equilibrium: what a car is for movements small enough.
 *
 * Stiffness over wheel travel Σ k ∇s∇sᵀ + F ∇²s at the deflections of the case, less N ∂²c_z/∂z² of each contact point's
 * own path; damping Σ c ∇s∇sᵀ with c at small speed; inertance Σ b ∇s∇sᵀ. A lifted wheel's tyre gives nothing.
 *
 * Gravity takes m g H off the roll stiffness, H the height of the sprung centre of gravity over the axis through both
 * roll centres (y ∂y/∂z of the contact points; on the ground where the axle has no geometry).
 *
 * Left out: that a contact point rises by a per mille or two more than its wheel's centre, and what lateral and
 * longitudinal forces of the tyres do as wheels travel.
 */
import type { CornerMotion } from "../../linkage/corner.js";
import type { Vec3 } from "../../maths/vec3.js";
import type { Rows } from "../../maths/rows.js";
import { zeros } from "../../maths/rows.js";
import type { CarElement } from "../../elements/mechanism.js";
import type { CarConnection } from "../../elements/car-connection.js";
import type { Connection, Element } from "../../elements/element.js";
import { absent, isAbsent } from "../absent.js";
import { dampingMissing } from "../carrying.js";
import type { Balance } from "../equilibrium/balance.js";
import type { Solved } from "../equilibrium/outcome.js";
import type { Standing } from "../equilibrium/standing.js";
import { type WheelPoints, wheelPoints } from "../equilibrium/wheel-points.js";
import { GRAVITY } from "../loads.js";
import type { Absent } from "../results.js";
import type { AxleNumbers, WholeCar } from "./car-data.js";

/** What a car's equilibrium does not take, since only its movements do. */
export interface RideNumbers {
  /** Of the sprung mass about its own centre of gravity, kg·m², or why there is none. */
  readonly rollInertia: number | string;
  readonly pitchInertia: number | string;
  /** FL, FR, RL, RR, N·s/m; 0 where none is written. */
  readonly tyreDamping: readonly number[];
}

/** Over the four wheels. */
interface Sums {
  readonly stiffness: number[][];
  readonly damping: number[][];
  readonly inertance: number[][];
}

/** @returns what is missing where there is none */
export function linearise(standing: Standing, { balance, load }: Solved, numbers: RideNumbers): WholeCar | Absent {
  const { rollInertia, pitchInertia, tyreDamping } = numbers;
  if (typeof rollInertia === "string") return absent(rollInertia);
  if (typeof pitchInertia === "string") return absent(pitchInertia);
  for (const { carrier } of balance.carriers) {
    if (carrier.hold !== undefined && ![...load.held.values()].every(({ kind }) => kind === "force"))
      return absent(
        `${carrier.element.path} holds a length, and the modes of a car with a rigid link are not worked out`,
      );
  }
  const points = balance.wheels.map(({ motion }, i) => {
    const { side, place } = standing.wheels[i]!;
    return wheelPoints(motion, side, place)!;
  });
  const sums = sumsOf(standing, balance, points);
  if (isAbsent(sums)) return sums;
  const { sprung, lines, air } = standing;
  const wheels = standing.wheels.map(({ unsprung, tyreRate }, i) => {
    const onRoad = balance.wheels[i]!.load > 0;
    return {
      unsprungMass: unsprung,
      tyreRate: onRoad ? tyreRate : 0,
      tyreDamping: onRoad ? (tyreDamping[i] ?? 0) : 0,
    };
  });
  const axle = (first: 0 | 2): AxleNumbers => ({
    track: Math.abs(points[first]!.contact.p[1] - points[first + 1]!.contact.p[1]),
    left: wheels[first]!,
    right: wheels[first + 1]!,
    ...partOf(sums, first),
  });
  const { areas } = balance;
  const slopes = [areas.front, areas.rear].map(({ byFront, byRear }) => [
    load.pressure * byFront,
    load.pressure * byRear,
  ]);
  return {
    wheelbase: lines[0] - lines[1],
    sprung: { mass: sprung.mass, rollInertia, pitchInertia, behindFront: lines[0] - sprung.at[0], left: sprung.at[1] },
    front: axle(0),
    rear: axle(2),
    ...crossOf(sums),
    rollGravity: sprung.mass * GRAVITY * overRollAxis(standing, balance, points),
    ...(air === undefined || slopes.flat().every((slope) => slope === 0)
      ? {}
      : { air: { slopes, ...(air.lag === undefined ? {} : { lag: air.lag }) } }),
  };
}

function sumsOf(standing: Standing, balance: Balance, points: readonly WheelPoints[]): Sums | Absent {
  const sums: Sums = { stiffness: zeros(4, 4), damping: zeros(4, 4), inertance: zeros(4, 4) };
  for (const { carrier, force, rate, d, dd } of balance.carriers) {
    const from = carrier.axle === undefined ? 0 : 2 * carrier.axle;
    addForm(sums.stiffness, from, d, carrier.hold === undefined ? rate : 0);
    for (const [i, row] of dd.entries()) {
      for (const [j, value] of row.entries()) sums.stiffness[from + i]![from + j]! += force * value;
    }
  }
  for (const [i, { load }] of balance.wheels.entries()) sums.stiffness[i]![i]! -= load * points[i]!.contact.dd[2];
  const missing = addMoving(sums, standing, balance);
  return missing ?? sums;
}

/** A damper or an inerter that is joined to something. */
export type Mover =
  | { readonly element: Element; readonly axle: 0 | 1; readonly connection: Connection }
  | { readonly element: CarElement; readonly axle: undefined; readonly connection: CarConnection };

/** Its deflection by the wheels' travels, the first of which is `from`. */
export interface Moving {
  readonly element: Element | CarElement;
  readonly from: number;
  readonly d: readonly number[];
}

/** Dampers and inerters, of both axles and between them. */
export function moversOf({ car }: Standing): readonly Mover[] {
  const moves = ({ law, connection }: Element | CarElement): boolean =>
    connection?.idle === undefined && (law?.kind === "damper" || law?.kind === "inerter");
  const ofAxle = (name: "front" | "rear", axle: 0 | 1): readonly Mover[] =>
    (car.axles[name]?.mechanism.elements ?? []).flatMap((element) => {
      const { connection } = element;
      return moves(element) && connection !== undefined ? [{ element, axle, connection }] : [];
    });
  const joining = car.joining.flatMap((element): readonly Mover[] => {
    const { connection } = element;
    return moves(element) && connection !== undefined ? [{ element, axle: undefined, connection }] : [];
  });
  return [...ofAxle("front", 0), ...ofAxle("rear", 1), ...joining];
}

/** How they move at a position; those that have no deflection there are left out. */
export function movingAt(
  movers: readonly Mover[],
  { wheels }: { readonly wheels: readonly { readonly motion: CornerMotion }[] },
): readonly Moving[] {
  const front = { left: wheels[0]!.motion, right: wheels[1]!.motion };
  const rear = { left: wheels[2]!.motion, right: wheels[3]!.motion };
  const found: Moving[] = [];
  for (const { element, axle, connection } of movers) {
    if (axle === undefined) {
      const at = connection.deflection({ front, rear });
      if (!("kind" in at)) found.push({ element, from: 0, d: at.d });
    } else {
      const at = connection.deflection(axle === 0 ? front : rear);
      if (!("kind" in at)) found.push({ element, from: 2 * axle, d: [at.dL, at.dR] });
    }
  }
  return found;
}

export const movingOf = (standing: Standing, balance: Balance): readonly Moving[] =>
  movingAt(moversOf(standing), balance);

function addMoving(sums: Sums, standing: Standing, balance: Balance): Absent | undefined {
  const { axles, joining } = standing.car;
  const own = [axles.front, axles.rear].flatMap((axle) => axle?.mechanism.elements ?? []);
  const missing = dampingMissing([...own, ...joining]);
  if (missing !== undefined) return absent(missing);
  for (const { element, from, d } of movingOf(standing, balance)) {
    const { law } = element;
    if (law?.kind === "damper") addForm(sums.damping, from, d, law.lowSpeed);
    if (law?.kind === "inerter") addForm(sums.inertance, from, d, law.inertance);
  }
  return undefined;
}

function addForm(into: number[][], from: number, d: readonly number[], by: number): void {
  for (let i = 0; i < d.length; i++) {
    for (let j = 0; j < d.length; j++) into[from + i]![from + j]! += by * d[i]! * d[j]!;
  }
}

const EACH = ["stiffness", "damping", "inertance"] as const;

function partOf(sums: Sums, first: 0 | 2): Sums {
  const part = (rows: Rows): number[][] => rows.slice(first, first + 2).map((row) => row.slice(first, first + 2));
  return { stiffness: part(sums.stiffness), damping: part(sums.damping), inertance: part(sums.inertance) };
}

/** What joins the axles, where anything does. */
function crossOf(sums: Sums): Pick<WholeCar, "cross"> {
  const between = (rows: Rows): number[][] =>
    rows.map((row, i) => row.map((value, j) => (i < 2 === j < 2 ? 0 : value)));
  const cross = {
    stiffness: between(sums.stiffness),
    damping: between(sums.damping),
    inertance: between(sums.inertance),
  };
  return EACH.every((of) => cross[of].flat().every((value) => value === 0)) ? {} : { cross };
}

/** Height of the sprung centre of gravity over the roll axis, m. */
function overRollAxis({ sprung, lines }: Standing, balance: Balance, points: readonly WheelPoints[]): number {
  const height = (p: Vec3): number =>
    balance.attitude.turned(p)[2] + balance.heights[0] - balance.attitude.turned([lines[0], 0, 0])[2];
  const [front, rear] = ([0, 2] as const).map((first) => {
    const [left, right] = [points[first]!.contact, points[first + 1]!.contact];
    const of = ({ p, d }: WheelPoints["contact"]): number => (p[1] * d[1]) / d[2];
    return (of(left) + of(right)) / 2;
  }) as [number, number];
  const behind = (lines[0] - sprung.at[0]) / (lines[0] - lines[1]);
  return height(sprung.at) - (front + (rear - front) * behind);
}
