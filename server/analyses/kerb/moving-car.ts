/**
 * A car that moves about an equilibrium, with its full laws: accelerations of the seven freedoms at a position and speed.
 *
 * x = [height of O, roll, pitch, travels FL FR RL RR], the coordinates of `equilibrium`, whose residuals are the forces:
 * springs, stops, gas and bars at their deflection, kinematics exact at each position, air at the attitude (as if settled:
 * a lag of the air is left out), horizontal tyre forces of the case shared as the loads are. To them come dampers at the
 * speed of deflection Σ ∂s/∂zᵢ żᵢ, and tyres with the road's height and damping, which push and never pull.
 *
 * Mass matrix: vertical motion of the sprung and unsprung masses, roll and pitch inertia, inerters; that of the equilibrium
 * throughout. Left out: forces with squares of velocity, and the small horizontal motions of the masses.
 *
 * Invariant: undefined, never NaN, where the links or an element have no position.
 */
import { absent, isAbsent } from "../absent.js";
import { dampingMissing } from "../carrying.js";
import { type Attitude, byPitch } from "../equilibrium/attitude.js";
import { type Balance, balanceOf } from "../equilibrium/balance.js";
import type { Solved } from "../equilibrium/outcome.js";
import { BODY, FREEDOMS, type Position, positionAt } from "../equilibrium/position.js";
import type { Ready } from "../equilibrium/solve.js";
import type { Standing } from "../equilibrium/standing.js";
import type { Element } from "../../elements/element.js";
import type { CarElement } from "../../elements/mechanism.js";
import type { Vec3 } from "../../maths/vec3.js";
import { solved } from "../../maths/eigen.js";
import { applied, diagonal, type Rows } from "../../maths/rows.js";
import type { Absent } from "../results.js";
import { type Moving, moversOf, movingAt, movingOf } from "../whole-car/linearise.js";
import type { RideNumbers } from "../whole-car/linearise.js";

/** Height and vertical speed of the road under each wheel, m and m/s. */
export interface RoadUnder {
  readonly heights: readonly number[];
  readonly speeds: readonly number[];
}

export interface DamperState {
  readonly element: Element | CarElement;
  /** Of deflection, m/s or rad/s, and what it gives beside its gas. */
  readonly speed: number;
  readonly force: number;
}

export interface CarState {
  readonly balance: Balance;
  readonly dampers: readonly DamperState[];
  readonly acceleration: readonly number[];
}

export interface MovingCar {
  readonly mass: Rows;
  /** @returns undefined where there is no such position */
  at(x: readonly number[], v: readonly number[], road: RoadUnder): CarState | undefined;
}

/** @returns what is missing where there is none */
export function movingCar({ standing, leftOver }: Ready, solution: Solved, numbers: RideNumbers): MovingCar | Absent {
  const mass = massMatrix(standing, solution, numbers);
  if (isAbsent(mass)) return mass;
  const unit = diagonal(Array.from({ length: FREEDOMS }, () => 1));
  const inverse = solved(mass, unit);
  if (inverse === undefined) return absent("a mass or an inertia is not above nought");
  const dampers = moversOf(standing).filter(({ element }) => element.law?.kind === "damper");
  return {
    mass,
    at(x, v, road) {
      const position = positionAt(standing, x);
      if (position.kind !== "position") return undefined;
      const under = onRoad(standing, position, v, road, numbers.tyreDamping);
      const balance = balanceOf(under, solution.load, x, position, leftOver);
      const force = balance.residual.slice(0, FREEDOMS);
      const states = movingAt(dampers, position).flatMap((moving) => damped(moving, v, force));
      return { balance, dampers: states, acceleration: applied(inverse, force) };
    },
  };
}

/** Takes its force from the wheels that it follows. */
function damped({ element, from, d }: Moving, v: readonly number[], into: number[]): readonly DamperState[] {
  const { law } = element;
  if (law?.kind !== "damper") return [];
  let speed = 0;
  for (let i = 0; i < d.length; i++) speed += d[i]! * v[BODY + from + i]!;
  const force = law.force(speed);
  for (let i = 0; i < d.length; i++) into[BODY + from + i]! -= force * d[i]!;
  return [{ element, speed, force }];
}

/** Rise with the seven freedoms of a point in the road's frame, or of one that moves by `d` for a wheel's travel. */
function riseRow(attitude: Attitude, r: Vec3, wheel?: { readonly index: number; readonly d: Vec3 }): number[] {
  const own = wheel === undefined ? 0 : wheel.d[2];
  return [1, attitude.byRoll(r)[2], byPitch(r)[2], ...[0, 1, 2, 3].map((i) => (i === wheel?.index ? own : 0))];
}

function massMatrix(standing: Standing, { balance, load }: Solved, numbers: RideNumbers): number[][] | Absent {
  const { rollInertia, pitchInertia } = numbers;
  if (typeof rollInertia === "string") return absent(rollInertia);
  if (typeof pitchInertia === "string") return absent(pitchInertia);
  const { axles, joining } = standing.car;
  const elements = [axles.front, axles.rear].flatMap((axle) => axle?.mechanism.elements ?? []);
  const missing = dampingMissing([...elements, ...joining]);
  if (missing !== undefined) return absent(missing);
  if ([...load.held.values()].some(({ kind }) => kind === "length"))
    return absent("an actuator holds a length, and a kerb strike of a car with a rigid link is not worked out");
  const mass = diagonal([0, rollInertia, pitchInertia, 0, 0, 0, 0]);
  const { attitude, position } = balance;
  addRow(mass, riseRow(attitude, attitude.turned(standing.sprung.at)), standing.sprung.mass);
  for (const [index, { unsprung }] of standing.wheels.entries()) {
    const { p, d } = position.wheels[index]!.centre;
    addRow(mass, riseRow(attitude, p, { index, d }), unsprung);
  }
  for (const { element, from, d } of movingOf(standing, balance)) {
    if (element.law?.kind !== "inerter") continue;
    const row = Array.from({ length: FREEDOMS }, (_, j) => d[j - BODY - from] ?? 0);
    addRow(mass, row, element.law.inertance);
  }
  return mass;
}

function addRow(into: number[][], row: readonly number[], by: number): void {
  for (const [i, a] of row.entries()) for (const [j, b] of row.entries()) into[i]![j]! += by * a * b;
}

/** The car with its tyres on that road: each one's contact height raised by the road, its load by its damping. */
function onRoad(
  standing: Standing,
  { wheels, attitude }: Position,
  v: readonly number[],
  { heights, speeds }: RoadUnder,
  tyreDamping: readonly number[],
): Standing {
  const [rise, roll, pitch] = [v[0]!, v[1]!, v[2]!];
  return {
    ...standing,
    wheels: standing.wheels.map((wheel, i) => {
      const { p, d } = wheels[i]!.contact;
      const rising = rise + p[1] * attitude.cosPitch * roll - p[0] * pitch + d[2] * v[BODY + i]!;
      const pressed = (tyreDamping[i] ?? 0) * (speeds[i]! - rising);
      return { ...wheel, height: wheel.height + heights[i]!, load: wheel.load + pressed };
    }),
  };
}
