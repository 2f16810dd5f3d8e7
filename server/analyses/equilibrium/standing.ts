/**
 * The car on the flat patch, before any load: where its parts are, what the tyres carry, how its springs are seated. Worked
 * out once a car; every case starts from it.
 *
 * The body's reference point O lies on the plane z = 0 below the centre of gravity; heights are above the road.
 * Sprung centre of gravity: m_s r_s = m r − Σ m_u r_u.
 *
 * Invariant: without load nothing moves. What each axle's trim leaves over at a wheel, since it does not know the rake,
 * is carried by the springs' seats as they are set on the flat patch (`leftOver`).
 */
import type { Corner, CornerMotion } from "../../linkage/corner.js";
import type { Sides, Steered } from "../../elements/mechanism.js";
import { scale, sub, type Vec3 } from "../../maths/vec3.js";
import { absent, bindsReason, isAbsent } from "../absent.js";
import { joinedLoads } from "../joined-loads.js";
import { GRAVITY, tyreLoad } from "../loads.js";
import type { Absent } from "../results.js";
import { Attitude } from "./attitude.js";
import { type Carrier, carriersOf } from "./carriers.js";
import { asTrimmed } from "../rod-trim.js";
import type { Air } from "../../elements/air.js";
import type { CarUnderLoad, LoadedAxle } from "../../elements/loaded-car.js";
import { wheelPoints, type WheelPoints } from "./wheel-points.js";

export const SIDES = ["left", "right"] as const;
export const AXLES = ["front", "rear"] as const;

export interface StandingWheel {
  readonly axle: 0 | 1;
  readonly side: "left" | "right";
  readonly corner: Corner;
  readonly place: NonNullable<LoadedAxle["places"]>["left"] | undefined;
  /** N/m */
  readonly tyreRate: number;
  /** Load of the tyre at rest, N, and the height of its contact point then, m. */
  readonly load: number;
  readonly height: number;
  readonly unsprung: number;
  /** Travel at rest, m. */
  readonly travel: number;
}

export interface Standing {
  readonly car: CarUnderLoad;
  readonly air: Air | undefined;
  /** The front corners with the rack moved, on the rods that they are trimmed by. */
  readonly steered: Steered;
  /** FL, FR, RL, RR. */
  readonly wheels: readonly StandingWheel[];
  readonly carriers: readonly Carrier[];
  /** O in the frame of the car. */
  readonly origin: Vec3;
  /** Height of O, m; roll and pitch, rad; travels of the wheels, m. */
  readonly rest: readonly number[];
  /** kg */
  readonly mass: number;
  /** Share of the lateral forces that the front axle takes in steady yaw. */
  readonly frontShare: number;
  readonly sprung: { readonly mass: number; readonly at: Vec3 };
  /** x of both axle lines from O, in the body. */
  readonly lines: readonly [number, number];
  /** Where the drag acts, from O, in the body. */
  readonly drag: Vec3 | undefined;
  /** Half of the mean track, and half of the wheelbase: what makes a moment weigh like a force, m. */
  readonly arms: readonly [roll: number, pitch: number];
}

interface Numbers {
  readonly front: LoadedAxle;
  readonly rear: LoadedAxle;
  readonly cgHeight: number;
}

function numbersOf({ axles, cgHeight, air }: CarUnderLoad): Numbers | Absent {
  const { front, rear } = axles;
  if (front === undefined || rear === undefined)
    return absent(`the car has no ${front === undefined ? "front" : "rear"} axle`);
  if (typeof air === "string") return absent(air);
  return typeof cgHeight === "string" ? absent(cgHeight) : { front, rear, cgHeight };
}

interface AtRest {
  readonly wheel: Omit<StandingWheel, "height">;
  readonly points: WheelPoints;
  readonly motion: CornerMotion;
}

