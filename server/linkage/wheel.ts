/**
 * The wheel as the upright carries it: centre, camber, toe and contact point against travel.
 *
 * Spin axis s, unit, outboard. Camber = −asin s_z (ISO 8855: positive with the top outboard),
 * toe-in = atan2(s_x, s_y) (positive with the front edge inboard); both for a left wheel.
 * Singular where the wheel lies flat (s = ±z): no camber and toe are given there.
 */
import { add, scale, sub, unit, type Vec3 } from "../maths/vec3.js";
import type { Jet, PointMotion, WheelMotion } from "./corner.js";
import type { WheelPoints } from "./geometry.js";
import { carry, carryDirection, type RigidMotion, turned } from "./rigid-motion.js";

const UP: Vec3 = [0, 0, 1];
/** cos² of the camber below which the wheel counts as flat. */
const FLAT = 1e-12;

/** The spin axis at static camber and toe-in, outboard for a left wheel. */
export const spinAxis = (camber: number, toe: number): Vec3 => [
  Math.sin(toe) * Math.cos(camber),
  Math.cos(toe) * Math.cos(camber),
  -Math.sin(camber),
];

/** The lowest point of the wheel's circle at design. */
export function contactPoint(wheel: WheelPoints<Vec3>): Vec3 {
  const s = spinAxis(wheel.camber, wheel.toe);
  const down = sub(scale(s, s[2]), UP);
  return add(wheel.centre, scale(unit(down), wheel.loadedRadius));
}

const camberJet = (s: PointMotion): Jet => {
  const cos = Math.hypot(s.p[0], s.p[1]);
  const d = -s.d[2] / cos;
  return { value: -Math.atan2(s.p[2], cos), d, dd: -(s.dd[2] + s.p[2] * d * d) / cos };
};

const toeJet = (s: PointMotion): Jet => {
  const square = s.p[0] * s.p[0] + s.p[1] * s.p[1];
  const d = (s.d[0] * s.p[1] - s.p[0] * s.d[1]) / square;
  const turn = s.dd[0] * s.p[1] - s.p[0] * s.dd[1];
  return { value: Math.atan2(s.p[0], s.p[1]), d, dd: (turn - 2 * d * (s.p[0] * s.d[0] + s.p[1] * s.d[1])) / square };
};

/** Caster and kingpin inclination of the steering axis n, rad: top rearward and top inboard positive. */
export const steeringAngles = (n: Vec3): { readonly caster: number; readonly kingpin: number } => ({
  caster: Math.atan2(-n[0], n[2]),
  kingpin: Math.atan2(-n[1], n[2]),
});

/** The wheel at design: its spin axis and its contact point. */
export interface WheelAtDesign extends WheelPoints<Vec3> {
  readonly axis: Vec3;
  readonly contact: Vec3;
}

export const wheelAtDesign = (wheel: WheelPoints<Vec3>): WheelAtDesign => ({
  ...wheel,
  axis: spinAxis(wheel.camber, wheel.toe),
  contact: contactPoint(wheel),
});

/** The wheel as it goes with its upright; its angles, which few who ask for its points look at, when they are asked for. */
class Carried implements WheelMotion {
  readonly centre: PointMotion;
  readonly contact: PointMotion;
  readonly #wheel: WheelAtDesign;
  readonly #upright: RigidMotion;
  readonly #n: Vec3;
  readonly #steerHeld: boolean;

  constructor(wheel: WheelAtDesign, upright: RigidMotion, n: Vec3, steerHeld: boolean) {
    this.centre = carry(upright, wheel.centre);
    this.contact = carry(upright, wheel.contact);
    this.#wheel = wheel;
    this.#upright = upright;
    this.#n = n;
    this.#steerHeld = steerHeld;
  }

  get camber(): Jet {
    return camberJet(carryDirection(this.#upright, this.#wheel.axis));
  }

  get toe(): Jet {
    if (this.#steerHeld) return { value: this.#wheel.toe, d: 0, dd: 0 };
    return toeJet(carryDirection(this.#upright, this.#wheel.axis));
  }

  get caster(): number | undefined {
    return this.#steerHeld ? undefined : steeringAngles(this.#n).caster;
  }

  get kingpin(): number {
    return steeringAngles(this.#n).kingpin;
  }
}

/**
 * The wheel on its upright. `steerHeld` (planar corner): toe is the stated one by the model's own assumption, and
 * caster is not known.
 */
export function wheelMotion(
  wheel: WheelAtDesign,
  upright: RigidMotion,
  n: Vec3,
  steerHeld: boolean,
): WheelMotion | undefined {
  const [x, y] = turned(upright.turn, wheel.axis);
  return x * x + y * y < FLAT ? undefined : new Carried(wheel, upright, n, steerHeld);
}
