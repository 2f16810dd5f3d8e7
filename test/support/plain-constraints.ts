/**
 * A corner by its plain constraint equations: the second method, which shares no formula with server/linkage.
 *
 * Twelve unknowns (lower outer, upper outer, track-rod outer, rod inner), twelve equations: eight fixed lengths of
 * wishbones, upright and track rod, the demanded height of the wheel centre, and three fixed lengths of the rocker. The
 * bodies' other points follow from a frame of three joints. Newton with a differenced Jacobian, solved by ml-matrix,
 * carried from design in small steps, so that it stays on the branch that holds there.
 */
import { Matrix, solve } from "ml-matrix";
import type { HardpointGeometry } from "../../server/linkage/geometry.js";
import { add, cross, distance, dot, scale, sub, unit, type Vec3 } from "../../server/maths/vec3.js";

export interface PlainPosition {
  readonly lower: Vec3;
  readonly upper: Vec3;
  readonly track: Vec3;
  readonly inner: Vec3;
  readonly centre: Vec3;
  /** A point of the wheel's axis outboard of its centre, 1 m. */
  readonly spindle: Vec3;
}

/** A point carried by three joints, from design. */
function carried(from: readonly [Vec3, Vec3, Vec3], to: readonly [Vec3, Vec3, Vec3], point: Vec3): Vec3 {
  const frame = ([o, a, b]: readonly [Vec3, Vec3, Vec3]): [Vec3, Vec3, Vec3] => {
    const x = unit(sub(a, o));
    const z = unit(cross(x, sub(b, o)));
    return [x, cross(z, x), z];
  };
  const [before, after] = [frame(from), frame(to)];
  const r = sub(point, from[0]);
  return before.reduce<Vec3>((p, axis, i) => add(p, scale(after[i] ?? axis, dot(r, axis))), to[0]);
}

const pointAt = (x: readonly number[], i: number): Vec3 => [x[3 * i] ?? 0, x[3 * i + 1] ?? 0, x[3 * i + 2] ?? 0];

const unpack = (g: HardpointGeometry, x: readonly number[]): PlainPosition => {
  const [lower, upper, track, inner] = [pointAt(x, 0), pointAt(x, 1), pointAt(x, 2), pointAt(x, 3)];
  const design = [g.lower.outer, g.upper.outer, g.trackRod.outer] as const;
  const on = (point: Vec3): Vec3 => carried(design, [lower, upper, track], point);
  const { centre, camber, toe } = g.wheel;
  const out: Vec3 = [Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber)];
  return { lower, upper, track, inner, centre: on(centre), spindle: on(add(centre, out)) };
};

/** The rod's outer end, on whichever body carries it. */
function rodOuter(g: HardpointGeometry, p: PlainPosition): Vec3 {
  const { rod, lower, upper, trackRod } = g;
  if (rod === undefined) return p.inner;
  if (rod.on === "lower-wishbone")
    return carried([lower.fore, lower.aft, lower.outer], [lower.fore, lower.aft, p.lower], rod.outer);
  if (rod.on === "upper-wishbone")
    return carried([upper.fore, upper.aft, upper.outer], [upper.fore, upper.aft, p.upper], rod.outer);
  return carried([lower.outer, upper.outer, trackRod.outer], [p.lower, p.upper, p.track], rod.outer);
}

function residuals(g: HardpointGeometry, travel: number, x: readonly number[], trackLonger: number): number[] {
  const p = unpack(g, x);
  const { lower, upper, trackRod, rod, rocker } = g;
  const keeps = (now: Vec3, to: Vec3, a: Vec3, b: Vec3): number => distance(now, to) - distance(a, b);
  const pivot = rocker?.pivot ?? [0, 0, 0];
  const second = add(pivot, scale(unit(rocker?.axis ?? [1, 0, 0]), 0.1));
  const inner = rod?.inner ?? [0, 0, 0];
  return [
    keeps(p.lower, lower.fore, lower.outer, lower.fore),
    keeps(p.lower, lower.aft, lower.outer, lower.aft),
    keeps(p.upper, upper.fore, upper.outer, upper.fore),
    keeps(p.upper, upper.aft, upper.outer, upper.aft),
    keeps(p.upper, p.lower, upper.outer, lower.outer),
    keeps(p.track, trackRod.inner, trackRod.outer, trackRod.inner) - trackLonger,
    keeps(p.track, p.lower, trackRod.outer, lower.outer),
    keeps(p.track, p.upper, trackRod.outer, upper.outer),
    p.centre[2] - g.wheel.centre[2] - travel,
    keeps(p.inner, pivot, inner, pivot),
    keeps(p.inner, second, inner, second),
    distance(p.inner, rodOuter(g, p)) - distance(inner, rod?.outer ?? inner) - (rod?.lengthen ?? 0),
  ];
}

const STEP = 1e-7;

function jacobian(g: HardpointGeometry, travel: number, x: readonly number[], trackLonger: number): Matrix {
  const j = Matrix.zeros(12, 12);
  for (let column = 0; column < 12; column++) {
    const shifted = (by: number) =>
      residuals(
        g,
        travel,
        x.map((v, i) => (i === column ? v + by : v)),
        trackLonger,
      );
    const [ahead, behind] = [shifted(STEP), shifted(-STEP)];
    for (let row = 0; row < 12; row++) j.set(row, column, ((ahead[row] ?? 0) - (behind[row] ?? 0)) / (2 * STEP));
  }
  return j;
}

/** Undefined where Newton does not settle: too near to a toggle for this plain method. */
function settle(g: HardpointGeometry, travel: number, start: readonly number[], trackLonger = 0): number[] | undefined {
  let x = [...start];
  for (let i = 0; i < 25; i++) {
    const r = residuals(g, travel, x, trackLonger);
    if (Math.max(...r.map(Math.abs)) < 1e-15) return x;
    const step = solve(jacobian(g, travel, x, trackLonger), Matrix.columnVector(r)).to1DArray();
    x = x.map((v, k) => v - (step[k] ?? 0));
    if (Math.max(...step.map(Math.abs)) < 1e-15) return x;
  }
  return Math.max(...residuals(g, travel, x, trackLonger).map(Math.abs)) < 1e-14 ? x : undefined;
}

/**
 * The corner at `travel`, carried there from design in steps of 2 mm; the rod's `lengthen` is put in first, likewise, and
 * a little more track rod last.
 */
export function plainPosition(g: HardpointGeometry, travel: number, trackLonger = 0): PlainPosition | undefined {
  const design = [g.lower.outer, g.upper.outer, g.trackRod.outer, g.rod?.inner ?? ([0, 0, 0] as Vec3)];
  let x: number[] | undefined = design.flatMap((p) => [...p]);
  const steps = Math.max(1, Math.ceil(Math.abs(travel) / 0.002));
  const lengthen = g.rod?.lengthen ?? 0;
  for (let i = 1; i <= 4 && x !== undefined && g.rod !== undefined; i++) {
    x = settle({ ...g, rod: { ...g.rod, lengthen: (lengthen * i) / 4 } }, 0, x);
  }
  for (let i = 1; i <= steps && x !== undefined; i++) x = settle(g, (travel * i) / steps, x);
  if (trackLonger !== 0 && x !== undefined) x = settle(g, travel, x, trackLonger);
  return x === undefined ? undefined : unpack(g, x);
}