function wheelAtRest({ mechanism, places }: LoadedAxle, side: "left" | "right", axle: 0 | 1): AtRest | Absent {
  const { name, corners, cornerMissing, wheels, kept } = mechanism;
  const travel = kept?.travels[side] ?? mechanism.staticTravel;
  const missing = cornerMissing[side];
  if (missing !== undefined) return absent(missing);
  const { unsprungMass, tyreRate } = wheels[side];
  if (unsprungMass === undefined) return absent(`the ${name} wheels have no unsprung-mass`);
  if (tyreRate === undefined) return absent(`the ${name} wheels have no tyre-rate`);
  const load = tyreLoad(mechanism, side);
  if (typeof load !== "number") return load;
  const corner = corners[side];
  const motion = corner.motion(travel);
  if ("kind" in motion) return absent(bindsReason(motion, side));
  const place = places?.[side];
  const points = wheelPoints(motion, side, place);
  if (points === undefined)
    return absent(`the ${name} axle is given by ratios, and its track or the wheels' centre is missing`);
  const wheel = { axle, side, corner, place, tyreRate, load, unsprung: unsprungMass, travel };
  return { wheel, points, motion };
}

/** The body's place above the road from both ride heights: height of the plane z = 0 at x, and its pitch. */
interface Rake {
  readonly pitch: number;
  heightAt(x: number): number;
}

/** An axle without a ride height stands on its contact points. */
const heightOf = ({ mechanism }: LoadedAxle, wheels: readonly AtRest[]): number =>
  mechanism.rideHeight ?? -(wheels[0]!.points.contact.p[2] + wheels[1]!.points.contact.p[2]) / 2;

function rakeOf(front: number, rear: number, xFront: number, xRear: number): Rake {
  const sine = (rear - front) / (xFront - xRear);
  return { pitch: Math.asin(sine), heightAt: (x) => front + (xFront - x) * sine };
}

const meanX = (wheels: readonly AtRest[], of: keyof WheelPoints): number =>
  (wheels[0]!.points[of].p[0] + wheels[1]!.points[of].p[0]) / 2;

/** @returns the car at rest, or what is missing for it */
export function standingCar(car: CarUnderLoad): Standing | Absent {
  const stated = numbersOf(car);
  if (isAbsent(stated)) return stated;
  const numbers = onSetRods(joinedTo(stated, car));
  if (isAbsent(numbers)) return numbers;
  const found: AtRest[] = [];
  for (const [axle, name] of AXLES.entries()) {
    for (const side of SIDES) {
      const wheel = wheelAtRest(numbers[name], side, axle === 0 ? 0 : 1);
      if (isAbsent(wheel)) return wheel;
      found.push(wheel);
    }
  }
  const carriers = carriersOf(
    numbers,
    car.joining,
    found.map(({ motion }) => motion),
  );
  return isAbsent(carriers) ? carriers : placed(car, numbers, found, carriers);
}

function onSetRods(numbers: Numbers): Numbers | Absent {
  const [front, rear] = [asTrimmed(numbers.front.mechanism), asTrimmed(numbers.rear.mechanism)];
  if (isAbsent(front)) return front;
  if (isAbsent(rear)) return rear;
  return {
    ...numbers,
    front: { ...numbers.front, mechanism: front },
    rear: { ...numbers.rear, mechanism: rear },
  };
}

/** Each axle carries what the elements between the axles leave to it. */
function joinedTo(numbers: Numbers, { joining }: CarUnderLoad): Numbers {
  const { front, rear } = numbers;
  const loads = joinedLoads({ elements: joining, axles: { front: front.mechanism, rear: rear.mechanism } });
  if (loads === undefined) return numbers;
  const carrying = (axle: LoadedAxle, joined: Sides<number> | string): LoadedAxle => ({
    ...axle,
    mechanism: { ...axle.mechanism, joined },
  });
  return { ...numbers, front: carrying(front, loads.front), rear: carrying(rear, loads.rear) };
}

