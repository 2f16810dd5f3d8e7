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
import { signOfDeterminant } from "../../maths/elimination.js";
import { nothing, zeros } from "../../maths/rows.js";
import type { Vec3 } from "../../maths/vec3.js";
import type { CornerMotion } from "../../linkage/corner.js";
import { type AreaAt, type Areas, areasAt } from "../../elements/air.js";
import type { Attitude } from "./attitude.js";
import { horizontalForces, type Loaded, type RoadForces } from "./horizontal-forces.js";
import type { Load } from "./load.js";
import {
  BODY,
  FREEDOMS,
  type NoPosition,
  type PlacedCarrier,
  type PlacedWheel,
  type Position,
  positionAt,
} from "./position.js";
import type { Standing, StandingWheel } from "./standing.js";

/** What a metre of miss of a held length weighs, N/m. */
const HELD_STIFFNESS = 1e6;

export interface WheelBalance {
  readonly motion: CornerMotion;
  /** Vertical load, N, and horizontal forces of the tyre, forwards and to the left. */
  readonly load: number;
  readonly lateral: number;
  readonly longitudinal: number;
}

/** A carrier with the force that it has in the load: that of its law, or what is held. */
export type CarrierBalance = PlacedCarrier;

export interface Balance {
  readonly kind: "balance";
  readonly residual: readonly number[];
  readonly jacobian: readonly (readonly number[])[];
  readonly position: Position;
  readonly wheels: readonly WheelBalance[];
  readonly carriers: readonly CarrierBalance[];
  /** Height of the plane z = 0 at both axle lines, m. */
  readonly heights: readonly [front: number, rear: number];
  /** Areas of downforce and drag there. */
  readonly areas: Areas;
  readonly attitude: Attitude;
}

/** Residuals and their derivatives while they are added up. */
interface Sheet {
  readonly residual: number[];
  readonly jacobian: number[][];
  readonly attitude: Attitude;
}

/** Rows of the whole car's balance. */
const UP = 0;
const ROLL = 1;
const PITCH = 2;

/** @param leftOver what each wheel's springs carry besides, N, as they are seated on the flat patch */
export function balanceAt(
  standing: Standing,
  load: Load,
  x: readonly number[],
  leftOver: readonly number[],
): Balance | NoPosition {
  const position = positionAt(standing, x);
  return position.kind === "position" ? balanceOf(standing, load, x, position, leftOver) : position;
}

/** @param position that of x */
export function balanceOf(
  standing: Standing,
  load: Load,
  x: readonly number[],
  position: Position,
  leftOver: readonly number[],
): Balance {
  const { mass, sprung } = standing;
  const { body, pressure } = load;
  const { attitude, heights, height } = position;
  const sheet: Sheet = { residual: nothing(x.length), jacobian: zeros(x.length, x.length), attitude };
  const areas = areasAt(load.air, heights[0], heights[1]);
  addAir(sheet, position, pressure, areas);
  const drag = dragOf(position, pressure, areas.drag);
  addDrag(sheet, standing, drag);
  sheet.residual[UP]! += mass * body[2];
  addWeight(sheet, attitude.turned(sprung.at), undefined, 0, sprung.mass, body);
  const tyres = standing.wheels.map((wheel, i) => tyreOf(wheel, position.wheels[i]!, i, position));
  const road = horizontalForces(standing, tyres, {
    lateral: -mass * body[1],
    longitudinal: -mass * body[0] + drag.force,
    longitudinalBy: drag.by,
  });
  const wheels: WheelBalance[] = [];
  for (let i = 0; i < tyres.length; i++) {
    const [placed, tyre, forces] = [position.wheels[i]!, tyres[i]!, road[i]!];
    const { unsprung } = standing.wheels[i]!;
    addWheelToBody(sheet, placed.contact.p, placed.contact.d, tyre, forces, i, height);
    addWeight(sheet, placed.centre.p, placed.centre.d, BODY + i, unsprung, body);
    addWheel(sheet, placed, tyre, forces, i, unsprung, body);
    sheet.residual[BODY + i]! += leftOver[i]!;
    wheels.push({
      motion: placed.motion,
      load: tyre.load,
      lateral: forces.lateral,
      longitudinal: forces.longitudinal,
    });
  }
  const carriers = addCarriers(sheet, position, load, x);
  const { residual, jacobian } = sheet;
  return { kind: "balance", residual, jacobian, position, wheels, carriers, heights, areas, attitude };
}

