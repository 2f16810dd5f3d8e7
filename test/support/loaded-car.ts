/** Cars put together from rates and written-down corners, without text: for closed forms of the equilibrium. */
import { standingCar } from "../../server/analyses/equilibrium/standing.js";
import { solveCase } from "../../server/analyses/equilibrium/car-cases.js";
import type { CaseFigures, CaseResult } from "../../server/analyses/equilibrium/results.js";
import { readyCar } from "../../server/analyses/equilibrium/solve.js";
import { byRatios, constantRatio, type RatioCurve } from "../../server/elements/connections/ratio.js";
import type { Element } from "../../server/elements/element.js";
import { AT_REST, type CarUnderLoad, type LoadCase } from "../../server/elements/loaded-car.js";
import type { AxleName } from "../../server/elements/mechanism.js";
import type { Corner, PointMotion } from "../../server/linkage/corner.js";
import { ratioCorner } from "../../server/linkage/ratio.js";
import { axle, element, spring } from "./mechanisms.js";

export const STILL_AIR = 1.225;

export const caseOf = (parts: Partial<LoadCase>): LoadCase => ({ ...AT_REST, name: "tried", ...parts });

export interface PlainAxle {
  readonly track: number;
  /** x of the axle line, m. */
  readonly x: number;
  /** At each wheel, N/m; and between the wheels, as the roll stiffness of a bar, N·m/rad. */
  readonly wheelRate: number;
  readonly bar?: number;
  readonly tyreRate: number;
  readonly unsprung: number;
  readonly wheelHeight: number;
  readonly rollCentre?: number;
  /** dx/dz of the contact point and of the wheel centre. */
  readonly contactSlope?: number;
  readonly centreSlope?: number;
  readonly rideHeight?: number;
  readonly elements?: readonly Element[];
}

/**
 * The contact point turns about the roll centre, the wheel stays upright on the road when its axle rolls: what the closed
 * forms of load transfer take for granted. Without a roll centre it goes straight up.
 *
 * Left contact in the body's frame after a roll φ about (0, h): y = a cos φ − h sin φ, z = −a sin φ + h (1 − cos φ).
 */
function rollingCorner(plain: PlainAxle): Corner {
  const { track, x, wheelHeight: r, rollCentre: h, contactSlope = 0, centreSlope = 0, rideHeight = 0 } = plain;
  if (h === undefined) return ratioCorner();
  const a = track / 2;
  const still = { value: 0, d: 0, dd: 0 };
  return {
    ...ratioCorner(),
    basis: "hardpoints",
    motion: (travel) => {
      const [sin, cos] = rollAt(travel, a, h - r);
      const centreZ: Curve = [travel, -a * cos + (h - r) * sin, a * sin + (h - r) * cos];
      const contactY: Curve = [a * cos - h * sin, -a * sin - h * cos, h * sin - a * cos];
      const contactZ: Curve = [h * (1 - cos) - a * sin, h * sin - a * cos, a * sin + h * cos];
      const centreY: Curve = [contactY[0] + r * sin, contactY[1] + r * cos, contactY[2] - r * sin];
      const path = (y: Curve, z: Curve, height: number, slope: number): PointMotion => {
        const [dy, ddy] = against(y, centreZ);
        const [dz, ddz] = against(z, centreZ);
        return { p: [x + slope * travel, y[0], height + z[0]], d: [slope, dy, dz], dd: [0, ddy, ddz] };
      };
      const contact = path(contactY, contactZ, -rideHeight, contactSlope);
      const centre = path(centreY, centreZ, r - rideHeight, centreSlope);
      return {
        travel,
        point: (_body, design) => ({ p: design, d: [0, 0, 0], dd: [0, 0, 0] }),
        rocker: undefined,
        wheel: { contact, centre, camber: still, toe: still, caster: undefined, kingpin: undefined },
      };
    },
  };
}

/** Value with first and second derivative by the roll. */
type Curve = readonly [number, number, number];

/** dy/dz and d²y/dz². */
const against = ([, y, yy]: Curve, [, z, zz]: Curve): readonly [number, number] => [
  y / z,
  (yy * z - y * zz) / (z * z * z),
];

