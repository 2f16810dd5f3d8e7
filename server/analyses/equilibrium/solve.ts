/**
 * Finds the equilibrium of a car in a case: Newton from the flat patch, and where that does not get there or ends beyond
 * a limit, step by step along the way from rest to the case, at the hard places damped.
 *
 * Invariant: what is returned as solved has every force balanced to 1e-6 N, stands above the road, and would come back
 * after a push: the determinant of the stiffness has kept its sign since rest.
 */
import { areasAt, frozen } from "../../elements/air.js";
import { AT_REST, type LoadCase } from "../../elements/loaded-car.js";
import { dampedNewton } from "../../maths/damped-newton.js";
import { nothing } from "../../maths/rows.js";
import { absent, isAbsent } from "../absent.js";
import type { Absent } from "../results.js";
import { type Balance, balanceOf, stiffnessSign, unknownsOf } from "./balance.js";
import { longitudinalShares } from "./horizontal-forces.js";
import { type Load, loadOf } from "./load.js";
import type { NotConverged, Outcome, Solved, WheelName, WhyNot } from "./outcome.js";
import { BODY, FREEDOMS, type NoPosition, type Position, positionAt } from "./position.js";
import { AXLES, SIDES, type Standing } from "./standing.js";

/** N; the design asks for 1e-6. */
const TOLERANCE = 1e-7;
const ACCEPTED = 1e-6;
const ITERATIONS = 30;
/** On the way to a case, from the position before: a few suffice, or none will. */
const NEAR_ITERATIONS = 8;
/** Steps of the way to a case that is not reached at once. */
const FIRST_STEP = 1 / 8;
const LEAST_STEP = 1 / 256;

/** The car at rest with what its springs carry there, ready for any case. */
export interface Ready {
  readonly standing: Standing;
  readonly leftOver: readonly number[];
  /** Where every search begins. */
  readonly rest: Position;
  /** Sign of the stiffness' determinant at rest. */
  readonly sign: number;
}

/** Share of a tyre's load at rest that its trim may leave over. */
const MOST_LEFT = 0.02;

export function readyCar(standing: Standing): Ready | Absent {
  const load = loadOf(standing, AT_REST, 0);
  const x = startOf(standing, load);
  const rest = positionAt(standing, x);
  if (rest.kind !== "position") return absent("the car does not stand at its ride height");
  const balance = balanceOf(standing, load, x, rest, NOTHING_LEFT);
  const leftOver = balance.residual.slice(BODY, FREEDOMS).map((force) => -force);
  const far = leftOver.findIndex((force, i) => Math.abs(force) > MOST_LEFT * standing.wheels[i]!.load);
  if (far >= 0)
    return absent(
      `the springs do not carry the car at its ride height: the ${wordsOf(far)} wheel is ${Math.round(Math.abs(leftOver[far]!))} N off`,
    );
  return { standing, leftOver, rest, sign: stiffnessSign(balance) };
}

const NOTHING_LEFT = [0, 0, 0, 0];

const nameOf = (wheel: number): WheelName => ({ axle: AXLES[wheel < 2 ? 0 : 1], side: SIDES[wheel % 2]! });
const wordsOf = (wheel: number): string => `${nameOf(wheel).axle} ${nameOf(wheel).side}`;

function startOf({ rest }: Standing, load: Load): number[] {
  return [...rest, ...nothing(unknownsOf(load) - FREEDOMS)];
}

interface Search {
  readonly ready: Ready;
  /** The last position that had no balance. */
  blocked: NoPosition | undefined;
  iterations: number;
}

/** A position in all its numbers, and where everything is there. */
interface Start {
  readonly x: readonly number[];
  readonly position: Position;
}

type Found =
  | { readonly kind: "solved"; readonly solved: Solved }
  | { readonly kind: "missed"; readonly x: readonly number[]; readonly residual: number; readonly fault: Fault };

type Fault = "missed" | "unstable" | { readonly aground: 0 | 1 } | { readonly airborne: 0 | 1 };

/** Newton's own steps, as long as they help; or with the fallback, that goes on where they do not. */
interface Manner {
  readonly plain: boolean;
  readonly iterations: number;
}

