/**
 * The axle that the files of samples/systems share, worked out a second time: circles in the plane of the wheel centre and a
 * root by halving. Nothing of server/ is used. Points are (y, z) in m, the left side; the right one mirrors it (y → −y).
 */
export type Flat = readonly [y: number, z: number];

const mm = (y: number, z: number): Flat => [y / 1000, z / 1000];

/** As samples/systems/*.crank write it down; `sharedLinkage` is the text that a test holds against the file. */
const lower = { inner: mm(190, 103), outer: mm(678, 108) };
const upper = { inner: mm(235, 297), outer: mm(650, 342) };
const rod = { outer: mm(632, 128), inner: mm(226, 436) };
const pivot = mm(190, 400);
const centre = mm(731, 230);

export const sharedLinkage = [
  "lower-wishbone { inner (190, 103) mm, outer (678, 108) mm }",
  "upper-wishbone { inner (235, 297) mm, outer (650, 342) mm }",
  "push-rod on lower-wishbone { outer (632, 128) mm, inner (226, 436) mm, thread 1.25 mm/turn }",
  "pivot (190, 400) mm",
  "centre (0, 731, 230) mm",
] as const;

const minus = (a: Flat, b: Flat): Flat => [a[0] - b[0], a[1] - b[1]];
const apart = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const bearing = (a: Flat): number => Math.atan2(a[1], a[0]);

/** `point` turned about `about`. */
function turned(about: Flat, point: Flat, angle: number): Flat {
  const [y, z] = minus(point, about);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [about[0] + c * y - s * z, about[1] + s * y + c * z];
}

/** Where two circles cross; of the two places the one nearer to `near`. */
function crossing(a: Flat, ra: number, b: Flat, rb: number, near: Flat): Flat {
  const d = apart(a, b);
  const along = (ra * ra - rb * rb + d * d) / (2 * d);
  const aside = Math.sqrt(ra * ra - along * along);
  const u: Flat = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
  const places = [1, -1].map(
    (side): Flat => [a[0] + along * u[0] - side * aside * u[1], a[1] + along * u[1] + side * aside * u[0]],
  );
  const [one = near, other = near] = places;
  return apart(one, near) < apart(other, near) ? one : other;
}

/** How far the upright has turned, and where the wheel centre gets to, when the lower wishbone turns by `angle`. */
function uprightAt(angle: number): { readonly turn: number; readonly centre: Flat } {
  const l = turned(lower.inner, lower.outer, angle);
  const u = crossing(l, apart(lower.outer, upper.outer), upper.inner, apart(upper.inner, upper.outer), upper.outer);
  const turn = bearing(minus(u, l)) - bearing(minus(upper.outer, lower.outer));
  const [y, z] = minus(turned(lower.outer, centre, turn), lower.outer);
  return { turn, centre: [l[0] + y, l[1] + z] };
}

