/**
 * How a placed corner moves on: first and second derivatives of its bodies with respect to wheel travel, into numbers of
 * the caller's that are used again. In: constants and a pose with its `slope`; out: `PoseRates`.
 *
 * Symbols and names: NOTATION.md. One formula each in scalars, as in `position.ts`, which keeps them free of allocation.
 */
import type { Constants } from "./constants.js";
import type { Pose } from "./position.js";

/** Of the corner's bodies, by wheel travel: once (`d`, m⁻¹ or m/m) and twice (`dd`). */
export class PoseRates {
  /** Angles of the lower and the upper wishbone. */
  lowerD = 0;
  lowerDd = 0;
  upperD = 0;
  upperDd = 0;
  /** Lower outer joint. */
  dx = 0;
  dy = 0;
  dz = 0;
  ddx = 0;
  ddy = 0;
  ddz = 0;
  /** Spin ω of the upright and its derivative α. */
  spinX = 0;
  spinY = 0;
  spinZ = 0;
  turnX = 0;
  turnY = 0;
  turnZ = 0;
}

/**
 * Against θ first: the rigid upright gives the upper wishbone's φ'' from (U − L)·(U'' − L'') + |U' − L'|² = 0; the steering
 * axis n'' = (U'' − L'')/|U − L| gives the upright's α up to a turn μ about n; the rigid track rod gives μ from
 * (T − I)·T'' + |T'|² = 0. Then by travel, from the wheel centre's height: θ' = 1/z_θ, θ'' = −z_θθ/z_θ³.
 */
export function ratesOf(k: Constants, p: Pose, out: PoseRates): void {
  const { nx, ny, nz, cosL, sinL, cosU, sinU, rateU, spinX, spinY, spinZ, lx, ly, lz } = p;
  // L' and L'' = −(L − foot).
  const ldx = cosL * k.lvx - sinL * k.lux;
  const ldy = cosL * k.lvy - sinL * k.luy;
  const ldz = cosL * k.lvz - sinL * k.luz;
  const lbx = k.lfx - lx;
  const lby = k.lfy - ly;
  const lbz = k.lfz - lz;
  // Of the upper wishbone: U_φ, and the part −φ'² (U − foot) of U''.
  const tx = cosU * k.uvx - sinU * k.uux;
  const ty = cosU * k.uvy - sinU * k.uuy;
  const tz = cosU * k.uvz - sinU * k.uuz;
  const square = rateU * rateU;
  const ux = -square * (cosU * k.uux + sinU * k.uvx);
  const uy = -square * (cosU * k.uuy + sinU * k.uvy);
  const uz = -square * (cosU * k.uuz + sinU * k.uvz);
  const over = k.overUpright;
  const ndx = (rateU * tx - ldx) * over;
  const ndy = (rateU * ty - ldy) * over;
  const ndz = (rateU * tz - ldz) * over;
  const bend = nx * (ux - lbx) + ny * (uy - lby) + nz * (uz - lbz) + (ndx * ndx + ndy * ndy + ndz * ndz) / over;
  const bendU = -bend / (nx * tx + ny * ty + nz * tz);
  // n'' less ω × n', and across it n × that: α without its part about n.
  const ex = (bendU * tx + ux - lbx) * over - (spinY * ndz - spinZ * ndy);
  const ey = (bendU * ty + uy - lby) * over - (spinZ * ndx - spinX * ndz);
  const ez = (bendU * tz + uz - lbz) * over - (spinX * ndy - spinY * ndx);
  let ax = ny * ez - nz * ey;
  let ay = nz * ex - nx * ez;
  let az = nx * ey - ny * ex;
  if (!k.steerHeld) {
    const rx = k.trackAlong * nx + p.rx;
    const ry = k.trackAlong * ny + p.ry;
    const rz = k.trackAlong * nz + p.rz;
    const wx = spinY * rz - spinZ * ry;
    const wy = spinZ * rx - spinX * rz;
    const wz = spinX * ry - spinY * rx;
    const vx = ldx + wx;
    const vy = ldy + wy;
    const vz = ldz + wz;
    const along =
      (lx + rx - k.tix) * (lbx + ay * rz - az * ry + spinY * wz - spinZ * wy) +
      (ly + ry - k.tiy) * (lby + az * rx - ax * rz + spinZ * wx - spinX * wz) +
      (lz + rz - k.tiz) * (lbz + ax * ry - ay * rx + spinX * wy - spinY * wx);
    const about = -(along + vx * vx + vy * vy + vz * vz) / p.rootT;
    ax += about * nx;
    ay += about * ny;
    az += about * nz;
  }
  const rx = p.wx - lx;
  const ry = p.wy - ly;
  const rz = p.wz - lz;
  const wx = spinY * rz - spinZ * ry;
  const wy = spinZ * rx - spinX * rz;
  const d = 1 / p.slope;
  const dd = -(lbz + ax * ry - ay * rx + spinX * wy - spinY * wx) * d * d * d;
  const dSquare = d * d;
  out.lowerD = d;
  out.lowerDd = dd;
  out.upperD = rateU * d;
  out.upperDd = bendU * dSquare + rateU * dd;
  out.dx = ldx * d;
  out.dy = ldy * d;
  out.dz = ldz * d;
  out.ddx = lbx * dSquare + ldx * dd;
  out.ddy = lby * dSquare + ldy * dd;
  out.ddz = lbz * dSquare + ldz * dd;
  out.spinX = spinX * d;
  out.spinY = spinY * d;
  out.spinZ = spinZ * d;
  out.turnX = ax * dSquare + spinX * dd;
  out.turnY = ay * dSquare + spinY * dd;
  out.turnZ = az * dSquare + spinZ * dd;
}
