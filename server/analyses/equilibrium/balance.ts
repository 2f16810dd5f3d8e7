/**
 * All forces on the car at a position, and how they change: what is zero in equilibrium.
 *
 * Position x = [height of O, roll, pitch, travels FL FR RL RR, forces of what is held to a length …], m, rad, N.
 * Residuals = [forces upwards on the whole car, their moments about O along x and y of the road, virtual work of each
 * wheel's travel, miss of each held length · 1 MN/m …].
 *
 * Tyre N = max(0, N₀ − k (rise of the contact point)). Horizontal forces act on the road. Lateral ones from lateral force
 * and yaw balance by axle, shared left and right as the loads are; longitudinal ones by bias or drive, equal on both
 * sides unless a wheel is nearly off the road. Wheel i: N c_z' + F_y c_y' + F_x p_x' + m_u b·w' − Σ F_e ∂s_e/∂z_i = 0, with
 * c the contact point, w the wheel's centre, p that of both at which the longitudinal force acts: geometric load paths
 * and jacking are in these. What the longitudinal forces of both sides would do in yaw is left out.
 *
 * Longer than most, since values and derivatives are added up together: every term stands once, its derivative next to it.
 */
import type { Unreachable } from "../../linkage/corner.js";
import { signOfDeterminant } from "../../maths/determinant.js";
import { nothing, zeros } from "../../maths/rows.js";
import { dot, type Vec3 } from "../../maths/vec3.js";
import type { NoDeflection } from "../../elements/deflection.js";
import type { CornerMotion } from "../../linkage/corner.js";
import { type AreaAt, type Areas, areasAt } from "../../elements/air.js";
import { Attitude, byPitch } from "./attitude.js";
import { type Carrier, forceOf, rateOf } from "./carriers.js";
import { horizontalForces, type RoadForces } from "./horizontal-forces.js";
import type { Load } from "./load.js";
import type { Standing, StandingWheel } from "./standing.js";
import { wheelPoints } from "./wheel-points.js";

/** Body freedoms, then the four wheels. */
export const BODY = 3;
export const FREEDOMS = 7;

/** What a metre of miss of a held length weighs, N/m. */
const HELD_STIFFNESS = 1e6;

export interface WheelBalance {
  readonly motion: CornerMotion;
  /** Vertical load, N, and horizontal forces of the tyre, forwards and to the left. */
  readonly load: number;
  readonly lateral: number;
  readonly longitudinal: number;
}

export interface CarrierBalance {
  readonly carrier: Carrier;
  /** From design, and what it gives at a wheel: N, N·m or Pa. */
  readonly deflection: number;
  readonly force: number;
  readonly rate: number;
  /** ∂s over the wheels' travels, and the second derivatives, row by row. */
  readonly d: readonly number[];
  readonly dd: readonly (readonly number[])[];
}

export interface Balance {
  readonly kind: "balance";
  readonly residual: readonly number[];
  readonly jacobian: readonly (readonly number[])[];
  readonly wheels: readonly WheelBalance[];
  readonly carriers: readonly CarrierBalance[];
  /** Height of the plane z = 0 at both axle lines, m. */
  readonly heights: readonly [front: number, rear: number];
  /** Areas of downforce and drag there. */
  readonly areas: Areas;
  readonly attitude: Attitude;
}

/** Why nothing can be said at a position. */
export type NoBalance =
  | { readonly kind: "beyond-reach"; readonly wheel: number; readonly why: Unreachable }
  | { readonly kind: "no-deflection"; readonly path: string; readonly why: NoDeflection };

/** Values in the road's frame that change with roll, pitch and one travel: v, and its derivatives by each. */
interface Moved {
  readonly v: Vec3;
  readonly byRoll: Vec3;
  readonly byPitch: Vec3;
  readonly byTravel: Vec3;
}

function moved(attitude: Attitude, v: Vec3, d: Vec3): Moved {
  const r = attitude.turned(v);
  return { v: r, byRoll: attitude.byRoll(r), byPitch: byPitch(r), byTravel: attitude.turned(d) };
}

interface WheelPart {
  readonly motion: CornerMotion;
  readonly contact: Moved;
  readonly contactRate: Moved;
  readonly centre: Moved;
  readonly centreRate: Moved;
  readonly load: number;
  /** By the seven freedoms. */
  readonly loadBy: readonly number[];
}

