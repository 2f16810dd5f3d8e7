/**
 * A deflection that is stated instead of drawn: one number or a measured table a mode.
 *
 * Ratios are deflection per wheel travel with *both* wheels moved in that mode, m/m or rad/m;
 * heave and roll parts add up: s = f_h((z_L + z_R)/2) + f_r(q). The roll pattern is (−, +), so
 * q = (z_R − z_L)/2 for a telescopic element; twist is positive as the left wheel's bump makes it,
 * so q = (z_L − z_R)/2 for a torsional one. A corner element follows its own wheel: s = f_c(z).
 *
 * Invariant: zero at design, whatever the table says there.
 */
import type { AxleMotion, Jet } from "../../linkage/corner.js";
import { monotone } from "../../maths/monotone.js";
import type { Connection, Deflection, Mode } from "../element.js";
import { STILL } from "./still.js";

/** Deflection and its derivatives against travel. */
export type RatioCurve = (travel: number) => Jet;

export function constantRatio(ratio: number): RatioCurve {
  return (travel) => ({ value: ratio * travel, d: ratio, dd: 0 });
}

/**
 * Measured points, monotone between them and straight on beyond.
 * @param travel m, strictly increasing, two or more
 * @param deflection m or rad, as many
 */
export function tabledRatio(travel: readonly number[], deflection: readonly number[]): RatioCurve {
  const through = monotone(travel, deflection);
  const atDesign = through.value(0);
  return (z) => ({ value: through.value(z) - atDesign, d: through.slope(z), dd: through.curvature(z) });
}

export interface Ratios {
  readonly corner?: RatioCurve | undefined;
  readonly heave?: RatioCurve | undefined;
  readonly roll?: RatioCurve | undefined;
}

const NONE: Jet = { value: 0, d: 0, dd: 0 };

function axleDeflection(ratios: Ratios, torsional: boolean, motion: AxleMotion): Deflection {
  const zL = motion.left.travel;
  const zR = motion.right.travel;
  const sense = torsional ? -1 : 1;
  const heave = ratios.heave?.((zL + zR) / 2) ?? NONE;
  const roll = ratios.roll?.((sense * (zR - zL)) / 2) ?? NONE;
  const rollSlope = (sense * roll.d) / 2;
  return {
    s: heave.value + roll.value,
    dL: heave.d / 2 - rollSlope,
    dR: heave.d / 2 + rollSlope,
    dLL: (heave.dd + roll.dd) / 4,
    dLR: (heave.dd - roll.dd) / 4,
    dRR: (heave.dd + roll.dd) / 4,
  };
}

function cornerDeflection(curve: RatioCurve, side: "left" | "right", motion: AxleMotion): Deflection {
  const { value, d, dd } = curve(motion[side].travel);
  return side === "left" ? { ...STILL, s: value, dL: d, dLL: dd } : { ...STILL, s: value, dR: d, dRR: dd };
}

/** @param side that of a corner element; undefined for one that joins both sides */
export function byRatios(ratios: Ratios, torsional: boolean, side: "left" | "right" | undefined): Connection {
  const statedFor = (["corner", "heave", "roll"] as const).filter((mode: Mode & keyof Ratios) => ratios[mode]);
  const { corner } = ratios;
  const deflection: Connection["deflection"] =
    side !== undefined && corner !== undefined
      ? (motion) => cornerDeflection(corner, side, motion)
      : (motion) => axleDeflection(ratios, torsional, motion);
  return { kind: "ratio", basis: "ratio", torsional, idle: undefined, statedFor, deflection };
}
