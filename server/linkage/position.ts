/**
 * Where the joints of one corner are: the inner loop. Positions only, in scalars, without
 * trigonometry and without allocation: `Constants` and a reusable `Pose` in, a filled `Pose` out.
 *
 * The lower wishbone's angle θ is carried as t = tan(θ/2). Everything else follows in closed form
 * (lower outer: circle; upper outer: circle ∩ sphere; track-rod outer: three spheres). `solve-travel.ts`
 * finds the t of a demanded travel. Derivation and names: NOTATION.md. The functions are long because they are one
 * formula each; scalars instead of vectors keep them free of allocation.
 *
 * Invariant: a status other than `PLACED` leaves no number in use; on `PLACED` all numbers are finite.
 */
import type { Constants } from "./constants.js";

/** Outcome of placing a corner: which link does not reach. */
export type Status = 0 | 1 | 2 | 3;
export const PLACED = 0;
export const UPPER_BINDS = 1;
export const TRACK_ROD_BINDS = 2;
export const ROD_BINDS = 3;

/** The joints at one angle of the lower wishbone; fields are filled by `placeUpright`, `placeRocker` and `slope`. */
export class Pose {
  /** tan(θ/2), cos θ, sin θ of the lower wishbone. */
  t = 0;
  cosL = 1;
  sinL = 0;
  /** Cosine and sine of the upper wishbone's angle, and its signed root h. */
  cosU = 1;
  sinU = 0;
  rootU = 0;
  /** Lower outer joint. */
  lx = 0;
  ly = 0;
  lz = 0;
  /** Steering axis n, from lower to upper outer, unit. */
  nx = 0;
  ny = 0;
  nz = 0;
  /** Arm ρ from the steering axis to the track-rod outer, and n × ρ. */
  rx = 0;
  ry = 0;
  rz = 0;
  mx = 0;
  my = 0;
  mz = 0;
  rootT = 0;
  /** Wheel centre. */
  wx = 0;
  wy = 0;
  wz = 0;
  /** Cosine and sine of the rocker's angle, and its signed root. */
  cosR = 1;
  sinR = 0;
  rootR = 0;
  /** d/dθ: rate of the upper wishbone's angle, spin of the upright, wheel-centre height. */
  rateU = 0;
  spinX = 0;
  spinY = 0;
  spinZ = 0;
  slope = 0;
}

/** Places wishbones, upright and wheel centre for the angle that p.t gives (a number passed by field is not boxed). */
export function placeUpright(k: Constants, p: Pose): Status {
  const t = p.t;
  const half = 1 / (1 + t * t);
  const c = (1 - t * t) * half;
  const s = 2 * t * half;
  const a = k.a0 + k.a1 * c + k.a2 * s;
  const b = k.b0 + k.b1 * c + k.b2 * s;
  const g = k.k0 + k.k1 * c + k.k2 * s;
  const square = a * a + b * b;
  const rest = square - g * g;
  if (!(rest > 0)) return UPPER_BINDS;
  const root = k.branchU * Math.sqrt(rest);
  const overSquare = 1 / square;
  const cu = (a * g + b * root) * overSquare;
  const su = (b * g - a * root) * overSquare;
  const lx = k.lfx + c * k.lux + s * k.lvx;
  const ly = k.lfy + c * k.luy + s * k.lvy;
  const lz = k.lfz + c * k.luz + s * k.lvz;
  const nx = (k.ufx + cu * k.uux + su * k.uvx - lx) * k.overUpright;
  const ny = (k.ufy + cu * k.uuy + su * k.uvy - ly) * k.overUpright;
  const nz = (k.ufz + cu * k.uuz + su * k.uvz - lz) * k.overUpright;
  p.cosL = c;
  p.sinL = s;
  p.cosU = cu;
  p.sinU = su;
  p.rootU = root;
  p.lx = lx;
  p.ly = ly;
  p.lz = lz;
  p.nx = nx;
  p.ny = ny;
  p.nz = nz;
  return k.steerHeld ? holdSteer(k, p) : placeTrackRod(k, p);
}

/** The steering arm from three spheres: on its circle about n, at the track rod's length from its inner joint. */
function placeTrackRod(k: Constants, p: Pose): Status {
  const { nx, ny, nz } = p;
  const dx = k.tix - p.lx;
  const dy = k.tiy - p.ly;
  const dz = k.tiz - p.lz;
  const along = dx * nx + dy * ny + dz * nz;
  const whole = dx * dx + dy * dy + dz * dz;
  const square = whole - along * along;
  const g = k.trackK + 0.5 * whole - k.trackAlong * along;
  const reach = k.trackArm2 * square;
  const rest = reach - g * g;
  if (!(rest > 0)) return TRACK_ROD_BINDS;
  const root = k.branchT * Math.sqrt(rest);
  const qx = dx - along * nx;
  const qy = dy - along * ny;
  const qz = dz - along * nz;
  const sx = ny * dz - nz * dy;
  const sy = nz * dx - nx * dz;
  const sz = nx * dy - ny * dx;
  const overSquare = 1 / square;
  const gs = g * overSquare;
  const hs = root * overSquare;
  const rx = gs * qx + hs * sx;
  const ry = gs * qy + hs * sy;
  const rz = gs * qz + hs * sz;
  const mx = gs * sx - hs * qx;
  const my = gs * sy - hs * qy;
  const mz = gs * sz - hs * qz;
  p.rootT = root;
  p.rx = rx;
  p.ry = ry;
  p.rz = rz;
  p.mx = mx;
  p.my = my;
  p.mz = mz;
  p.wx = p.lx + k.wheelN * nx + k.wheelR * rx + k.wheelM * mx;
  p.wy = p.ly + k.wheelN * ny + k.wheelR * ry + k.wheelM * my;
  p.wz = p.lz + k.wheelN * nz + k.wheelR * rz + k.wheelM * mz;
  return PLACED;
}

