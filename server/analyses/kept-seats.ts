/**
 * Where a car comes to rest when nobody sets it anew: seats and rods stay as they were set for another car (what a
 * set-up derives from), and ride heights, wheel loads and wheel angles follow.
 *
 * Unknown are the body's drop h, pitch θ and roll φ, the travels z and loads N of the four wheels, FL FR RL RR. With x
 * forward from the rear axle line, y left, and ' against the wheel's own travel:
 *
 *   Σ N = m g,  Σ N x = m g s L,  Σ N y = m g y_c                       (s: front share, L: wheelbase)
 *   N c' − m_u g − Σ F ∂s/∂z = 0                                       (c: rise of the contact point)
 *   h + x θ − y φ − z − (N − N₀)/k_t = 0                               (N₀: load under which the wheels are drawn)
 *
 * Without a tyre rate the tyre is rigid. Small angles of the body (a degree costs 0.02 % of a drop). Wheel travel stands
 * for the contact point's in the last line, as for ride heights everywhere.
 *
 * Invariant: with nothing changed the car stands as it was trimmed.
 */
import { eachWheel, type Wheels } from "../elements/car-connection.js";
import type { Deflection } from "../elements/deflection.js";
import type { AxleMechanism, CarElement, KeptSeats } from "../elements/mechanism.js";
import { dampedNewton, type Evaluation } from "../maths/damped-newton.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent, isAbsent } from "./absent.js";
import { carPositions } from "./car-positions.js";
import { staticForce, staticRate, stiffnessMissing } from "./carrying.js";
import { GRAVITY } from "./loads.js";
import type { Absent } from "./results.js";
import { matrixOf, NO_MATRIX, plusMatrix, type WheelMatrix } from "./wheel-matrix.js";

export interface KeptQuestion {
  /** With the rods as they were set. */
  readonly front: AxleMechanism;
  readonly rear: AxleMechanism;
  readonly joining: readonly CarElement[];
  /** By path, as they were set, in the element's own deflection. */
  readonly seats: ReadonlyMap<string, number>;
  /** Loads of the tyres and travels of the wheels as the other car rests, N and m. */
  readonly before: { readonly loads: Wheels; readonly travels: Wheels };
  /** kg; share on the front wheels; m left of y = 0. */
  readonly mass: number;
  readonly frontShare: number;
  readonly left: number;
  readonly wheelbase: number;
  readonly tracks: { readonly front: number; readonly rear: number };
  /** Ride heights that the linkages are drawn at, m. */
  readonly drawn: { readonly front: number | undefined; readonly rear: number | undefined };
}

export interface KeptCar {
  readonly front: KeptSeats;
  readonly rear: KeptSeats;
}

const BODY = 3;
const WHEELS = 4;
const TOLERANCE = 1e-10;

/** What all elements do at four travels: their pull at each wheel, N, and its change, N/m. */
interface Pull {
  readonly forces: Wheels;
  readonly stiffness: WheelMatrix;
  readonly motion: { readonly front: AxleMotion; readonly rear: AxleMotion };
}

function pullOf(question: KeptQuestion): (travels: Wheels) => Pull | undefined {
  const positions = carPositions(question);
  return (travels) => {
    const motion = positions.at(travels);
    if (isAbsent(motion)) return undefined;
    let stiffness = NO_MATRIX;
    let forces: Wheels = [0, 0, 0, 0];
    const add = (d: Parameters<typeof matrixOf>[0], force: number, rate: number): void => {
      stiffness = plusMatrix(stiffness, matrixOf(d, rate, force));
      forces = eachWheel((wheel) => forces[wheel]! + force * d.d[wheel]!);
    };
    for (const [axle, from] of [
      ["front", 0],
      ["rear", 2],
    ] as const) {
      for (const element of question[axle].elements) {
        const d = element.connection?.deflection(motion[axle]);
        if (d === undefined || element.law === undefined) continue;
        if ("kind" in d) return undefined;
        const s = d.s + (question.seats.get(element.path) ?? 0);
        add(onCar(d, from), staticForce(element, s), staticRate(element, s));
      }
    }
    for (const element of question.joining) {
      const d = element.connection?.deflection(motion);
      if (d === undefined || element.law === undefined) continue;
      if ("kind" in d) return undefined;
      add(d, staticForce(element, d.s), staticRate(element, d.s));
    }
    return { forces, stiffness, motion };
  };
}

/** An axle's deflection over the four wheels of the car. */
function onCar(d: Deflection, from: 0 | 2): Parameters<typeof matrixOf>[0] {
  const row = (left: number, right: number): Wheels => (from === 0 ? [left, right, 0, 0] : [0, 0, left, right]);
  const none: Wheels = [0, 0, 0, 0];
  const [one, other] = [row(d.dLL, d.dLR), row(d.dLR, d.dRR)];
  return { s: d.s, d: row(d.dL, d.dR), dd: from === 0 ? [one, other, none, none] : [none, none, one, other] };
}

const wheelsOf = ({ front, rear }: KeptQuestion) =>
  [front.wheels.left, front.wheels.right, rear.wheels.left, rear.wheels.right] as const;

