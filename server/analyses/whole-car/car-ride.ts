/**
 * How a car moves about its load cases: modes, and what a road does to it, each worked out when it is asked for.
 *
 * Invariant: nothing is assembled, solved or linearised for a car that nobody asks about.
 */
import { AT_REST, type CarUnderLoad, type LoadCase } from "../../elements/loaded-car.js";
import { absent, isAbsent } from "../absent.js";
import type { NotConverged } from "../equilibrium/outcome.js";
import { type CaseSolver, caseSolver } from "../equilibrium/case-solver.js";
import { equilibrium, type Ready } from "../equilibrium/solve.js";
import type { Solved } from "../equilibrium/outcome.js";
import { whyNotWords } from "../equilibrium/words.js";
import type { Absent } from "../results.js";
import type { WholeCar } from "./car-data.js";
import { carDynamics } from "./dynamics.js";
import { type Onset, onsetOfInstability } from "./instability.js";
import { linearise, type RideNumbers } from "./linearise.js";
import { type FrequencyResponse, frequencyResponse, type ResponseAsked } from "./frequency-response.js";
import { type Modes, modesOf, type Stability } from "./modes.js";
import { type PureModes, pureModes } from "./pure-modes.js";
import { isRoadClass, isSides, roughnessOf } from "./road-profile.js";
import { onRoad } from "./on-road.js";
import { whyUnsettled } from "./settling.js";
import type { RoadCase, RoadResponse } from "./road.js";

export interface RideAt {
  readonly kind: "ride";
  /** Undefined for the car at rest. */
  readonly name: string | undefined;
  readonly car: WholeCar;
  /** m/s */
  readonly speed: number;
  /** Of the tyres, N. */
  readonly loads: readonly number[];
  readonly modes: Modes;
  readonly pure: PureModes;
}

interface LinearCar extends Pick<RideAt, "car" | "speed" | "loads"> {
  readonly solution: Solved;
}

type MovingCar = LinearCar & Pick<RideAt, "modes">;

export interface RoadAsked {
  /** ISO 8608, `A` to `H`. */
  readonly class: string;
  /** m/s */
  readonly speed: number;
  readonly sides: string;
}

export interface CarRide {
  /** The road that is written for the car. */
  readonly written: RoadAsked | undefined;
  /** Undefined at rest; a name that the car has no case of is absent. */
  at(name: string | undefined): RideAt | Absent;
  /** Its pure motions alone, for which no eigenvalues are worked out. */
  pure(name: string | undefined): PureModes | Absent;
  /** Whether it settles about a case; all that a check needs to know on a keystroke. */
  stability(name: string | undefined): Stability | Absent;
  /** On the straight at the road's speed; in a case with its loads, springs and air. */
  road(name: string | undefined, road: RoadAsked): RoadResponse | Absent;
  /** Gains and phases about a case, or at rest; `passing` at the case's own speed where none is asked for. */
  response(name: string | undefined, asked: PartialBy<ResponseAsked, "speed">): FrequencyResponse | Absent;
  /** On a straight and level road, from rest to a speed, m/s. */
  onset(to: number): Onset | Absent;
  /** The speed, m/s, at which downforce outgrows the springs on a straight road; undefined where it does not up to there. */
  divergence(to: number): number | undefined;
}

type PartialBy<T, K extends keyof T> = Omit<T, K> & { readonly [P in K]?: T[P] | undefined };

const NO_RESPONSE = {
  unstable: "the car does not settle there",
  "no-modes": "masses or inertias are missing",
  unbounded: "the speed or the roughness is not above nought",
} as const;

interface RideQuestion extends RideNumbers {
  readonly road?: RoadAsked | undefined;
}

