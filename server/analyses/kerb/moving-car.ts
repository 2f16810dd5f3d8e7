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
import { Attitude, byPitch } from "../equilibrium/attitude.js";
import { type Balance, balanceAt, BODY, FREEDOMS } from "../equilibrium/balance.js";
import type { Solved } from "../equilibrium/outcome.js";
import type { Ready } from "../equilibrium/solve.js";
import type { Standing } from "../equilibrium/standing.js";
import { wheelPoints } from "../equilibrium/wheel-points.js";
import type { Element } from "../../elements/element.js";
import type { CarElement } from "../../elements/mechanism.js";
import type { CornerMotion } from "../../linkage/corner.js";
import { sub, type Vec3 } from "../../maths/vec3.js";
import { solved } from "../../maths/eigen.js";
import { applied, diagonal, type Rows } from "../../maths/rows.js";
import type { Absent } from "../results.js";
import { type Moving, movingOf } from "../whole-car/linearise.js";
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
  return {
    mass,
    at(x, v, road) {
      const under = onRoad(standing, x, v, road, numbers.tyreDamping);
      if (under === undefined) return undefined;
      const balance = balanceAt(under, solution.load, x, leftOver);
      if (balance.kind !== "balance") return undefined;
      const force = balance.residual.slice(0, FREEDOMS);
      const dampers = movingOf(standing, balance).flatMap((moving) => damped(moving, v, force));
      return { balance, dampers, acceleration: applied(inverse, force) };
    },
  };
}

/** Takes its force from the wheels that it follows. */
function damped({ element, from, d }: Moving, v: readonly number[], into: number[]): readonly DamperState[] {
  const { law } = element;
  if (law?.kind !== "damper") return [];
  const speed = d.reduce((sum, slope, i) => sum + slope * v[BODY + from + i]!, 0);
  const force = law.force(speed);
  for (const [i, slope] of d.entries()) into[BODY + from + i]! -= force * slope;
  return [{ element, speed, force }];
}

/** Rise of a point of the body, or of one that moves on it by `d` for a travel, with the seven freedoms. */
function riseRow(attitude: Attitude, at: Vec3, wheel?: { readonly index: number; readonly d: Vec3 }): number[] {
  const r = attitude.turned(at);
  const own = wheel === undefined ? 0 : attitude.turned(wheel.d)[2];
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
  addRow(mass, riseRow(balance.attitude, standing.sprung.at), standing.sprung.mass);
  for (const [index, wheel] of standing.wheels.entries()) {
    const { centre } = wheelPoints(balance.wheels[index]!.motion, wheel.side, wheel.place)!;
    addRow(mass, riseRow(balance.attitude, sub(centre.p, standing.origin), { index, d: centre.d }), wheel.unsprung);
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
  x: readonly number[],
  v: readonly number[],
  { heights, speeds }: RoadUnder,
  tyreDamping: readonly number[],
): Standing | undefined {
  const attitude = new Attitude(x[1]!, x[2]!);
  const wheels: Standing["wheels"][number][] = [];
  for (const [index, wheel] of standing.wheels.entries()) {
    const motion = wheel.corner.motion(x[BODY + index]!);
    if ("kind" in motion) return undefined;
    const damping = tyreDamping[index] ?? 0;
    let pressed = 0;
    if (damping !== 0) {
      const { contact } = wheelPoints(motion, wheel.side, wheel.place)!;
      const row = riseRow(attitude, sub(contact.p, standing.origin), { index, d: contact.d });
      pressed = damping * (speeds[index]! - row.reduce((sum, rise, j) => sum + rise * v[j]!, 0));
    }
    wheels.push({
      ...wheel,
      corner: known(wheel.corner, motion),
      height: wheel.height + heights[index]!,
      load: wheel.load + pressed,
    });
  }
  return { ...standing, wheels };
}

/** Not solved a second time at the same travel. */
const known = (corner: Standing["wheels"][number]["corner"], motion: CornerMotion): typeof corner => ({
  basis: corner.basis,
  motion: (travel) => (travel === motion.travel ? motion : corner.motion(travel)),
  reach: (from, to) => corner.reach(from, to),
});