const STRAIGHT: Manner = { plain: true, iterations: ITERATIONS };
const NEAR: Manner = { plain: true, iterations: NEAR_ITERATIONS };
const HELD: Manner = { plain: false, iterations: 12 };

function newton(search: Search, load: Load, { x: start, position }: Start, how: Manner): Found {
  const { standing, leftOver } = search.ready;
  const [roll, pitch] = standing.arms;
  const scale = start.map((_, i) => (i === 1 ? roll : i === 2 ? pitch : 1));
  const balances = new Map<readonly number[], Balance>();
  const result = dampedNewton({
    evaluate(x) {
      const there = x === start ? position : positionAt(standing, x);
      if (there.kind === "position") {
        const balance = balanceOf(standing, load, x, there, leftOver);
        balances.set(x, balance);
        return balance;
      }
      search.blocked = there;
      return undefined;
    },
    start,
    scale,
    tolerance: TOLERANCE,
    ...how,
  });
  search.iterations += result.iterations;
  const { x, residual } = result;
  if (residual > ACCEPTED) return { kind: "missed", x, residual, fault: "missed" };
  const balance = balances.get(x);
  if (balance === undefined) return { kind: "missed", x, residual, fault: "missed" };
  const fault = faultOf(search.ready, balance);
  return fault === undefined
    ? { kind: "solved", solved: { kind: "solved", x, balance, load, iterations: result.iterations, residual } }
    : { kind: "missed", x, residual, fault };
}

function faultOf({ sign }: Ready, balance: Balance): Fault | undefined {
  const low = balance.heights.findIndex((height) => height <= 0);
  if (low >= 0) return { aground: low === 0 ? 0 : 1 };
  const [fl, fr, rl, rr] = balance.wheels.map(({ load }) => load > 0);
  if (!(fl || fr)) return { airborne: 0 };
  if (!(rl || rr)) return { airborne: 1 };
  return stiffnessSign(balance) === sign ? undefined : "unstable";
}

/** Forces that the case needs and the car does not have. */
function unsaid(standing: Standing, { heights }: Position, { body, pressure, air }: Load): Absent | undefined {
  const total = -standing.mass * body[0] + pressure * areasAt(air, ...heights).drag.area;
  if (total === 0) return undefined;
  if (longitudinalShares(standing, total < 0) !== undefined) return undefined;
  return absent(
    total < 0
      ? "the car has no brakes, and the case has braking"
      : "the car has no drive, and the case takes some to hold its speed",
  );
}

/** The car with its front wheels steered; the same car where they are not. */
function steered(ready: Ready, { steer, turns }: LoadCase): Ready | Absent {
  if (steer === 0 && turns === 0) return ready;
  const { standing } = ready;
  const { rack, axles } = standing.car;
  if (turns !== 0 && rack === undefined)
    return absent("the case turns the steering wheel, and the front axle has no rack");
  const corners = standing.steered(steer + turns * (rack ?? 0));
  if (typeof corners === "string") return absent(corners);
  if (axles.front === undefined) return absent("the car has no front axle");
  const wheels = standing.wheels.map((wheel) => (wheel.axle === 0 ? { ...wheel, corner: corners[wheel.side] } : wheel));
  const turned = { ...standing, wheels };
  const rest = positionAt(turned, standing.rest);
  return rest.kind === "position"
    ? { ...ready, standing: turned, rest }
    : absent("the front wheels cannot be steered that far at ride height");
}

export function equilibrium(straightAhead: Ready, at: LoadCase): Outcome {
  const ready = steered(straightAhead, at);
  if (isAbsent(ready)) return ready;
  const { standing, rest } = ready;
  const load = loadOf(standing, at);
  const missing = unsaid(standing, rest, load);
  if (missing !== undefined) return missing;
  const search: Search = { ready, blocked: undefined, iterations: 0 };
  const straight = newton(search, load, { x: startOf(standing, load), position: rest }, STRAIGHT);
  if (straight.kind === "solved") return straight.solved;
  const walked = walk(search, at);
  return walked.kind === "solved" ? walked.solved : notConverged(search, at, walked);
}

