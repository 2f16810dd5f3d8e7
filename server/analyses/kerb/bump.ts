/**
 * The height of a kerb under a tyre: its shape averaged over the length of the contact patch, which is how far a tyre is
 * taken to envelop what it rolls over. A moving average is the simplest model of that; belt and carcass bending are left out.
 *
 * With h(x) the shape and A its integral: y(x) = (A(x + a/2) − A(x − a/2))/a, y′(x) = (h(x + a/2) − h(x − a/2))/a.
 *
 * Invariant: y is continuous for every shape, so that even an upright edge gives finite forces; it is 0 before the kerb.
 */

export const SHAPES = ["half-sine", "versed-sine", "ramp", "block"] as const;
/**
 * Over the length L: `half-sine` h sin(πx/L); `versed-sine` h (1 − cos 2πx/L)/2; `ramp` up over L, and it stays there;
 * `block` upright edges.
 */
export type Shape = (typeof SHAPES)[number];

export interface Bump {
  readonly shape: Shape;
  /** m; negative is a hollow. */
  readonly height: number;
  /** m */
  readonly length: number;
  /** Of the contact patch, m; above 0. */
  readonly contact: number;
}

export interface Profile {
  /** Height and slope at a place x along the road, m; the kerb begins at 0. */
  at(x: number): { readonly height: number; readonly slope: number };
  /** Places at which its slope or curvature jumps; rising. */
  readonly kinks: readonly number[];
}

/** Of unit height and length, at u from 0 to 1: the value and its integral from 0. */
const unitShapes: Readonly<Record<Shape, (u: number) => readonly [value: number, integral: number]>> = {
  "half-sine": (u) => [Math.sin(Math.PI * u), (1 - Math.cos(Math.PI * u)) / Math.PI],
  "versed-sine": (u) => [(1 - Math.cos(2 * Math.PI * u)) / 2, (u - Math.sin(2 * Math.PI * u) / (2 * Math.PI)) / 2],
  ramp: (u) => [u, (u * u) / 2],
  block: (u) => [1, u],
};

export function profileOf({ shape, height, length, contact }: Bump): Profile {
  const unit = unitShapes[shape];
  const after = shape === "ramp" ? 1 : 0;
  const sharp = (x: number): readonly [number, number] => {
    if (x <= 0) return [0, 0];
    const u = x / length;
    const [value, integral] = unit(Math.min(u, 1));
    return u < 1
      ? [height * value, height * length * integral]
      : [height * after, height * length * (integral + after * (u - 1))];
  };
  return {
    at(x) {
      const [ahead, behind] = [sharp(x + contact / 2), sharp(x - contact / 2)];
      return { height: (ahead[1] - behind[1]) / contact, slope: (ahead[0] - behind[0]) / contact };
    },
    kinks: [-contact / 2, contact / 2, length - contact / 2, length + contact / 2].sort((a, b) => a - b),
  };
}
