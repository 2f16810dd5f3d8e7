/** A spring that works both ways, from its `squat` and `rise`: rates with a knee, rows, or a measured curve in each. */
import { type Curve, twoWay } from "../elements/laws/curve.js";
import { kneeCurve, linear } from "../elements/laws/linear.js";
import { tableCurve } from "../elements/laws/table.js";
import type { ResolvedBlock } from "../model/car.js";
import { isLawless, isTorsional, type Lawless, lawless } from "./lawless.js";
import { blockOf, numberOf, quantityOf, tableOf } from "./reading.js";

interface Way {
  readonly curve: Curve;
  readonly torsional: boolean;
}

function kneeOf(side: ResolvedBlock, word: string): Way | Lawless | undefined {
  const soft = quantityOf(side, "soft");
  const hard = quantityOf(side, "hard");
  const knee = numberOf(side, "knee");
  if (soft === undefined && hard === undefined && knee === undefined) return undefined;
  if (soft === undefined || hard === undefined || knee === undefined) {
    return lawless(`its ${word} needs soft, knee and hard`);
  }
  if (!(soft.value > 0 && knee > 0)) return lawless(`its ${word} gives no positive rate`, true);
  if (hard.value < soft.value) {
    return lawless(
      `its ${word} is softer beyond the knee, which no stage that is used up can make it`,
      true,
      `${word}.hard`,
    );
  }
  return { curve: kneeCurve(soft.value, knee, hard.value), torsional: isTorsional(soft.dimension) };
}

function rowsOf(side: ResolvedBlock, word: string): Way | Lawless | undefined {
  const table = tableOf(blockOf(side, "curve")?.rows ?? side.rows);
  if (table === undefined) return undefined;
  const keys: number[] = [];
  const values: number[] = [];
  for (const [i, key] of table.keys.entries()) {
    if (!(key > 0)) continue;
    keys.push(key);
    values.push(table.values[i] ?? 0);
  }
  if (keys.length === 0) return lawless(`its ${word} has no points above nought`);
  if (values.some((value, i) => value < (values[i - 1] ?? 0))) {
    return lawless(`its ${word} falls, which would be a negative rate`, true, word);
  }
  return { curve: tableCurve(keys, values), torsional: isTorsional(table.dimension) };
}

function wayOf(block: ResolvedBlock, word: "squat" | "rise"): Way | Lawless {
  const side = blockOf(block, word);
  if (side === undefined) return lawless(`it works both ways and has no ${word}`);
  const rate = quantityOf(side, "rate");
  if (rate !== undefined) {
    if (!(rate.value > 0)) return lawless(`its ${word} gives no positive rate`, true);
    return { curve: linear(rate.value), torsional: isTorsional(rate.dimension) };
  }
  return rowsOf(side, word) ?? kneeOf(side, word) ?? lawless(`its ${word} has neither rates nor points`);
}

/** @returns undefined where neither is written */
export function twoWayOf(block: ResolvedBlock): Way | Lawless | undefined {
  if (blockOf(block, "squat") === undefined && blockOf(block, "rise") === undefined) return undefined;
  const squat = wayOf(block, "squat");
  const rise = wayOf(block, "rise");
  if (isLawless(squat)) return squat;
  if (isLawless(rise)) return rise;
  if (squat.torsional !== rise.torsional) {
    return lawless("one of its directions is for twisting, the other is not", true);
  }
  return { curve: twoWay(squat.curve, rise.curve), torsional: squat.torsional };
}