interface Stopped {
  readonly kind: "stopped";
  readonly reached: number;
  readonly from: Start;
  readonly missed: Extract<Found, { kind: "missed" }>;
}

/** From rest to the case in steps that are halved where one does not get there; the least of them with the fallback. */
function walk(search: Search, at: LoadCase): Extract<Found, { kind: "solved" }> | Stopped {
  const { standing, rest } = search.ready;
  let from: Start = { x: startOf(standing, loadOf(standing, at)), position: rest };
  let reached = 0;
  let step = FIRST_STEP;
  for (;;) {
    const share = Math.min(1, reached + step);
    search.blocked = undefined;
    const found = newton(search, loadOf(standing, at, share), from, step === LEAST_STEP ? HELD : NEAR);
    if (found.kind === "missed") {
      if (step === LEAST_STEP) return { kind: "stopped", reached, from, missed: found };
      step = Math.max(LEAST_STEP, step / 2);
      continue;
    }
    if (share === 1) return found;
    const { x, balance } = found.solved;
    [from, reached, step] = [{ x, position: balance.position }, share, step * 1.5];
  }
}

function notConverged(search: Search, at: LoadCase, stopped: Stopped): NotConverged {
  const reason = reasonOf(search, at, stopped);
  return {
    kind: "not-converged",
    reason,
    iterations: search.iterations,
    residual: stopped.missed.residual,
    element: reason.kind === "stroke" ? reason.element : undefined,
    reached: stopped.reached,
  };
}

function reasonOf(search: Search, at: LoadCase, { reached, from, missed }: Stopped): WhyNot {
  const { fault } = missed;
  if (typeof fault === "object" && "aground" in fault) return { kind: "aground", axle: AXLES[fault.aground] };
  if (holdsFrozen(search, at, reached, from)) return { kind: "aero-stiffness" };
  if (typeof fault === "object") return { kind: "airborne", axle: AXLES[fault.airborne] };
  const lifted = inTheAir(search.ready, at, reached, from);
  if (lifted !== undefined) return lifted;
  const { blocked } = search;
  if (blocked?.kind === "no-deflection") return { kind: "stroke", element: blocked.path };
  if (blocked?.kind === "beyond-reach") {
    const { link, limit } = blocked.why;
    return { kind: "reach", wheel: nameOf(blocked.wheel), link, travel: limit };
  }
  return fault === "unstable" ? { kind: "unheld" } : { kind: "not-found" };
}

/** Wheels that bear this share of their load at rest are about to leave the road. */
const NEXT_TO_NOTHING = 0.05;

const AIRBORNE: readonly (readonly [wheels: readonly [number, number], why: WhyNot])[] = [
  [[0, 1], { kind: "airborne", axle: "front" }],
  [[2, 3], { kind: "airborne", axle: "rear" }],
  [[0, 2], { kind: "tips-over", side: "left" }],
  [[1, 3], { kind: "tips-over", side: "right" }],
];

/** The axle or side that bears next to nothing at the last position that could be held. */
function inTheAir({ standing, leftOver }: Ready, at: LoadCase, reached: number, { x, position }: Start) {
  const found = balanceOf(standing, loadOf(standing, at, reached), x, position, leftOver).wheels;
  const share = ([one, other]: readonly [number, number]): number =>
    (found[one]!.load + found[other]!.load) / (standing.wheels[one]!.load + standing.wheels[other]!.load);
  return AIRBORNE.find(([wheels]) => share(wheels) < NEXT_TO_NOTHING)?.[1];
}

/** Whether the next step would hold if the downforce areas stayed as they are. */
function holdsFrozen(search: Search, at: LoadCase, reached: number, from: Start): boolean {
  const load = loadOf(search.ready.standing, at, Math.min(1, reached + 2 * LEAST_STEP));
  if (load.air === undefined) return false;
  const air = frozen(load.air, ...from.position.heights);
  return newton({ ...search, blocked: undefined }, { ...load, air }, from, HELD).kind === "solved";
}