function fromOrigin(p: Vec3, o: Vec3): Vec3 {
  return [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
}

/** The gradient over the seven freedoms of component `axis` of a moved vector at wheel i, times `by`, added to `into`. */
function addGradient(
  into: number[],
  { byRoll, byPitch: pitched, byTravel }: Moved,
  axis: 0 | 1 | 2,
  i: number,
  by: number,
) {
  into[1]! += by * byRoll[axis];
  into[2]! += by * pitched[axis];
  into[BODY + i]! += by * byTravel[axis];
}

function addScaled(into: number[], gradient: readonly number[], by: number): void {
  for (let j = 0; j < FREEDOMS; j++) into[j]! += by * gradient[j]!;
}

function wheelPart(
  wheel: StandingWheel,
  motion: CornerMotion,
  i: number,
  at: { readonly attitude: Attitude; readonly origin: Vec3; readonly height: number },
): WheelPart {
  const { contact, centre } = wheelPoints(motion, wheel.side, wheel.place)!;
  const { attitude, origin } = at;
  const c = moved(attitude, fromOrigin(contact.p, origin), contact.d);
  const free = wheel.load - wheel.tyreRate * (c.v[2] + at.height - wheel.height);
  const loadBy = nothing(FREEDOMS);
  if (free > 0) {
    loadBy[0] = -wheel.tyreRate;
    addGradient(loadBy, c, 2, i, -wheel.tyreRate);
  }
  return {
    motion,
    contact: c,
    contactRate: moved(attitude, contact.d, contact.dd),
    centre: moved(attitude, fromOrigin(centre.p, origin), centre.d),
    centreRate: moved(attitude, centre.d, centre.dd),
    load: Math.max(0, free),
    loadBy,
  };
}

/** Residuals and their derivatives while they are added up. */
interface Sheet {
  readonly residual: number[];
  readonly jacobian: number[][];
}

/** @param leftOver what each wheel's springs carry besides, N, as they are seated on the flat patch */
export function balanceAt(
  standing: Standing,
  load: Load,
  x: readonly number[],
  leftOver: readonly number[],
): Balance | NoBalance {
  const { wheels, origin, mass, sprung } = standing;
  const { body, pressure } = load;
  const attitude = new Attitude(x[1]!, x[2]!);
  const height = x[0]!;
  const sheet: Sheet = { residual: nothing(x.length), jacobian: zeros(x.length, x.length) };
  const parts: WheelPart[] = [];
  for (const [i, wheel] of wheels.entries()) {
    const motion = wheel.corner.motion(x[BODY + i]!);
    if ("kind" in motion) return { kind: "beyond-reach", wheel: i, why: motion };
    parts.push(wheelPart(wheel, motion, i, { attitude, origin, height }));
  }
  const { heights, areas } = addAir(sheet, standing, load, attitude, height);
  const drag = dragOf(standing, pressure, attitude, areas.drag);
  addDrag(sheet, standing, attitude, drag);
  sheet.residual[0]! += mass * body[2];
  addWeight(sheet, moved(attitude, sprung.at, ZERO), undefined, sprung.mass, body);
  const road = horizontalForces(standing, parts, {
    lateral: -mass * body[1],
    longitudinal: -mass * body[0] + drag.force,
    longitudinalBy: drag.by,
  });
  for (const [i, part] of parts.entries()) {
    const { unsprung } = wheels[i]!;
    addWheelToBody(sheet, part, road[i]!, i, height);
    addWeight(sheet, part.centre, i, unsprung, body);
    addWheel(sheet, part, road[i]!, i, unsprung, body);
    sheet.residual[BODY + i]! += leftOver[i]!;
  }
  const carriers = addCarriers(sheet, standing, load, x, parts);
  if (!Array.isArray(carriers)) return carriers;
  const found = parts.map(({ motion, load: onTyre }, i): WheelBalance => {
    const { lateral, longitudinal } = road[i]!;
    return { motion, load: onTyre, lateral, longitudinal };
  });
  return { kind: "balance", ...sheet, wheels: found, carriers, heights, areas, attitude };
}

/** Downforce on both axle lines, −q A upwards each. */
function addAir(
  { residual, jacobian }: Sheet,
  standing: Standing,
  { pressure, air }: Load,
  attitude: Attitude,
  height: number,
) {
  const ahead = attitude.turned([standing.lines[0], 0, 0]);
  const behind = attitude.turned([standing.lines[1], 0, 0]);
  const heights = [height + ahead[2], height + behind[2]] as const;
  const areas = areasAt(air, heights[0], heights[1]);
  const [up, , pitch] = jacobian as [number[], number[], number[]];
  for (const [a, line] of [ahead, behind].entries()) {
    const { area, byFront, byRear } = a === 0 ? areas.front : areas.rear;
    const byHeight = pressure * (byFront + byRear);
    const byTilt = -pressure * (byFront * ahead[0] + byRear * behind[0]);
    residual[0]! -= pressure * area;
    up[0]! -= byHeight;
    up[2]! -= byTilt;
    residual[2]! += pressure * area * line[0];
    pitch[0]! += byHeight * line[0];
    pitch[2]! += byTilt * line[0] + pressure * area * line[2];
  }
  return { heights, areas };
}

interface Drag {
  readonly force: number;
  /** By the seven freedoms: by the height and the pitch, where the area follows the ride heights. */
  readonly by: readonly number[] | undefined;
}

function dragOf({ lines }: Standing, pressure: number, attitude: Attitude, { area, byFront, byRear }: AreaAt): Drag {
  const force = pressure * area;
  if (byFront === 0 && byRear === 0) return { force, by: undefined };
  const by = nothing(FREEDOMS);
  by[0] = pressure * (byFront + byRear);
  by[2] = -pressure * (byFront * attitude.turned([lines[0], 0, 0])[0] + byRear * attitude.turned([lines[1], 0, 0])[0]);
  return { force, by };
}

/** Backwards at its place on the body: M_y = −z D. */
function addDrag({ residual, jacobian }: Sheet, standing: Standing, attitude: Attitude, { force, by }: Drag): void {
  if (standing.drag === undefined) return;
  const at = attitude.turned(standing.drag);
  const row = jacobian[2]!;
  residual[2]! -= force * at[2];
  if (by !== undefined) addScaled(row, by, -at[2]);
  row[1]! -= force * attitude.byRoll(at)[2];
  row[2]! -= force * byPitch(at)[2];
}

/** The tyre's forces on the whole car: M_x = y N + H F_y, M_y = −H F_x − x N, with H the height of O. */
function addWheelToBody(
  { residual, jacobian }: Sheet,
  part: WheelPart,
  road: RoadForces,
  i: number,
  height: number,
): void {
  const [up, roll, pitch] = jacobian as [number[], number[], number[]];
  const { contact, load: n, loadBy } = part;
  const { lateral, lateralBy, longitudinal, longitudinalBy } = road;
  residual[0]! += n;
  addScaled(up, loadBy, 1);
  residual[1]! += contact.v[1] * n + height * lateral;
  addGradient(roll, contact, 1, i, n);
  addScaled(roll, loadBy, contact.v[1]);
  roll[0]! += lateral;
  addScaled(roll, lateralBy, height);
  residual[2]! -= height * longitudinal + contact.v[0] * n;
  addGradient(pitch, contact, 0, i, -n);
  addScaled(pitch, loadBy, -contact.v[0]);
  pitch[0]! -= longitudinal;
  addScaled(pitch, longitudinalBy, -height);
}

/** Virtual work of a wheel's own travel, without the springs. */
function addWheel(sheet: Sheet, part: WheelPart, road: RoadForces, i: number, unsprung: number, body: Vec3): void {
  const { contactRate, centreRate, load: n, loadBy } = part;
  const { lateral, lateralBy, longitudinal, longitudinalBy, atCentre } = road;
  const row = sheet.jacobian[BODY + i]!;
  const push = atCentre ? centreRate : contactRate;
  sheet.residual[BODY + i]! +=
    n * contactRate.v[2] + lateral * contactRate.v[1] + longitudinal * push.v[0] + unsprung * dot(body, centreRate.v);
  addScaled(row, loadBy, contactRate.v[2]);
  addGradient(row, contactRate, 2, i, n);
  addScaled(row, lateralBy, contactRate.v[1]);
  addGradient(row, contactRate, 1, i, lateral);
  addScaled(row, longitudinalBy, push.v[0]);
  addGradient(row, push, 0, i, longitudinal);
  for (const axis of [0, 1, 2] as const) addGradient(row, centreRate, axis, i, unsprung * body[axis]);
}

const ZERO: Vec3 = [0, 0, 0];

/** Moments of a mass about O: M_x = y b_z − z b_y, M_y = z b_x − x b_z. */
function addWeight(sheet: Sheet, at: Moved, wheel: number | undefined, mass: number, body: Vec3): void {
  const { residual } = sheet;
  const [, roll, pitch] = sheet.jacobian as [number[], number[], number[]];
  residual[1]! += mass * (at.v[1] * body[2] - at.v[2] * body[1]);
  residual[2]! += mass * (at.v[2] * body[0] - at.v[0] * body[2]);
  const both = (of: Vec3, j: number): void => {
    roll[j]! += mass * (of[1] * body[2] - of[2] * body[1]);
    pitch[j]! += mass * (of[2] * body[0] - of[0] * body[2]);
  };
  both(at.byRoll, 1);
  both(at.byPitch, 2);
  if (wheel !== undefined) both(at.byTravel, BODY + wheel);
}

/** Takes each carrier's force from the wheels that it follows, and asks what is held for its length. */
function addCarriers(
  { residual, jacobian }: Sheet,
  standing: Standing,
  load: Load,
  x: readonly number[],
  parts: readonly WheelPart[],
): CarrierBalance[] | NoBalance {
  const front = { left: parts[0]!.motion, right: parts[1]!.motion };
  const rear = { left: parts[2]!.motion, right: parts[3]!.motion };
  const found: CarrierBalance[] = [];
  let unknown = FREEDOMS;
  for (const [k, carrier] of standing.carriers.entries()) {
    const moving = motionOf(carrier, front, rear);
    if ("kind" in moving) return { kind: "no-deflection", path: carrier.element.path, why: moving };
    const { s, d, dd, from } = moving;
    const held = load.held.get(k);
    const isLength = held?.kind === "length";
    const force = held === undefined ? forceOf(carrier, s) : isLength ? x[unknown]! : held.value;
    const rate = held === undefined ? rateOf(carrier, s) : 0;
    for (let i = 0; i < d.length; i++) {
      residual[from + i]! -= force * d[i]!;
      const row = jacobian[from + i]!;
      for (let j = 0; j < d.length; j++) row[from + j]! -= rate * d[i]! * d[j]! + force * dd[i]![j]!;
      if (isLength) {
        row[unknown]! -= d[i]!;
        jacobian[unknown]![from + i]! += HELD_STIFFNESS * d[i]!;
      }
    }
    if (isLength) {
      residual[unknown]! += HELD_STIFFNESS * (s + held.value);
      unknown++;
    }
    found.push({ carrier, deflection: s, force, rate, d, dd });
  }
  return found;
}

interface Moving {
  readonly s: number;
  readonly d: readonly number[];
  readonly dd: readonly (readonly number[])[];
  /** Row of its first wheel. */
  readonly from: number;
}

type AxleMotion = Parameters<Extract<Carrier, { axle: 0 | 1 }>["connection"]["deflection"]>[0];

function motionOf(carrier: Carrier, front: AxleMotion, rear: AxleMotion): Moving | NoDeflection {
  if (carrier.axle === undefined) {
    const found = carrier.connection.deflection({ front, rear });
    return "kind" in found ? found : { ...found, from: BODY };
  }
  const found = carrier.connection.deflection(carrier.axle === 0 ? front : rear);
  if ("kind" in found) return found;
  const { s, dL, dR, dLL, dLR, dRR } = found;
  return {
    s,
    d: [dL, dR],
    dd: [
      [dLL, dLR],
      [dLR, dRR],
    ],
    from: BODY + 2 * carrier.axle,
  };
}

/** Of the plane z = 0 at both axle lines, m. */
export function heightsAtRest({ rest, lines }: Standing): readonly [front: number, rear: number] {
  const [height = 0, roll = 0, pitch = 0] = rest;
  const attitude = new Attitude(roll, pitch);
  return [height + attitude.turned([lines[0], 0, 0])[2], height + attitude.turned([lines[1], 0, 0])[2]];
}

/**
 * Sign of the stiffness' determinant: it keeps that of the car at rest for as long as a push is pushed back. Each held
 * length borders the matrix once and turns the sign, which is undone here.
 */
export function stiffnessSign({ jacobian }: Balance): number {
  const held = jacobian.length - FREEDOMS;
  return signOfDeterminant(jacobian) * (held % 2 === 0 ? 1 : -1);
}

/** How many unknowns a load has. */
export function unknownsOf({ held }: Load): number {
  let count = FREEDOMS;
  for (const { kind } of held.values()) if (kind === "length") count++;
  return count;
}