/** @param solver of the same car, where somebody else asks for its cases too */
export function carRide(
  underLoad: () => CarUnderLoad,
  cases: readonly LoadCase[],
  numbers: RideQuestion,
  solver: CaseSolver = caseSolver(underLoad),
): CarRide {
  const ready = (): Ready | Absent => solver.ready();
  const linear = (asked: LoadCase): LinearCar | Absent => {
    const car = ready();
    if (isAbsent(car)) return car;
    const outcome = solver.solve(asked);
    if (outcome.kind === "absent") return outcome;
    if (outcome.kind === "not-converged") return absent(`the car has no equilibrium: ${whyNotWords(outcome.reason)}`);
    const found = linearise(car.standing, outcome, numbers);
    if (isAbsent(found)) return found;
    const loads = outcome.balance.wheels.map(({ load }) => load);
    return { car: found, solution: outcome, speed: asked.speed, loads };
  };
  const linearAt = remembered((name): LinearCar | Absent => {
    const asked = name === undefined ? AT_REST : cases.find((one) => one.name === name);
    return asked === undefined ? absent(`the car has no case ${name ?? ""}`) : linear(asked);
  });
  const movingAt = remembered((name): MovingCar | Absent => {
    const found = linearAt(name);
    if (isAbsent(found)) return found;
    const modes = modesOf(found.car);
    return modes.kind === "no-modes" ? absent("a mass or an inertia is not above nought") : { ...found, modes };
  });
  const pure = remembered((name): PureModes | Absent => {
    const found = linearAt(name);
    return isAbsent(found) ? found : pureModes(found.car);
  });
  const at = remembered((name): RideAt | Absent => {
    const found = movingAt(name);
    if (isAbsent(found)) return found;
    const motions = pure(name);
    if (isAbsent(motions)) return motions;
    const { car, speed, loads, modes } = found;
    return { kind: "ride", name, car, speed, loads, modes, pure: motions };
  });
  return {
    written: numbers.road,
    at,
    pure,
    stability(name) {
      const car = linearAt(name);
      if (isAbsent(car)) return car;
      // What is shown to settle needs no modes; only what does not is asked which of them it is.
      if (whyUnsettled([carDynamics(car.car)]) === undefined) return { kind: "stable" };
      const found = movingAt(name);
      return isAbsent(found) ? found : found.modes.stability;
    },
    road(name, asked) {
      const road = roadCase(asked);
      if (isAbsent(road)) return road;
      const ride = name === undefined ? linear({ ...AT_REST, speed: road.speed }) : linearAt(name);
      if (isAbsent(ride)) return ride;
      const rest = ready();
      if (isAbsent(rest)) return rest;
      const found = onRoad(rest.standing, ride.solution, ride.car, { ...road, staticLoads: ride.loads });
      if (isAbsent(found)) return found;
      return found.kind === "road-response" ? found : absent(NO_RESPONSE[found.reason]);
    },
    response(name, { speed, ...asked }) {
      // At rest, a speed that is asked for means the car on a straight at that speed, as `road` takes it.
      const ride = name === undefined ? linear({ ...AT_REST, speed: speed ?? 0 }) : linearAt(name);
      return isAbsent(ride) ? ride : frequencyResponse(ride.car, { ...asked, speed: speed ?? ride.speed });
    },
    divergence(to) {
      const car = ready();
      return isAbsent(car) ? undefined : divergenceOf(car, to);
    },
    onset(to) {
      const rest = at(undefined);
      if (isAbsent(rest)) return rest;
      return onsetOfInstability(
        (speed) => {
          const ride = linear({ ...AT_REST, speed });
          return isAbsent(ride) ? undefined : ride.car;
        },
        { from: 0, to, steps: STEPS, width: WIDTH },
      );
    },
  };
}

/** Each name once. */
function remembered<T>(find: (name: string | undefined) => T): (name: string | undefined) => T {
  const known = new Map<string | undefined, T>();
  return (name) => {
    if (known.has(name)) return known.get(name)!;
    const found = find(name);
    known.set(name, found);
    return found;
  };
}

function roadCase({ class: letter, speed, sides }: RoadAsked): Omit<RoadCase, "staticLoads"> | Absent {
  if (!isRoadClass(letter)) return absent(`${letter} is no class of ISO 8608`);
  if (!isSides(sides)) return absent(`${sides} does not say what left and right have in common`);
  return { roughness: roughnessOf(letter), speed, sides };
}

/** Of the first look, and how closely an onset is wanted, m/s. */
const STEPS = 12;
const WIDTH = 0.05;

/** Looked at where it would be worst, and closed in on only if there is no equilibrium; where that begins, the reason is plain. */
function divergenceOf(car: Ready, to: number): number | undefined {
  const failure = (speed: number): NotConverged | undefined => {
    const outcome = equilibrium(car, { ...AT_REST, speed });
    return outcome.kind === "not-converged" ? outcome : undefined;
  };
  let [calm, lost] = [0, to];
  let why = failure(to);
  while (why !== undefined && lost - calm > WIDTH) {
    const middle = (calm + lost) / 2;
    const found = failure(middle);
    if (found === undefined) calm = middle;
    else [lost, why] = [middle, found];
  }
  return why?.reason.kind === "aero-stiffness" ? lost : undefined;
}
