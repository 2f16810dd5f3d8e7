/**
 * A pass over a kerb in the time domain, from a load case's equilibrium: peak loads, travel, stops, time off the ground.
 *
 * The front wheels meet the kerb at t = 0, the rear ones after the wheelbase over the speed. It ends `after` the last wheel
 * has left the kerb. The road's heights are those under the contact points; the car keeps its speed and horizontal forces.
 *
 * Invariant: every figure is of a step that the integrator has accepted; steps are short enough (`LONGEST`) that what a
 * peak of 30 Hz misses between two of them is below half a percent of its swing.
 */
import { type Arrival, dormandPrince } from "../../maths/dormand-prince.js";
import { nothing } from "../../maths/rows.js";
import { absent, isAbsent } from "../absent.js";
import { FREEDOMS } from "../equilibrium/position.js";
import type { Solved } from "../equilibrium/outcome.js";
import type { Ready } from "../equilibrium/solve.js";
import type { Absent } from "../results.js";
import type { RideNumbers } from "../whole-car/linearise.js";
import { type Bump, profileOf } from "./bump.js";
import type { CarrierBalance, WheelBalance } from "../equilibrium/balance.js";
import { type CarState, movingCar, type RoadUnder } from "./moving-car.js";

export interface Kerb extends Bump {
  /** m/s */
  readonly speed: number;
  /** Which wheels go over it. */
  readonly wheels: "left" | "right" | "both";
  readonly axle: "front" | "rear" | "both";
  /** How long to look on once the last wheel has left it, s. */
  readonly after: number;
}

export interface Moment {
  readonly t: number;
  readonly x: readonly number[];
  readonly v: readonly number[];
  readonly road: RoadUnder;
  readonly state: MomentState;
}

/** What is kept of a moment's state: a pass has a thousand of them, and what can be worked out from x again fills megabytes. */
export interface MomentState extends Pick<CarState, "dampers" | "acceleration"> {
  readonly balance: Pick<CarState["balance"], "heights" | "attitude"> & {
    readonly wheels: readonly Omit<WheelBalance, "motion">[];
    readonly carriers: readonly Pick<CarrierBalance, "carrier" | "deflection" | "force">[];
  };
}

/** A moment with all that there is to know of it. */
interface Raw extends Omit<Moment, "state"> {
  readonly state: CarState;
}

function kept({ balance, dampers, acceleration }: CarState): MomentState {
  const { heights, attitude } = balance;
  const wheels = balance.wheels.map(({ load, lateral, longitudinal }) => ({ load, lateral, longitudinal }));
  const carriers = balance.carriers.map(({ carrier, deflection, force }) => ({ carrier, deflection, force }));
  return { balance: { heights, attitude, wheels, carriers }, dampers, acceleration };
}

export interface Pass {
  readonly kind: "solved";
  readonly moments: readonly Moment[];
  readonly steps: number;
  readonly rejected: number;
  /** Over the seven freedoms. */
  readonly mass: readonly (readonly number[])[];
}

export interface NotPassed {
  readonly kind: "not-converged";
  readonly why: Extract<Arrival, { kind: "stopped" }>["why"];
  /** s */
  readonly at: number;
  /** What was reached until then. */
  readonly moments: readonly Moment[];
}

const LONGEST = 1e-3;
const MOST_STEPS = 60_000;
const LONGEST_TIME = 20;

export interface Accuracy {
  readonly longest?: number;
  readonly relative?: number;
}

const inAxle = (kerb: Kerb, wheel: number): boolean =>
  (kerb.axle === "both" || (kerb.axle === "front") === wheel < 2) &&
  (kerb.wheels === "both" || (kerb.wheels === "left") === (wheel % 2 === 0));

/** The road under each wheel at a time, and when it has a kink. */
function roadOf(kerb: Kerb, wheelbase: number) {
  const profile = profileOf(kerb);
  const meets = [0, 0, 1, 1].map((axle, wheel) => (inAxle(kerb, wheel) ? (axle * wheelbase) / kerb.speed : undefined));
  const lead = kerb.contact / 2 / kerb.speed;
  const kinks = meets.flatMap((t) => (t === undefined ? [] : profile.kinks.map((x) => t + lead + x / kerb.speed)));
  return {
    kinks: [...new Set(kinks)].sort((a, b) => a - b),
    at(t: number): RoadUnder {
      const under = meets.map((from) =>
        from === undefined ? { height: 0, slope: 0 } : profile.at((t - lead - from) * kerb.speed),
      );
      return {
        heights: under.map(({ height }) => height),
        speeds: under.map(({ slope }) => slope * kerb.speed),
      };
    },
  };
}

export function strike(
  ready: Ready,
  solution: Solved,
  numbers: RideNumbers,
  kerb: Kerb,
  { longest = LONGEST, relative = 1e-6 }: Accuracy = {},
): Pass | NotPassed | Absent {
  if (!(kerb.speed > 0 && kerb.length > 0 && kerb.contact > 0 && Number.isFinite(kerb.height)))
    return absent("a kerb has a length, a contact length and a speed above 0");
  const car = movingCar(ready, solution, numbers);
  if (isAbsent(car)) return car;
  const { lines } = ready.standing;
  const road = roadOf(kerb, lines[0] - lines[1]);
  const end = (road.kinks.at(-1) ?? 0) + kerb.after;
  if (!(end <= LONGEST_TIME)) return absent(`the pass takes longer than ${LONGEST_TIME} s`);
  const moments: Moment[] = [];
  // A step's last stage stands where the step arrives.
  let last: { readonly t: number; readonly y: readonly number[]; readonly moment: Raw } | undefined;
  const rawAt = (t: number, y: readonly number[]): Raw | undefined => {
    if (last?.t === t && last.y === y) return last.moment;
    const [x, v, under] = [y.slice(0, FREEDOMS), y.slice(FREEDOMS), road.at(t)];
    const state = car.at(x, v, under);
    if (state === undefined) return undefined;
    last = { t, y, moment: { t, x, v, road: under, state } };
    return last.moment;
  };
  const arrival = dormandPrince(
    (t, y) => {
      const found = rawAt(t, y);
      return found && [...found.v, ...found.state.acceleration];
    },
    {
      from: 0,
      to: end,
      kinks: road.kinks,
      start: [...solution.x.slice(0, FREEDOMS), ...nothing(FREEDOMS)],
      absolute: [...nothing(FREEDOMS).map(() => relative * 0.01), ...nothing(FREEDOMS).map(() => relative)],
      relative,
      longest,
      mostSteps: MOST_STEPS,
      reached(t, y) {
        const found = rawAt(t, y);
        if (found !== undefined) moments.push({ ...found, state: kept(found.state) });
      },
    },
  );
  if (arrival.kind === "stopped") return { kind: "not-converged", why: arrival.why, at: arrival.at, moments };
  const { steps, rejected } = arrival;
  return { kind: "solved", moments, steps, rejected, mass: car.mass };
}