/** The lower wishbone's angle with the wheel centre `travel` m above design, by halving. */
function angleAt(travel: number): number {
  let [low, high] = [-0.3, 0.3];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (uprightAt(middle).centre[1] - centre[1] < travel) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface PlainCorner {
  /** Of the rocker from design, rad, as bump turns it. */
  readonly rocker: number;
  /** A point of the rocker, given at design. */
  eye(point: Flat): Flat;
  /** A point of the lower wishbone, given at design. */
  onLower(point: Flat): Flat;
}

/** The left corner with its wheel centre `travel` m above design; by its mirror image the right one too. */
export function plainCorner(travel: number): PlainCorner {
  const angle = angleAt(travel);
  const outer = turned(lower.inner, rod.outer, angle);
  const inner = crossing(pivot, apart(pivot, rod.inner), outer, apart(rod.outer, rod.inner), rod.inner);
  const rocker = bearing(minus(inner, pivot)) - bearing(minus(rod.inner, pivot));
  return {
    rocker,
    eye: (point) => turned(pivot, point, rocker),
    onLower: (point) => turned(lower.inner, point, angle),
  };
}

const mirrored = ([y, z]: Flat): Flat => [-y, z];

/** How much nearer two points come, from design; m. */
const closed = (now: readonly [Flat, Flat], design: readonly [Flat, Flat]): number =>
  apart(design[0], design[1]) - apart(now[0], now[1]);

/** Compression of what is joined to an eye and to the chassis, by its own wheel's travel. */
export const toChassis =
  (eye: Flat, chassis: Flat) =>
  (z: number): number =>
    closed([plainCorner(z).eye(eye), chassis], [eye, chassis]);

/** Compression of what is joined to the left rocker at one eye and to the right one at another (given on the left). */
export const across =
  (left: Flat, right: Flat) =>
  (zl: number, zr: number): number =>
    closed([plainCorner(zl).eye(left), mirrored(plainCorner(zr).eye(right))], [left, mirrored(right)]);

/** Compression of what is joined to the lower wishbone and to the chassis, by its own wheel's travel. */
export const onLowerTo =
  (point: Flat, chassis: Flat) =>
  (z: number): number =>
    closed([plainCorner(z).onLower(point), chassis], [point, chassis]);

/** The rocker's twist as bump makes it. */
export const twist = (z: number): number => plainCorner(z).rocker;

/**
 * Angle of a lever about an axis across the car, worked by a drop link that stands upright at design: its end is `arm` from
 * the axis along x, and `below` under the rocker's eye (negative: above it). Found by halving on the
 * link's length; positive as its end rises.
 */
export const leverAngle =
  (eye: Flat, arm: number, below: number) =>
  (z: number): number => {
    const [y, height] = plainCorner(z).eye(eye);
    const tooLong = (angle: number): number => {
      const [x, rise] = [arm * (1 - Math.cos(angle)), arm * Math.sin(angle)];
      return Math.hypot(x, y - eye[0], height - (eye[1] - below + rise)) - Math.abs(below);
    };
    let [low, high] = [-0.9, 0.9];
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (Math.sign(below) * tooLong(middle) > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };

export const eyes = {
  side: mm(208, 463),
  third: mm(192, 456),
  damper: mm(196, 476),
  bar: mm(222, 396),
  high: mm(175, 452),
  low: mm(175, 348),
} as const;

/** Where side springs and dampers meet the chassis. */
export const bracket = mm(45, 466);
export const flat = mm;

export type Energy = (zl: number, zr: number) => number;

/** Of one element on each side. */
export const both =
  (energy: (z: number) => number): Energy =>
  (zl, zr) =>
    energy(zl) + energy(zr);

export const sum =
  (...parts: readonly Energy[]): Energy =>
  (zl, zr) =>
    parts.reduce((all, part) => all + part(zl, zr), 0);

/** Fourth-order differences, m: the energies bend over centimetres. */
const H = 5e-4;

const secondAlong = (f: (x: number) => number): number =>
  (16 * (f(H) + f(-H)) - f(2 * H) - f(-2 * H) - 30 * f(0)) / (12 * H * H);
const firstAlong = (f: (x: number) => number): number => (8 * (f(H) - f(-H)) - f(2 * H) + f(-2 * H)) / (12 * H);

export const TRACK = 1.48;
const GRAVITY = 9.80665;
/** Tyre of 262 mm at 2 deg of camber, its top inboard: where it stands on the road, from the wheel centre. */
const CONTACT: Flat = [0.262 * Math.sin((2 * Math.PI) / 180), -0.262 * Math.cos((2 * Math.PI) / 180)];
/** Travel of the contact point for each travel of the wheel centre, with the wheels `from` m above design. */
const contactRise = (from: number): number =>
  firstAlong((z) => {
    const { turn, centre: at } = uprightAt(angleAt(from + z));
    return at[1] + turned([0, 0], CONTACT, turn)[1];
  });
/** What the elements carry, N: 44 % of 540 kg on the tyres, which rise a little more than the wheel centres, less two wheels. */
export const weightAt = (travel: number): number => (0.44 * 540 * contactRise(travel) - 2 * 17) * GRAVITY;
export const SPRUNG_WEIGHT = weightAt(0);

export const heaveForce = (energy: Energy): number => firstAlong((z) => energy(z, z));
export const heaveRate = (energy: Energy): number => secondAlong((z) => energy(z, z));
/** t²/4 · ∂²U along (−1, 1); N·m/rad. */
export const rollStiffness = (energy: Energy): number => ((TRACK * TRACK) / 4) * secondAlong((z) => energy(-z, z));
export const leftWheelRate = (energy: Energy): number => secondAlong((z) => energy(z, 0));

/** The seat with which the axle carries `weight` at design, found by halving; `energy` takes what its seat adds. */
export function seatFor(energy: (seat: number) => Energy, most: number, weight: number = SPRUNG_WEIGHT): number {
  let [low, high] = [-most, most];
  for (let i = 0; i < 70; i++) {
    const middle = (low + high) / 2;
    if (heaveForce(energy(middle)) < weight) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const trimmed = (energy: (seat: number) => Energy, most: number): Energy => energy(seatFor(energy, most));
/** ∂s/∂z at design. */
export const slope = (s: (z: number) => number): number => firstAlong(s);
