/** The law of a damper from its block: one damping, tables or knees for bump and rebound, or a measured curve. */
import type { DamperLaw } from "../elements/element.js";
import { constantDamping, damperLaw, damperTable, type HalfDamper, kneeDamper } from "../elements/laws/damper-law.js";
import type { ResolvedBlock } from "../model/car.js";
import { isLawless, isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, quantityOf, type Table, tableOf } from "./reading.js";

interface Half {
  readonly half: HalfDamper;
  readonly torsional: boolean;
}

/** One side of a table: speeds of one sign, both entered positive; the origin is understood. */
function halfTable({ keys, values, dimension }: Table, sign: 1 | -1): Half | undefined {
  const speeds: number[] = [];
  const forces: number[] = [];
  const order = sign === 1 ? keys.map((_, i) => i) : keys.map((_, i) => keys.length - 1 - i);
  for (const i of order) {
    const speed = sign * (keys[i] ?? 0);
    if (!(speed > 0)) continue;
    speeds.push(speed);
    forces.push(Math.abs(values[i] ?? 0));
  }
  return speeds.length === 0 ? undefined : { half: damperTable(speeds, forces), torsional: isTorsional(dimension) };
}

function kneeOf(block: ResolvedBlock): Half | Lawless | undefined {
  const slow = quantityOf(block, "slow");
  const fast = numberOf(block, "fast");
  const knee = numberOf(block, "knee");
  if (slow === undefined && fast === undefined && knee === undefined) return undefined;
  if (slow === undefined || fast === undefined || knee === undefined)
    return lawless("its knee needs slow, knee and fast");
  return { half: kneeDamper(slow.value, knee, fast), torsional: isTorsional(slow.dimension) };
}

/** `bump` or `rebound`: rows, a measured curve, or a knee. */
function sideOf(block: ResolvedBlock, word: "bump" | "rebound"): Half | Lawless {
  const side = blockOf(block, word);
  if (side === undefined) return lawless(`it has no ${word}`);
  const table = tableOf(blockOf(side, "curve")?.rows ?? side.rows);
  const half = table === undefined ? kneeOf(side) : halfTable(table, 1);
  return half ?? lawless(`its ${word} has no points`);
}

function wholeCurve(block: ResolvedBlock): readonly [Half | Lawless, Half | Lawless] | undefined {
  const curve = blockOf(block, "curve");
  const table = curve && tableOf(curve.rows);
  if (table === undefined) return undefined;
  return [
    halfTable(table, 1) ?? lawless("its curve has no points at positive speed, which is bump"),
    halfTable(table, -1) ?? lawless("its curve has no points at negative speed, which is rebound"),
  ];
}

function bothOf(block: ResolvedBlock): readonly [Half | Lawless, Half | Lawless] {
  const damping = quantityOf(block, "damping");
  if (damping !== undefined) {
    const half = { half: constantDamping(damping.value), torsional: isTorsional(damping.dimension) };
    return [half, half];
  }
  const curve = wholeCurve(block);
  if (curve !== undefined) return curve;
  if (blockOf(block, "bump") === undefined && blockOf(block, "rebound") === undefined) {
    const none = lawless("it has no damping");
    return [none, none];
  }
  return [sideOf(block, "bump"), sideOf(block, "rebound")];
}

/** @param torsional of the connection; undefined where there is none */
export function damperLawOf(block: ResolvedBlock, torsional: boolean | undefined): DamperLaw | Lawless {
  const [bump, rebound] = bothOf(block);
  if (isLawless(bump)) return bump;
  if (isLawless(rebound)) return rebound;
  if (bump.torsional !== rebound.torsional)
    return lawless("one of its directions is for twisting, the other is not", true);
  return (
    mismatch("damping", bump.torsional, torsional) ??
    damperLaw(bump.half, rebound.half, torsional === true ? 0 : (numberOf(block, "gas-force") ?? 0))
  );
}
