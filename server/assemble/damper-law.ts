/**
 * The law of a damper from its block: one damping, tables or knees for bump and rebound, or a measured curve; between
 * two settings where it has a clicker.
 */
import type { DamperLaw } from "../elements/element.js";
import {
  blended,
  constantDamping,
  damperLaw,
  damperTable,
  type HalfDamper,
  kneeDamper,
  scaled,
} from "../elements/laws/damper-law.js";
import type { ResolvedBlock } from "../model/car.js";
import { isLawless, isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, quantitiesOf, quantityOf, type Table, tableOf } from "./reading.js";

interface Half {
  readonly half: HalfDamper;
  readonly torsional: boolean;
  /** With its clicker at either end. */
  readonly ends?: { readonly closed: HalfDamper; readonly open: HalfDamper } | undefined;
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

/** Rows, a measured curve, or a knee. */
function settingOf(block: ResolvedBlock, word: string): Half | Lawless | undefined {
  const table = tableOf(blockOf(block, "curve")?.rows ?? block.rows);
  if (table === undefined) return kneeOf(block);
  return table.values.some((force) => force < 0) ? belowNought(word) : halfTable(table, 1);
}

const belowNought = (word: string): Lawless =>
  lawless(`its ${word} has a force below nought, where forces of either side are entered positive`, true, word);

const noSuchClick = (word: string, clicks: number, of: number): Lawless =>
  lawless(`its ${word} stands at click ${clicks} of ${of}, which it has not`, true, `${word}.clicks`);

/** Between `closed` and `open` by where the clicker stands; undefined without them. */
function betweenSettings(side: ResolvedBlock, word: string): Half | Lawless | undefined {
  const [closedBlock, openBlock] = [blockOf(side, "closed"), blockOf(side, "open")];
  if (closedBlock === undefined && openBlock === undefined) return undefined;
  if (closedBlock === undefined || openBlock === undefined) return lawless(`its ${word} needs both closed and open`);
  const [closed, open] = [settingOf(closedBlock, word), settingOf(openBlock, word)];
  if (closed === undefined || open === undefined) return lawless(`a setting of its ${word} has no points`);
  if (isLawless(closed)) return closed;
  if (isLawless(open)) return open;
  if (closed.torsional !== open.torsional)
    return lawless(`one setting of its ${word} is for twisting, the other is not`, true);
  const [clicks, of] = quantitiesOf(side, "clicks");
  if (clicks === undefined || of === undefined) {
    return lawless(`its ${word} does not say at which click of how many it stands (\`clicks 6 of 18\`)`);
  }
  if (!(of.value > 0 && clicks.value <= of.value)) return noSuchClick(word, clicks.value, of.value);
  const share = clicks.value / of.value;
  const ends = { closed: closed.half, open: open.half };
  return { ...closed, half: blended(closed.half, open.half, share), ends };
}

/** What clicks between that of the table and the one that is set make of it; the last click that leaves a force holds. */
function clicked(measured: Half, side: ResolvedBlock, word: string): Half | Lawless {
  const step = numberOf(side, "per-click");
  if (step === undefined) return measured;
  const [clicks, of] = quantitiesOf(side, "clicks");
  const at = numberOf(side, "measured-at");
  if (clicks === undefined || at === undefined) {
    return lawless(`its ${word} needs clicks and measured-at to know what per-click makes of the table`);
  }
  if (of !== undefined && !(clicks.value <= of.value)) return noSuchClick(word, clicks.value, of.value);
  const factorAt = (click: number): number => 1 + step * (at - click);
  const factor = factorAt(clicks.value);
  if (!(factor > 0))
    return lawless(`its ${word} would have no force left at ${clicks.value} clicks`, true, `${word}.clicks`);
  const setTo = (click: number): HalfDamper => scaled(measured.half, Math.max(0, factorAt(click)));
  const ends = of === undefined ? undefined : { closed: setTo(0), open: setTo(of.value) };
  return { ...measured, half: scaled(measured.half, factor), ends };
}

/** `bump` or `rebound`. */
function sideOf(block: ResolvedBlock, word: "bump" | "rebound"): Half | Lawless {
  const side = blockOf(block, word);
  if (side === undefined) return lawless(`it has no ${word}`);
  const half = betweenSettings(side, word) ?? settingOf(side, word);
  if (half === undefined) return lawless(`its ${word} has no points`);
  return isLawless(half) ? half : clicked(half, side, word);
}

function wholeCurve(block: ResolvedBlock): readonly [Half | Lawless, Half | Lawless] | undefined {
  const curve = blockOf(block, "curve");
  const table = curve && tableOf(curve.rows);
  if (table === undefined) return undefined;
  // At negative speed either sign is usual: as entered in a table, or as a bench measures it.
  const isDriven = table.values.some((force, i) => force < 0 && (table.keys[i] ?? 0) > 0);
  if (isDriven) return [belowNought("curve"), belowNought("curve")];
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

const gasOf = (block: ResolvedBlock) => ({
  force: numberOf(block, "gas-force") ?? 0,
  rate: numberOf(block, "gas-rate") ?? 0,
});

/** @param torsional of the connection; undefined where there is none */
export function damperLawOf(block: ResolvedBlock, torsional: boolean | undefined): DamperLaw | Lawless {
  const [bump, rebound] = bothOf(block);
  if (isLawless(bump)) return bump;
  if (isLawless(rebound)) return rebound;
  if (bump.torsional !== rebound.torsional)
    return lawless("one of its directions is for twisting, the other is not", true);
  const wrong = mismatch("damping", bump.torsional, torsional);
  if (wrong !== undefined) return wrong;
  const law = damperLaw(bump.half, rebound.half, torsional === true ? undefined : gasOf(block));
  return { ...law, settings: settingsOf(bump, rebound) };
}

/** All clickers closed, and open; a direction that has none stays as it is. */
function settingsOf(bump: Half, rebound: Half): DamperLaw["settings"] {
  if (bump.ends === undefined && rebound.ends === undefined) return undefined;
  const at = (end: "closed" | "open") => damperLaw(bump.ends?.[end] ?? bump.half, rebound.ends?.[end] ?? rebound.half);
  return { closed: at("closed"), open: at("open") };
}
