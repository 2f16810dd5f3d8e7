/** Laws of springs and bump stops from their blocks. */
import type { SpringLaw } from "../elements/element.js";
import { coilRate } from "../elements/laws/coil.js";
import type { Curve } from "../elements/laws/curve.js";
import { linear } from "../elements/laws/linear.js";
import { powerLaw } from "../elements/laws/power-law.js";
import { inSeries, twoInSeries } from "../elements/laws/series.js";
import { type Acts, springLaw } from "../elements/laws/spring-law.js";
import { tableCurve } from "../elements/laws/table.js";
import { torsionBarRate } from "../elements/laws/torsion-bar.js";
import type { ResolvedBlock } from "../model/car.js";
import { isLawless, isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, quantityOf, tableOf, wordOf } from "./reading.js";
import { twoWayOf } from "./two-way-law.js";

/** Spring steel, Pa: the vocabulary's fallback for `modulus`. */
const SHEAR_MODULUS = 79.3e9;

interface Base {
  readonly curve: Curve;
  readonly torsional: boolean;
  readonly what: string;
}

/** The rate of a torsion bar: as measured, else from its dimensions; undefined where these are not complete. */
export function torsionRate(bar: ResolvedBlock): number | Lawless {
  const measured = numberOf(bar, "rate");
  if (measured !== undefined) return measured;
  const diameter = numberOf(bar, "diameter");
  const length = numberOf(bar, "length");
  if (diameter === undefined || length === undefined)
    return lawless("its torsion bar has neither a rate nor diameter and length");
  const bore = numberOf(bar, "bore") ?? 0;
  if (!(bore < diameter)) {
    const reason = "the bore of its torsion bar is not smaller than its diameter";
    return lawless(reason, true, "torsion-bar.bore", "torsion-bar.diameter");
  }
  return torsionBarRate({ diameter, bore, length, shearModulus: numberOf(bar, "modulus") ?? SHEAR_MODULUS });
}

function coilOf(coil: ResolvedBlock): number | Lawless {
  const stated = numberOf(coil, "rate");
  if (stated !== undefined) return stated;
  const wire = numberOf(coil, "wire");
  const mean = numberOf(coil, "mean-diameter");
  const turns = numberOf(coil, "active-turns");
  if (wire === undefined || mean === undefined || turns === undefined) {
    return lawless("its coil has neither a rate nor wire, mean-diameter and active-turns");
  }
  if (!(mean > wire)) {
    const reason = "the mean diameter of its coil is not larger than its wire";
    return lawless(reason, true, "coil.mean-diameter", "coil.wire");
  }
  if ((numberOf(coil, "total-turns") ?? turns) < turns) {
    return lawless("its coil has fewer turns in all than active ones", true, "coil.total-turns", "coil.active-turns");
  }
  return coilRate({ wire, mean, turns, shearModulus: numberOf(coil, "modulus") ?? SHEAR_MODULUS });
}

const based = (rate: number | Lawless, torsional: boolean, what: string): Base | Lawless =>
  typeof rate !== "number"
    ? rate
    : rate > 0
      ? { curve: linear(rate), torsional, what }
      : lawless(`its ${what} gives no positive rate`, true);

function curveOf(block: ResolvedBlock): Base | Lawless | undefined {
  const rows = blockOf(block, "curve")?.rows;
  const table = rows && tableOf(rows);
  if (table === undefined) return undefined;
  const { keys, values, dimension } = table;
  const points = keys.length + ((keys[0] ?? 0) > 0 ? 1 : 0);
  if (points < 2) return lawless("its curve has fewer than two points");
  const falls = values.some((value, i) => i > 0 && value < (values[i - 1] ?? 0));
  if (falls || ((keys[0] ?? 0) > 0 && (values[0] ?? 0) < 0))
    return lawless("its curve falls, which would be a negative rate", true, "curve");
  return { curve: tableCurve(keys, values), torsional: isTorsional(dimension), what: "curve" };
}

/** The curve that the element's words give; a stated rate goes before one that follows from dimensions. */
function baseOf(block: ResolvedBlock): Base | Lawless {
  const rate = quantityOf(block, "rate");
  if (rate !== undefined) return based(rate.value, isTorsional(rate.dimension), "rate");
  const coil = blockOf(block, "coil");
  if (coil !== undefined) return based(coilOf(coil), false, "coil");
  const bar = blockOf(block, "torsion-bar");
  if (bar !== undefined) return based(torsionRate(bar), true, "torsion bar");
  const both = twoWayOf(block);
  if (both !== undefined) return isLawless(both) ? both : { ...both, what: "squat and rise" };
  return curveOf(block) ?? powerLawOf(block) ?? lawless("it has no rate");
}