function missingOf(question: KeptQuestion): string | undefined {
  const { front, rear, joining } = question;
  const parts = stiffnessMissing(front.elements) ?? stiffnessMissing(rear.elements) ?? stiffnessMissing(joining);
  if (parts !== undefined) return parts;
  const bare = wheelsOf(question).findIndex(({ unsprungMass }) => unsprungMass === undefined);
  return bare < 0 ? undefined : `the ${bare < 2 ? "front" : "rear"} wheels have no unsprung-mass`;
}

/** Values and derivatives of all balances at x = [h, θ, φ, z × 4, N × 4]. */
function balances(question: KeptQuestion, pull: (travels: Wheels) => Pull | undefined) {
  const { mass, frontShare, left, wheelbase, tracks, before } = question;
  const weight = mass * GRAVITY;
  const ahead: Wheels = [wheelbase, wheelbase, 0, 0];
  const beside: Wheels = [tracks.front / 2, -tracks.front / 2, tracks.rear / 2, -tracks.rear / 2];
  const wheels = wheelsOf(question);
  return (x: readonly number[]): Evaluation | undefined => {
    const travels = eachWheel((i) => x[BODY + i]!);
    const loads = eachWheel((i) => x[BODY + WHEELS + i]!);
    const found = pull(travels);
    if (found === undefined) return undefined;
    const { forces, stiffness, motion } = found;
    const corners = [motion.front.left, motion.front.right, motion.rear.left, motion.rear.right];
    const arms = [[1, 1, 1, 1], ahead, beside] as const;
    const asked = [weight, weight * frontShare * wheelbase, weight * left];
    const residual: number[] = [];
    const jacobian: number[][] = [];
    for (const [m, arm] of arms.entries()) {
      residual.push(loads.reduce((sum, load, i) => sum + load * arm[i]!, -asked[m]!));
      jacobian.push([0, 0, 0, 0, 0, 0, 0, ...arm]);
    }
    for (let i = 0; i < WHEELS; i++) {
      const rise = corners[i]!.wheel?.contact;
      const [up, bend] = [rise?.d[2] ?? 1, rise?.dd[2] ?? 0];
      residual.push(loads[i]! * up - wheels[i]!.unsprungMass! * GRAVITY - forces[i]!);
      const byTravel = eachWheel((j) => (i === j ? loads[i]! * bend : 0) - stiffness[i]![j]!);
      jacobian.push([0, 0, 0, ...byTravel, ...eachWheel((j) => (i === j ? up : 0))]);
    }
    for (let i = 0; i < WHEELS; i++) {
      const { tyreRate } = wheels[i]!;
      const give = tyreRate === undefined ? 0 : 1 / tyreRate;
      const drop = x[0]! + ahead[i]! * x[1]! - beside[i]! * x[2]!;
      residual.push(drop - travels[i]! - give * (loads[i]! - before.loads[i]!));
      const own = (value: number): Wheels => eachWheel((j) => (i === j ? value : 0));
      jacobian.push([1, ahead[i]!, -beside[i]!, ...own(-1), ...own(-give)]);
    }
    return { residual, jacobian };
  };
}

const NAMES = ["front left", "front right", "rear left", "rear right"] as const;

/** The car on the seats that it was left with, or why it does not come to rest there. */
export function standOnKeptSeats(question: KeptQuestion): KeptCar | Absent {
  const missing = missingOf(question);
  if (missing !== undefined) return absent(missing);
  const { before, wheelbase, mass, tracks } = question;
  const corner = (mass * GRAVITY) / WHEELS;
  const mean = (axle: 0 | 2): number => (before.travels[axle] + before.travels[axle + 1]!) / 2;
  const solved = dampedNewton({
    evaluate: balances(question, pullOf(question)),
    start: [mean(2), (mean(0) - mean(2)) / wheelbase, 0, ...before.travels, ...before.loads],
    scale: [
      corner,
      corner * wheelbase,
      corner * tracks.front,
      corner,
      corner,
      corner,
      corner,
      ...eachWheel(() => 1e-3),
    ],
    tolerance: TOLERANCE,
  });
  if (solved.kind !== "solved") return absent("with its seats kept the car does not come to rest within its travel");
  const loads = solved.x.slice(BODY + WHEELS);
  const lifted = loads.findIndex((load) => load < 0);
  if (lifted >= 0) return absent(`with its seats kept the car would lift its ${NAMES[lifted]} wheel`);
  return keptCar(question, solved.x);
}

function keptCar({ seats, drawn, wheelbase, front, rear }: KeptQuestion, x: readonly number[]): KeptCar {
  const [drop, pitch, roll] = [x[0]!, x[1]!, x[2]!];
  const axle = ({ elements }: AxleMechanism, from: 0 | 2, height: number | undefined, down: number): KeptSeats => ({
    seats: new Map([...seats].filter(([path]) => elements.some((element) => element.path === path))),
    travels: { left: x[BODY + from]!, right: x[BODY + from + 1]! },
    loads: { left: x[BODY + WHEELS + from]!, right: x[BODY + WHEELS + from + 1]! },
    rideHeight: height === undefined ? undefined : height - down,
    roll,
  });
  return {
    front: axle(front, 0, drawn.front, drop + wheelbase * pitch),
    rear: axle(rear, 2, drawn.rear, drop),
  };
}
