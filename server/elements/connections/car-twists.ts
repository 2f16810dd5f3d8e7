/**
 * A torsional element on the axes of rockers: one rocker against another of any corner, or against the chassis.
 *
 * s = θ_a − σ θ_b, angles as bump of each rocker's own wheel makes them; σ is +1 where that turns both the same way
 * about the line that they share, −1 where it turns them against each other.
 */
import { type CarConnection, type CarDeflection, type CarMotion, eachPair, eachWheel } from "../car-connection.js";
import type { AxleName } from "../mechanism.js";

export interface RockerOf {
  readonly axle: AxleName;
  readonly side: "left" | "right";
}

const NONE = { value: 0, d: 0, dd: 0 };

const wheel = ({ axle, side }: RockerOf): number => (axle === "front" ? 0 : 2) + (side === "left" ? 0 : 1);

const angle = ({ axle, side }: RockerOf, motion: CarMotion) => motion[axle][side].rocker ?? NONE;

/** @param against with its sense σ; undefined for the chassis */
export function rockersTwist(
  of: RockerOf,
  against: (RockerOf & { readonly sense: 1 | -1 }) | undefined,
  basis: "hardpoints" | "planar",
): CarConnection {
  return {
    kind: "twists",
    basis,
    torsional: true,
    idle: undefined,
    statedFor: undefined,
    deflection(motion): CarDeflection {
      const a = angle(of, motion);
      const b = against === undefined ? NONE : angle(against, motion);
      const sense = against?.sense ?? 1;
      const other = against && wheel(against);
      const each = (i: number, own: number, theirs: number): number =>
        (i === wheel(of) ? own : 0) - (i === other ? sense * theirs : 0);
      return {
        s: a.value - sense * b.value,
        d: eachWheel((i) => each(i, a.d, b.d)),
        dd: eachPair((i, j) => (i === j ? each(i, a.dd, b.dd) : 0)),
      };
    },
  };
}