function powerLawOf(block: ResolvedBlock): Base | Lawless | undefined {
  const law = blockOf(block, "power-law");
  if (law === undefined) return undefined;
  const force = numberOf(law, "force");
  const deflection = numberOf(law, "deflection");
  const exponent = numberOf(law, "exponent");
  if (force === undefined || deflection === undefined || exponent === undefined) {
    return lawless("its power law needs force, deflection and exponent");
  }
  if (!(force > 0 && deflection > 0 && exponent >= 1))
    return lawless("its power law gives no rising force", true, "power-law");
  return { curve: powerLaw(force, deflection, exponent), torsional: false, what: "power law" };
}

function withTender(base: Base, block: ResolvedBlock): Base | Lawless {
  const tender = blockOf(block, "tender");
  if (tender === undefined) return base;
  const rate = numberOf(tender, "rate");
  const travel = numberOf(tender, "travel");
  if (rate === undefined || travel === undefined) return lawless("its tender needs rate and travel");
  if (base.torsional)
    return lawless("its tender is for lengthening and shortening, but the spring twists", true, "tender");
  if (!(rate > 0 && travel > 0)) return lawless("its tender gives no positive rate", true);
  return { ...base, curve: inSeries(base.curve, { rate, travel }) };
}

/** Gap and preload have to be those of the motion: lengths and forces, or angles and moments. */
function fittingMismatch(block: ResolvedBlock, torsional: boolean): Lawless | undefined {
  for (const word of ["gap", "preload"]) {
    const quantity = quantityOf(block, word);
    const wrong = quantity && mismatch(word, isTorsional(quantity.dimension), torsional);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
}

const ACTS: readonly string[] = ["in-compression", "in-tension", "both-ways"] satisfies readonly Acts[];
const isActs = (word: string | undefined): word is Acts => word !== undefined && ACTS.includes(word);

function fitted(curve: Curve, acts: Acts, gap: number | undefined, preload: number | undefined): SpringLaw | Lawless {
  const law = springLaw(curve, { acts, gap, preload });
  if (law === "gap-and-preload")
    return lawless("a gap and a preload cannot both hold at design position", true, "gap", "preload");
  return law === "preload-out-of-reach"
    ? lawless("its preload is more than it can give at any deflection", true, "preload")
    : law;
}

/** What cannot stand beside `squat` and `rise`, which say themselves how the spring works in each direction. */
function besideTwoWays(block: ResolvedBlock): Lawless | undefined {
  if (blockOf(block, "squat") === undefined) return undefined;
  const acts = wordOf(block, "acts");
  if (acts !== undefined && acts !== "both-ways") return lawless(`it acts ${acts}, and has a squat and a rise`, true);
  if (blockOf(block, "tender") === undefined) return undefined;
  return lawless("its tender is a stage in both directions, and its squat and rise have stages of their own", true);
}

/**
 * @param torsional of the connection; undefined where there is none
 * @param tied two equal bars in series, one in each rocker
 */
export function springLawOf(block: ResolvedBlock, torsional: boolean | undefined, tied: boolean): SpringLaw | Lawless {
  const base = baseOf(block);
  if (isLawless(base)) return base;
  const wrong =
    mismatch(base.what, base.torsional, torsional) ?? fittingMismatch(block, base.torsional) ?? besideTwoWays(block);
  if (wrong !== undefined) return wrong;
  const whole = withTender(base, block);
  if (isLawless(whole)) return whole;
  const gap = numberOf(block, "gap");
  const stated = wordOf(block, "acts");
  const both = gap === undefined || blockOf(block, "squat") !== undefined;
  const acts = isActs(stated) ? stated : both ? "both-ways" : "in-compression";
  return fitted(tied ? twoInSeries(whole.curve) : whole.curve, acts, gap, numberOf(block, "preload"));
}

/** A stop pushes only; packers are taken off its gap, and more of them than there is gap load it at design. */
export function bumpStopLaw(block: ResolvedBlock, torsional: boolean | undefined): SpringLaw | Lawless {
  const base = baseOf(block);
  if (isLawless(base)) return base;
  const wrong = mismatch(base.what, base.torsional, torsional) ?? fittingMismatch(block, base.torsional);
  if (wrong !== undefined) return wrong;
  const gap = numberOf(block, "gap");
  const packer = numberOf(block, "packer");
  const left = gap === undefined && packer === undefined ? undefined : (gap ?? 0) - (packer ?? 0);
  return fitted(base.curve, "in-compression", left, numberOf(block, "preload"));
}