function placed(
  car: CarUnderLoad,
  { front, rear, cgHeight }: Numbers,
  found: readonly AtRest[],
  carriers: readonly Carrier[],
): Standing | Absent {
  const [ahead, behind] = [found.slice(0, 2), found.slice(2)];
  const [xFront, xRear] = [meanX(ahead, "centre"), meanX(behind, "centre")];
  const [hFront, hRear] = [heightOf(front, ahead), heightOf(rear, behind)];
  const base = xFront - xRear;
  if (!(base > 0.01 && Math.abs(hRear - hFront) < base / 2))
    return absent("the front wheels are not ahead of the rear ones");
  const rake = rakeOf(hFront, hRear, xFront, xRear);
  const onFront = found.reduce((sum, { wheel }) => sum + (wheel.axle === 0 ? wheel.load : 0), 0);
  const total = found.reduce((sum, { wheel }) => sum + wheel.load, 0);
  const mass = total / GRAVITY;
  const origin: Vec3 = [xRear + (onFront / total) * base, 0, 0];
  // Level, unless its seats are kept and its sides stand at unlike heights.
  const roll = front.mechanism.kept?.roll ?? 0;
  const attitude = new Attitude(roll, rake.pitch);
  const height = rake.heightAt(origin[0]);
  const onRoad = (p: Vec3): Vec3 => attitude.turned(sub(p, origin));
  const balance = (axis: 0 | 1): number =>
    found.reduce((sum, { wheel, points }) => sum + wheel.load * onRoad(points.contact.p)[axis], 0) / total;
  const sprungMass = found.reduce((sum, { wheel }) => sum - wheel.unsprung, mass);
  if (!(sprungMass > 0)) return absent("the unsprung masses leave nothing of the car's mass");
  // The centre of gravity is where the tyres' loads have no moment.
  const [x, y] = [balance(0), balance(1)];
  const raise = rake.heightAt(origin[0] + x) - drawnRake(front, rear, xFront, xRear, rake).heightAt(origin[0] + x);
  const cg: Vec3 = [x, y, cgHeight - height];
  const sprung = found.reduce<Vec3>(
    (sum, { wheel, points }) => sub(sum, scale(onRoad(points.centre.p), wheel.unsprung)),
    scale(cg, mass),
  );
  const trackOf = (wheels: readonly AtRest[]): number =>
    Math.abs(wheels[0]!.points.contact.p[1] - wheels[1]!.points.contact.p[1]);
  const xs = [onRoad(found[0]!.points.contact.p)[0], onRoad(found[2]!.points.contact.p)[0]] as const;
  const air = typeof car.air === "string" ? undefined : car.air;
  const drag = air?.drag;
  return {
    car,
    air,
    steered: front.mechanism.steered ?? (() => "the front axle has nothing to steer by"),
    wheels: found.map(({ wheel, points }) => ({ ...wheel, height: onRoad(points.contact.p)[2] + height })),
    carriers,
    origin,
    rest: [height, roll, rake.pitch, ...found.map(({ wheel }) => wheel.travel)],
    mass,
    frontShare: (x - xs[1]) / (xs[0] - xs[1]),
    sprung: { mass: sprungMass, at: attitude.turnedBack(scale(sprung, 1 / sprungMass)) },
    lines: [xFront - origin[0], xRear - origin[0]],
    drag: drag && attitude.turnedBack([x, 0, drag.height + raise - height]),
    arms: [(trackOf(ahead) + trackOf(behind)) / 4, base / 2],
  };
}

/** As the car is drawn: where heights of masses and drag are given. */
function drawnRake(front: LoadedAxle, rear: LoadedAxle, xFront: number, xRear: number, rest: Rake): Rake {
  const { drawnHeight: ahead } = front;
  const { drawnHeight: behind } = rear;
  return ahead === undefined || behind === undefined ? rest : rakeOf(ahead, behind, xFront, xRear);
}
