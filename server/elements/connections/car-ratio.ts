/**
 * A deflection of an element between the axles that is stated instead of drawn: one number or a measured table a mode.
 *
 * Ratios are deflection per travel of *every* wheel in that mode's pattern; parts add up: s = Σ f_m(q_m) with
 * q_m = Σ p_mi z_i / 4. Twist is positive as the front left wheel's bump makes it, so that q is turned round in roll
 * and warp for a torsional element.
 *
 * Invariant: zero at design, whatever the table says there.
 */
import type { AxleMotion } from "../../linkage/corner.js";
import {
  type CarConnection,
  CAR_STILL,
  type CarDeflection,
  eachPair,
  eachWheel,
  type Wheels,
} from "../car-connection.js";
import { type CarMode, PATTERNS } from "../patterns.js";
import type { RatioCurve } from "./ratio.js";

export type CarRatios = ReadonlyMap<CarMode, RatioCurve>;

const travels = ({ left, right }: AxleMotion): readonly [number, number] => [left.travel, right.travel];

/** How much each wheel moves a mode's amplitude. */
function sharesOf(mode: CarMode, torsional: boolean): Wheels {
  const sense = torsional && PATTERNS[mode][0] < 0 ? -1 : 1;
  return eachWheel((wheel) => (sense * (PATTERNS[mode][wheel] ?? 0)) / 4);
}

function plus(sum: CarDeflection, curve: RatioCurve, shares: Wheels, z: readonly number[]): CarDeflection {
  const of = (wheel: number): number => shares[wheel] ?? 0;
  const { value, d, dd } = curve(z.reduce((amplitude, travel, wheel) => amplitude + of(wheel) * travel, 0));
  return {
    s: sum.s + value,
    d: eachWheel((i) => (sum.d[i] ?? 0) + d * of(i)),
    dd: eachPair((i, j) => (sum.dd[i]?.[j] ?? 0) + dd * of(i) * of(j)),
  };
}

export function byCarRatios(ratios: CarRatios, torsional: boolean): CarConnection {
  return {
    kind: "ratio",
    basis: "ratio",
    torsional,
    idle: undefined,
    statedFor: [...ratios.keys()],
    deflection({ front, rear }) {
      const z = [...travels(front), ...travels(rear)];
      let sum = CAR_STILL;
      for (const [mode, curve] of ratios) sum = plus(sum, curve, sharesOf(mode, torsional), z);
      return sum;
    },
  };
}
