/**
 * The oil that cylinders push out of one enclosed volume: q = Σ a_i s_i, with s_i the compression of each cylinder
 * and a_i the area of the side that is joined: positive for the working side, negative for the far side, which
 * fills as the cylinder is compressed.
 *
 * Units: m³ with areas in m². Invariant: linear in the cylinders, so that derivatives are sums as well.
 */
import { type CarConnection, CAR_STILL, type CarDeflection, eachPair, eachWheel } from "../car-connection.js";
import type { Connection, Deflection, NoDeflection } from "../element.js";
import { STILL } from "./still.js";

/** One side of a cylinder that is joined to the volume. */
export interface Chamber<Joined> {
  readonly cylinder: Joined;
  /** m², with its sign. */
  readonly area: number;
}

const plus = (sum: Deflection, area: number, of: Deflection): Deflection => ({
  s: sum.s + area * of.s,
  dL: sum.dL + area * of.dL,
  dR: sum.dR + area * of.dR,
  dLL: sum.dLL + area * of.dLL,
  dLR: sum.dLR + area * of.dLR,
  dRR: sum.dRR + area * of.dRR,
});

const carPlus = (sum: CarDeflection, area: number, of: CarDeflection): CarDeflection => ({
  s: sum.s + area * of.s,
  d: eachWheel((i) => (sum.d[i] ?? 0) + area * (of.d[i] ?? 0)),
  dd: eachPair((i, j) => (sum.dd[i]?.[j] ?? 0) + area * (of.dd[i]?.[j] ?? 0)),
});

const shared = (chambers: readonly Chamber<Pick<Connection, "basis">>[]) => ({
  kind: "cylinders" as const,
  basis: chambers.some(({ cylinder }) => cylinder.basis === "planar") ? ("planar" as const) : ("hardpoints" as const),
  torsional: false,
  measure: "volume" as const,
  idle: undefined,
  statedFor: undefined,
});

/** The volume of an axle's cylinders. */
export function sweptVolume(chambers: readonly Chamber<Connection>[]): Connection {
  return {
    ...shared(chambers),
    deflection(motion): Deflection | NoDeflection {
      let sum = STILL;
      for (const { cylinder, area } of chambers) {
        const d = cylinder.deflection(motion);
        if ("kind" in d) return d;
        sum = plus(sum, area, d);
      }
      return sum;
    },
  };
}

/** The volume of cylinders anywhere on the car. */
export function carSweptVolume(chambers: readonly Chamber<CarConnection>[]): CarConnection {
  return {
    ...shared(chambers),
    deflection(motion): CarDeflection | NoDeflection {
      let sum = CAR_STILL;
      for (const { cylinder, area } of chambers) {
        const d = cylinder.deflection(motion);
        if ("kind" in d) return d;
        sum = carPlus(sum, area, d);
      }
      return sum;
    },
  };
}
