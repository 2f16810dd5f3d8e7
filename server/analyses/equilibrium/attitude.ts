/**
 * How the body stands on the road: a turn about x (roll, left side up), then about the road's y (pitch, nose down).
 *
 * r = R_y(θ) R_x(φ) v, with u = v_y sin φ + v_z cos φ:
 * r_x = v_x cos θ + u sin θ, r_y = v_y cos φ − v_z sin φ, r_z = −v_x sin θ + u cos θ.
 * ∂r/∂φ = (r_y sin θ, −u, r_y cos θ), ∂r/∂θ = (r_z, 0, −r_x).
 *
 * Exact turns, ISO 8855: what gravity takes off the roll stiffness and the rake's part of anti-dive come by themselves.
 */
import type { Vec3 } from "../../maths/vec3.js";

export class Attitude {
  readonly cosRoll: number;
  readonly sinRoll: number;
  readonly cosPitch: number;
  readonly sinPitch: number;

  constructor(roll: number, pitch: number) {
    this.cosRoll = Math.cos(roll);
    this.sinRoll = Math.sin(roll);
    this.cosPitch = Math.cos(pitch);
    this.sinPitch = Math.sin(pitch);
  }

  /** A vector of the body, in the road's frame. */
  turned(v: Vec3): Vec3 {
    const u = v[1] * this.sinRoll + v[2] * this.cosRoll;
    return [
      v[0] * this.cosPitch + u * this.sinPitch,
      v[1] * this.cosRoll - v[2] * this.sinRoll,
      u * this.cosPitch - v[0] * this.sinPitch,
    ];
  }

  /** A vector of the road's frame, in that of the body. */
  turnedBack(r: Vec3): Vec3 {
    const u = r[0] * this.sinPitch + r[2] * this.cosPitch;
    return [
      r[0] * this.cosPitch - r[2] * this.sinPitch,
      r[1] * this.cosRoll + u * this.sinRoll,
      u * this.cosRoll - r[1] * this.sinRoll,
    ];
  }

  /** ∂r/∂φ of a turned vector. */
  byRoll(r: Vec3): Vec3 {
    const u = r[0] * this.sinPitch + r[2] * this.cosPitch;
    return [r[1] * this.sinPitch, -u, r[1] * this.cosPitch];
  }
}

/** ∂r/∂θ of a turned vector. */
export const byPitch = (r: Vec3): Vec3 => [r[2], 0, -r[0]];
