/**
 * The linear whole car: seven freedoms q = [z, φ, θ, z_FL, z_FR, z_RL, z_RR].
 *
 * z, φ, θ: the sprung centre of gravity's height, roll (left side up) and pitch (nose down) of the body; then the wheels'
 * heights; all from the case's equilibrium, ISO 8855. A point of the body at (x, y) from its centre of gravity rises by
 * z + yφ − xθ, so the travel of wheel i is sᵢ = zᵢ − z − yᵢφ + xᵢθ.
 *
 * Invariant: symmetric wheel matrices give symmetric M, C, K; a rigid shift of car and road together meets no force.
 * Source: the model of any text on ride; compared with R. N. Jazar, Vehicle Dynamics, and G. Rill, Road Vehicle Dynamics (from memory).
 */
import { addCoupling, diagonal, type Rows, zeros } from "../../maths/rows.js";
import type { AxleNumbers, WheelMatrices, WholeCar } from "./car-data.js";
import type { LinearSystem } from "./linear-system.js";

export interface CarDynamics extends LinearSystem {
  /** Travel of each wheel relative to the body over q, 4 × 7. */
  readonly travel: Rows;
  /** Height of the body at the front and rear axle line over q, on the centre plane, 2 × 7. */
  readonly heights: Rows;
  /** Mean road height under each axle over the road's four, 2 × 4. */
  readonly roadHeights: Rows;
  readonly tyres: { readonly rate: readonly number[]; readonly damping: readonly number[] };
}

/** Where z_FL stands in q. */
export const FIRST_WHEEL = 3;
export const FREEDOMS = 7;

const ROAD_HEIGHTS: Rows = [
  [0.5, 0.5, 0, 0],
  [0, 0, 0.5, 0.5],
];

/** M, C, K and the road's part of the seven freedoms. Masses have to be positive; nothing is checked here. */
export function carDynamics(car: WholeCar): CarDynamics {
  const travel = travelRows(car);
  const heights = heightRows(car);
  const wheels = [car.front.left, car.front.right, car.rear.left, car.rear.right];
  const rate = wheels.map((wheel) => wheel.tyreRate);
  const damping = wheels.map((wheel) => wheel.tyreDamping);
  const stiffness = onTravel(car, travel, "stiffness", onWheels(rate));
  stiffness[1]![1]! -= car.rollGravity ?? 0;
  const { mass, rollInertia, pitchInertia } = car.sprung;
  const masses = diagonal([mass, rollInertia, pitchInertia, ...wheels.map((wheel) => wheel.unsprungMass)]);
  return {
    mass: onTravel(car, travel, "inertance", masses),
    damping: onTravel(car, travel, "damping", onWheels(damping)),
    stiffness,
    roadStiffness: fromRoad(rate),
    roadDamping: fromRoad(damping),
    air: car.air && { heights, road: ROAD_HEIGHTS, slopes: car.air.slopes, lag: car.air.lag ?? 0 },
    travel,
    heights,
    roadHeights: ROAD_HEIGHTS,
    tyres: { rate, damping },
  };
}

/** x of each axle and y of each wheel from the sprung centre of gravity. */
function travelRows({ sprung, wheelbase, front, rear }: WholeCar): number[][] {
  const places = [
    [sprung.behindFront, front.track / 2],
    [sprung.behindFront, -front.track / 2],
    [sprung.behindFront - wheelbase, rear.track / 2],
    [sprung.behindFront - wheelbase, -rear.track / 2],
  ] as const;
  return places.map(([x, y], i) => {
    const ownWheel = [0, 1, 2, 3].map((wheel) => (wheel === i ? 1 : 0));
    return [-1, (sprung.left ?? 0) - y, x, ...ownWheel];
  });
}

/** The centre plane is right of a centre of gravity that sits to the left. */
const heightRows = ({ sprung, wheelbase }: WholeCar): number[][] =>
  [sprung.behindFront, sprung.behindFront - wheelbase].map((x) => [1, -(sprung.left ?? 0), -x, 0, 0, 0, 0]);

/** `own` plus both axles' and the car's matrices, from wheel travel to q. */
function onTravel(car: WholeCar, travel: Rows, of: keyof WheelMatrices, own: number[][]): number[][] {
  addCoupling(own, travel.slice(0, 2), car.front[of]);
  addCoupling(own, travel.slice(2, 4), car.rear[of]);
  if (car.cross !== undefined) addCoupling(own, travel, car.cross[of]);
  return own;
}

const onWheels = (values: readonly number[]): number[][] => diagonal([0, 0, 0, ...values]);

/** What a rise of the road under each wheel does: its tyre's rate or damping on that wheel. */
function fromRoad(values: readonly number[]): number[][] {
  const into = zeros(FREEDOMS, values.length);
  for (const [i, value] of values.entries()) into[FIRST_WHEEL + i]![i] = value;
  return into;
}

/** Both wheels of a mirrored axle alike: `own` N/m at each wheel, `between` per difference of the two travels. */
export function mirroredMatrix(own: number, between = 0): Rows {
  return [
    [own + between, -between],
    [-between, own + between],
  ];
}

/** A mirrored axle from single figures. */
export function mirroredAxle(
  track: number,
  wheel: AxleNumbers["left"],
  matrices: Partial<WheelMatrices> & Pick<WheelMatrices, "stiffness">,
): AxleNumbers {
  const none = mirroredMatrix(0);
  return { track, left: wheel, right: wheel, damping: none, inertance: none, ...matrices };
}