/** Sine and cosine of the roll at which the wheel centre has its travel: −a sin φ + c (1 − cos φ) = z. */
function rollAt(z: number, a: number, c: number): readonly [number, number] {
  let roll = -z / a;
  for (let i = 0; i < 20; i++)
    roll -= (-a * Math.sin(roll) + c * (1 - Math.cos(roll)) - z) / (-a * Math.cos(roll) + c * Math.sin(roll));
  return [Math.sin(roll), Math.cos(roll)];
}

/** A spring's deflection that is straight in the axle's roll, s = −a φ: its preload then has no part in the roll stiffness. */
function straightInRoll({ track, rollCentre, wheelHeight }: PlainAxle): RatioCurve {
  if (rollCentre === undefined) return constantRatio(1);
  const [a, c] = [track / 2, rollCentre - wheelHeight];
  return (travel) => {
    const [sin, cos] = rollAt(travel, a, c);
    const [d, dd] = against([0, -a, 0], [travel, -a * cos + c * sin, a * sin + c * cos]);
    return { value: -a * Math.asin(sin), d, dd };
  };
}

function plainElements(plain: PlainAxle): readonly Element[] {
  const { track, wheelRate, bar = 0 } = plain;
  const corner = straightInRoll(plain);
  const springs = (["left", "right"] as const).map((side) =>
    element("side", byRatios({ corner }, false, side), spring(wheelRate), { side, for: ["corner"] }),
  );
  // s = q for wheels (−q, +q), φ = 2q/t: K_φ = k t²/4.
  const rate = (4 * bar) / (track * track);
  const across = element("bar", byRatios({ roll: constantRatio(1) }, false, undefined), spring(rate), {
    for: ["roll"],
  });
  return bar === 0 ? springs : [...springs, across];
}

export interface PlainCar {
  readonly front: PlainAxle;
  readonly rear: PlainAxle;
  readonly mass: number;
  readonly massFront: number;
  readonly cgHeight: number;
}

export function plainCar(car: PlainCar, more: Partial<CarUnderLoad> = {}): CarUnderLoad {
  const one = (name: AxleName) => {
    const plain = car[name];
    const { track, x, unsprung, tyreRate, wheelHeight, rideHeight } = plain;
    const wheel = { unsprungMass: unsprung, tyreRate };
    const corner = rollingCorner(plain);
    const mechanism = axle([...plainElements(plain), ...(plain.elements ?? [])], {
      name,
      track,
      rideHeight,
      corners: { left: corner, right: corner },
      wheels: { left: wheel, right: wheel },
      trim: { by: "element", element: "side" },
      carMass: car.mass,
      massFront: car.massFront,
      travel: { from: -0.5, to: 0.5 },
    });
    const ground = -(rideHeight ?? 0);
    const place = (y: number) => ({ centre: [x, y, ground + wheelHeight], contact: [x, y, ground] }) as const;
    return { mechanism, places: { left: place(track / 2), right: place(-track / 2) }, drawnHeight: rideHeight };
  };
  return {
    axles: { front: one("front"), rear: one("rear") },
    joining: [],
    cgHeight: car.cgHeight,
    brakes: { front: 0.6, mounting: "outboard" },
    drive: "rear",
    air: undefined,
    rack: undefined,
    density: STILL_AIR,
    points: [],
    ...more,
  };
}

export function readyFor(car: CarUnderLoad) {
  const standing = standingCar(car);
  if ("reason" in standing) throw new Error(standing.reason);
  const ready = readyCar(standing);
  if ("reason" in ready) throw new Error(ready.reason);
  return ready;
}

export const resultOf = (car: CarUnderLoad, asked: Partial<LoadCase>): CaseResult =>
  solveCase(readyFor(car), caseOf(asked));

export function solvedCase(car: CarUnderLoad, asked: Partial<LoadCase>): CaseFigures {
  const result = resultOf(car, asked);
  if (result.kind !== "equilibrium") throw new Error(JSON.stringify(result));
  return result;
}