/** Planar corner: the arm ρ points forward for ever, n × ρ follows. */
function holdSteer(k: Constants, p: Pose): Status {
  p.rootT = 0;
  p.rx = 1;
  p.ry = 0;
  p.rz = 0;
  p.mx = 0;
  p.my = p.nz;
  p.mz = -p.ny;
  p.wx = p.lx + k.wheelN * p.nx + k.wheelR;
  p.wy = p.ly + k.wheelN * p.ny + k.wheelM * p.my;
  p.wz = p.lz + k.wheelN * p.nz + k.wheelM * p.mz;
  return PLACED;
}

/** Rocker angle from the placed carrier of its rod. */
export function placeRocker(k: Constants, p: Pose): Status {
  let dx: number;
  let dy: number;
  let dz: number;
  if (k.carrier === 1) {
    dx = k.pfx + p.cosL * k.pux + p.sinL * k.pvx;
    dy = k.pfy + p.cosL * k.puy + p.sinL * k.pvy;
    dz = k.pfz + p.cosL * k.puz + p.sinL * k.pvz;
  } else if (k.carrier === 2) {
    dx = k.pfx + p.cosU * k.pux + p.sinU * k.pvx;
    dy = k.pfy + p.cosU * k.puy + p.sinU * k.pvy;
    dz = k.pfz + p.cosU * k.puz + p.sinU * k.pvz;
  } else if (k.carrier === 3) {
    dx = p.lx - k.pfx + k.rodN * p.nx + k.rodR * p.rx + k.rodM * p.mx;
    dy = p.ly - k.pfy + k.rodN * p.ny + k.rodR * p.ry + k.rodM * p.my;
    dz = p.lz - k.pfz + k.rodN * p.nz + k.rodR * p.rz + k.rodM * p.mz;
  } else return PLACED;
  const a = k.rux * dx + k.ruy * dy + k.ruz * dz;
  const b = k.rvx * dx + k.rvy * dy + k.rvz * dz;
  const g = k.rodK + 0.5 * (dx * dx + dy * dy + dz * dz);
  const square = a * a + b * b;
  const rest = square - g * g;
  if (!(rest > 0)) return ROD_BINDS;
  const root = k.branchR * Math.sqrt(rest);
  const overSquare = 1 / square;
  p.cosR = (a * g + b * root) * overSquare;
  p.sinR = (b * g - a * root) * overSquare;
  p.rootR = root;
  return PLACED;
}

/**
 * d/dθ of the placed upright, by velocity analysis: the upper wishbone's rate from the rigid upright,
 * its spin about the steering axis from the rigid track rod. Returns dz/dθ of the wheel centre.
 */
export function slope(k: Constants, p: Pose): number {
  const { nx, ny, nz, cosL, sinL, cosU, sinU } = p;
  const ldx = cosL * k.lvx - sinL * k.lux;
  const ldy = cosL * k.lvy - sinL * k.luy;
  const ldz = cosL * k.lvz - sinL * k.luz;
  // (U − L)·U_φ is −h, so that n·L' = φ' n·U_φ needs no second dot product.
  const rate = -(nx * ldx + ny * ldy + nz * ldz) / (p.rootU * k.overUpright);
  const ndx = (rate * (cosU * k.uvx - sinU * k.uux) - ldx) * k.overUpright;
  const ndy = (rate * (cosU * k.uvy - sinU * k.uuy) - ldy) * k.overUpright;
  const ndz = (rate * (cosU * k.uvz - sinU * k.uuz) - ldz) * k.overUpright;
  let about = 0;
  if (!k.steerHeld) {
    const { rx, ry, rz } = p;
    const turn = ndx * rx + ndy * ry + ndz * rz;
    const tx = ldx + k.trackAlong * ndx - turn * nx;
    const ty = ldy + k.trackAlong * ndy - turn * ny;
    const tz = ldz + k.trackAlong * ndz - turn * nz;
    const qx = p.lx + k.trackAlong * nx + rx - k.tix;
    const qy = p.ly + k.trackAlong * ny + ry - k.tiy;
    const qz = p.lz + k.trackAlong * nz + rz - k.tiz;
    about = -(qx * tx + qy * ty + qz * tz) / p.rootT;
  }
  const spinX = ny * ndz - nz * ndy + about * nx;
  const spinY = nz * ndx - nx * ndz + about * ny;
  p.rateU = rate;
  p.spinX = spinX;
  p.spinY = spinY;
  p.spinZ = nx * ndy - ny * ndx + about * nz;
  p.slope = ldz + spinX * (p.wy - p.ly) - spinY * (p.wx - p.lx);
  return p.slope;
}