function tyreOf(
  { tyreRate, load, height: atRest }: StandingWheel,
  { contact: { p, d } }: PlacedWheel,
  i: number,
  { attitude, height }: Position,
): Loaded {
  const free = load - tyreRate * (p[2] + height - atRest);
  const loadBy = nothing(FREEDOMS);
  if (!(free > 0)) return { load: 0, loadBy };
  loadBy[0] = -tyreRate;
  loadBy[1] = -tyreRate * p[1] * attitude.cosPitch;
  loadBy[2] = tyreRate * p[0];
  loadBy[BODY + i] = -tyreRate * d[2];
  return { load: free, loadBy };
}

/**
 * Adds f · r to a row, with its derivatives by roll, pitch and the travel (`freedom`) that r goes on along by `d`.
 * ∂r/∂φ = (r_y sin θ, −u, r_y cos θ) with u = r_x sin θ + r_z cos θ, ∂r/∂θ = (r_z, 0, −r_x).
 */
function addAlong(
  { residual, jacobian, attitude }: Sheet,
  row: number,
  fx: number,
  fy: number,
  fz: number,
  r: Vec3,
  d: Vec3 | undefined,
  freedom: number,
): void {
  const { sinPitch, cosPitch } = attitude;
  const by = jacobian[row]!;
  residual[row]! += fx * r[0] + fy * r[1] + fz * r[2];
  by[ROLL]! += (fx * sinPitch + fz * cosPitch) * r[1] - fy * (r[0] * sinPitch + r[2] * cosPitch);
  by[PITCH]! += fx * r[2] - fz * r[0];
  if (d !== undefined) by[freedom]! += fx * d[0] + fy * d[1] + fz * d[2];
}

function addScaled(into: number[], gradient: readonly number[], by: number): void {
  if (by === 0) return;
  for (let j = 0; j < FREEDOMS; j++) into[j]! += by * gradient[j]!;
}

/** Downforce on both axle lines, −q A upwards each. */
function addAir({ residual, jacobian }: Sheet, { lines }: Position, pressure: number, areas: Areas): void {
  const [ahead, behind] = lines;
  const [up, , pitch] = jacobian as [number[], number[], number[]];
  for (let a = 0; a < 2; a++) {
    const line = lines[a]!;
    const { area, byFront, byRear } = a === 0 ? areas.front : areas.rear;
    const byHeight = pressure * (byFront + byRear);
    const byTilt = -pressure * (byFront * ahead[0] + byRear * behind[0]);
    residual[UP]! -= pressure * area;
    up[0]! -= byHeight;
    up[2]! -= byTilt;
    residual[PITCH]! += pressure * area * line[0];
    pitch[0]! += byHeight * line[0];
    pitch[2]! += byTilt * line[0] + pressure * area * line[2];
  }
}

interface Drag {
  readonly force: number;
  /** By the seven freedoms: by the height and the pitch, where the area follows the ride heights. */
  readonly by: readonly number[] | undefined;
}

function dragOf({ lines }: Position, pressure: number, { area, byFront, byRear }: AreaAt): Drag {
  const force = pressure * area;
  if (byFront === 0 && byRear === 0) return { force, by: undefined };
  const by = nothing(FREEDOMS);
  by[0] = pressure * (byFront + byRear);
  by[2] = -pressure * (byFront * lines[0][0] + byRear * lines[1][0]);
  return { force, by };
}

