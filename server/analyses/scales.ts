/**
 * The reverse of corner weights: what the pads show under the car, and the smallest turns at the corners that bring its
 * cross weight to what is wanted with the ride heights of both axles left as they are.
 *
 * A corner is *raised* by vᵢ where its adjuster alone would put its wheel that much further down from the body. On
 * springs K over the four wheels (bars and what joins the axles included), tyres T, adjusted parts A (force at each
 * wheel for each metre that a corner is raised) and body motions G (heave, pitch, roll) the loads change by
 *
 *   ΔN = (1 − R G (Gᵀ R G)⁻¹ Gᵀ) P A v,   P = T (K + T)⁻¹,   R = T − T (K + T)⁻¹ T
 *
 * (P = 1 and R = K without tyre rates), and the body moves by q = −(Gᵀ R G)⁻¹ Gᵀ P A v. Asked: the change of
 * N_fr + N_rl, no heave, no pitch; of all v the one of least Σ vᵢ². Linear about the position at rest.
 *
 * Source: statics of four springs under a rigid body; least-norm solution. That cross weight is set by turns of opposite
 * sign at the corners is common practice, no published source.
 */
import { eachWheel, type Wheels } from "../elements/car-connection.js";
import { leastNorm } from "../maths/least-norm.js";
import { pushedOnSprings } from "../maths/rigid-on-springs.js";
import { absent } from "./absent.js";
import { GRAVITY } from "./loads.js";
import type { Absent, Figure } from "./results.js";

/** What is turned at one corner. */
export interface CornerAdjuster {
  /** `front.left.side`, or `front.left.push-rod`. */
  readonly path: string;
  /** Force at each wheel for each metre that the corner is raised, N/m, FL FR RL RR. */
  readonly force: Wheels;
  /** Its own movement (m, or rad of a torsional seat) for each metre that the corner is raised. */
  readonly movement: Figure;
  readonly torsional: boolean;
  /** How far one turn raises the corner, m. */
  readonly perTurn: Figure;
}

export interface ScalesQuestion {
  /** What the pads show, kg. */
  readonly readings: Wheels;
  /** Wanted share of front right and rear left. */
  readonly target: number;
  readonly stiffness: readonly (readonly number[])[] | Absent;
  /** N/m; undefined where one is not known: then tyres count as rigid. */
  readonly tyres: Wheels | undefined;
  /** Wheels from wherever, forward and to the left, m. */
  readonly x: Wheels;
  readonly y: Wheels;
  readonly corners: readonly CornerAdjuster[] | Absent;
}

export interface Weighed {
  readonly total: number;
  /** Shares of the total. */
  readonly front: number;
  readonly left: number;
  readonly cross: number;
  /** Where the centre of gravity lies, in the wheels' own x and y, m. */
  readonly centre: readonly [x: number, y: number];
}

export interface CornerTurn {
  readonly path: string;
  /** By how much the corner is raised, m: against the body, with nothing else moving. */
  readonly raise: number;
  /** m or rad. */
  readonly movement: Figure;
  readonly torsional: boolean;
  /** Positive raises the corner. */
  readonly turns: Figure;
  /** What the pad shows afterwards, kg. */
  readonly after: number;
}

export interface ScalesFigures {
  readonly readings: Wheels;
  readonly weighed: Weighed | Absent;
  readonly target: number;
  readonly turns: readonly CornerTurn[] | Absent;
  /** By how much the body rolls with them, rad: its ride heights at the axles stay. */
  readonly roll: Figure;
}

/** kg or N: beyond it sums lose their digits. */
const MOST = 1e12;

/** Shares of four loads, whatever their unit. */
export function weigh(loads: Wheels, x: Wheels, y: Wheels): Weighed | Absent {
  const [fl, fr, rl, rr] = loads;
  const total = fl + fr + rl + rr;
  if (!(total > 0)) return absent("the scales show nothing");
  if (!(total < MOST)) return absent("the scales show more than any car weighs");
  const mean = (of: Wheels): number => loads.reduce((sum, load, i) => sum + load * (of[i] ?? 0), 0) / total;
  return {
    total,
    front: (fl + fr) / total,
    left: (fl + rl) / total,
    cross: (fr + rl) / total,
    centre: [mean(x), mean(y)],
  };
}

const WHEELS = [0, 1, 2, 3] as const;
const FR = 1;
const RL = 2;

function solved(question: ScalesQuestion, { cross, total }: Weighed): Pick<ScalesFigures, "turns" | "roll"> {
  const { stiffness, corners, readings, target } = question;
  const none = (why: Absent) => ({ turns: why, roll: why });
  if ("kind" in stiffness) return none(stiffness);
  if ("kind" in corners) return none(corners);
  const { tyres, x, y } = question;
  const found = pushedOnSprings({
    stiffness,
    series: tyres,
    pushes: WHEELS.map((wheel) => corners.map((corner) => corner.force[wheel] ?? 0)),
    motions: WHEELS.map((wheel) => [1, x[wheel] ?? 0, -(y[wheel] ?? 0)]),
  });
  if (found === undefined) return none(absent("the springs do not hold the body on all four wheels"));
  const { loads, body } = found;
  const [heave = [], pitch = [], rolls = []] = body;
  const across = (loads[FR] ?? []).map((value, i) => value + (loads[RL]?.[i] ?? 0));
  const wanted = (target - cross) * total * GRAVITY;
  const raise = leastNorm([across, heave, pitch], [wanted, 0, 0]);
  if (raise === undefined) return none(absent("no turns at these corners change the cross weight alone"));
  const times = (row: readonly number[]): number => row.reduce((sum, value, i) => sum + value * (raise[i] ?? 0), 0);
  const change = loads.map(times);
  const roll = times(rolls);
  const turns = corners.map((corner, i) =>
    turnOf(corner, raise[i] ?? 0, (readings[i] ?? 0) + (change[i] ?? 0) / GRAVITY),
  );
  return { turns, roll };
}

function turnOf({ path, movement, torsional, perTurn }: CornerAdjuster, raise: number, after: number): CornerTurn {
  const times = (figure: Figure, by: number): Figure => (typeof figure === "number" ? figure * by : figure);
  const turns = typeof perTurn === "number" ? raise / perTurn : perTurn;
  return { path, raise, movement: times(movement, raise), torsional, turns, after };
}

export function scalesFigures(question: ScalesQuestion): ScalesFigures {
  const { readings, target, x, y } = question;
  const weighed = weigh(readings, x, y);
  const turns = "kind" in weighed ? { turns: weighed, roll: weighed } : solved(question, weighed);
  return { readings: eachWheel((wheel) => readings[wheel] ?? 0), weighed, target, ...turns };
}
