/**
 * Usual allowable stresses of spring materials, for parts whose maker states none: guidance, not a licence.
 *
 * Units: m, Pa.
 */
import type { Allowable } from "../strength.js";

/** Rm = A / dᵐ of chrome-silicon wire, MPa with d in mm. Source: Budynas & Nisbett, Shigley's, table 10-4 (from memory). */
const WIRE = { strength: 1974e6, exponent: 0.108 };
/** Share of the strength that shear may reach in a coil that was pressed solid beforehand. Source: the same, table 10-6. */
const SET = 0.65;

export function coilAllowable(wire: number, stated: number | undefined): Allowable {
  const usual = (SET * WIRE.strength) / (wire * 1000) ** WIRE.exponent;
  return {
    stated,
    oneWay: usual,
    bothWays: usual,
    source:
      "65 % of the strength of chrome-silicon wire of its size, Shigley's Mechanical Engineering Design, from memory",
  };
}

/** Pre-setting helps one way only. Source: DIN 2091 for 51CrV4 (from memory, to be taken as guidance). */
export const barAllowable = (stated: number | undefined): Allowable => ({
  stated,
  oneWay: 1020e6,
  bothWays: 700e6,
  source: "51CrV4 bars, pre-set where they are twisted one way only, DIN 2091, from memory",
});

/** Yield strength. Source: EN 10083-3 for 51CrV4 quenched and tempered, sections up to 16 mm (from memory). */
export const bladeAllowable = (stated: number | undefined): Allowable => ({
  stated,
  oneWay: 900e6,
  bothWays: 900e6,
  source: "yield strength of quenched and tempered 51CrV4, EN 10083-3, from memory",
});