/** Backwards at its place on the body: M_y = −z D. */
function addDrag(sheet: Sheet, standing: Standing, { force, by }: Drag): void {
  if (standing.drag === undefined) return;
  const at = sheet.attitude.turned(standing.drag);
  addAlong(sheet, PITCH, 0, 0, -force, at, undefined, 0);
  if (by !== undefined) addScaled(sheet.jacobian[PITCH]!, by, -at[2]);
}

/** The tyre's forces on the whole car: M_x = y N + H F_y, M_y = −H F_x − x N, with H the height of O. */
function addWheelToBody(
  sheet: Sheet,
  contact: Vec3,
  contactRate: Vec3,
  { load: n, loadBy }: Loaded,
  { lateral, lateralBy, longitudinal, longitudinalBy }: RoadForces,
  i: number,
  height: number,
): void {
  const { residual, jacobian } = sheet;
  const [up, roll, pitch] = jacobian as [number[], number[], number[]];
  residual[UP]! += n;
  addScaled(up, loadBy, 1);
  addAlong(sheet, ROLL, 0, n, 0, contact, contactRate, BODY + i);
  addScaled(roll, loadBy, contact[1]);
  residual[ROLL]! += height * lateral;
  roll[0]! += lateral;
  addScaled(roll, lateralBy, height);
  addAlong(sheet, PITCH, -n, 0, 0, contact, contactRate, BODY + i);
  addScaled(pitch, loadBy, -contact[0]);
  residual[PITCH]! -= height * longitudinal;
  pitch[0]! -= longitudinal;
  addScaled(pitch, longitudinalBy, -height);
}

/** Virtual work of a wheel's own travel, without the springs. */
function addWheel(
  sheet: Sheet,
  { contact: { d: contact, dd: contactRate }, centre: { d: centre, dd: centreRate } }: PlacedWheel,
  { load: n, loadBy }: Loaded,
  { lateral, lateralBy, longitudinal, longitudinalBy, atCentre }: RoadForces,
  i: number,
  unsprung: number,
  body: Vec3,
): void {
  const own = BODY + i;
  const row = sheet.jacobian[own]!;
  const [atContact, onCentre] = atCentre ? [0, longitudinal] : [longitudinal, 0];
  addAlong(sheet, own, atContact, lateral, n, contact, contactRate, own);
  addAlong(sheet, own, onCentre + unsprung * body[0], unsprung * body[1], unsprung * body[2], centre, centreRate, own);
  addScaled(row, loadBy, contact[2]);
  addScaled(row, lateralBy, contact[1]);
  addScaled(row, longitudinalBy, (atCentre ? centre : contact)[0]);
}

/** Moments of a mass about O: M_x = y b_z − z b_y, M_y = z b_x − x b_z. */
function addWeight(sheet: Sheet, at: Vec3, by: Vec3 | undefined, freedom: number, mass: number, body: Vec3): void {
  const [x, y, z] = body;
  addAlong(sheet, ROLL, 0, mass * z, -mass * y, at, by, freedom);
  addAlong(sheet, PITCH, -mass * z, 0, mass * x, at, by, freedom);
}

/** Takes each carrier's force from the wheels that it follows, and asks what is held for its length. */
function addCarriers(
  { residual, jacobian }: Sheet,
  { carriers }: Position,
  load: Load,
  x: readonly number[],
): readonly CarrierBalance[] {
  let unknown = FREEDOMS;
  return carriers.map((placed, k) => {
    const held = load.held.get(k);
    const isLength = held?.kind === "length";
    const force = held === undefined ? placed.force : isLength ? x[unknown]! : held.value;
    const { rate, d, dd, from, deflection } = placed;
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
      residual[unknown]! += HELD_STIFFNESS * (deflection + held.value);
      unknown++;
    }
    return held === undefined ? placed : { ...placed, force };
  });
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
