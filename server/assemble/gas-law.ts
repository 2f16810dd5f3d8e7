/** The charge of a gas spring or an accumulator, and the law of a gas spring, from their blocks. */
import type { SpringLaw } from "../elements/element.js";
import { constantArea, type EffectiveArea, tabledArea } from "../elements/laws/effective-area.js";
import { gasSpring, measuredGasCurve, measuredGasSpring } from "../elements/laws/gas-spring.js";
import { ATMOSPHERE, type GasCharge, heated } from "../elements/laws/polytropic.js";
import type { ResolvedBlock } from "../model/car.js";
import { isLawless, type Lawless, lawless, mismatch } from "./lawless.js";
import { blockOf, numberOf, tableOf } from "./reading.js";

/** What the vocabulary says holds where none is written: exponent, and 20 degC in K. */
const EXPONENT = 1.3;
const ROOM = 293.15;
/** Far beyond 1.67 of a monatomic gas. */
const STEEPEST = 3;

/** The charge at its working temperature, absolute. `whose` begins the reason where there is none: "its accumulator". */
export function chargeOf(block: ResolvedBlock, whose: string): GasCharge | Lawless {
  const gauge = numberOf(block, "pressure");
  const volume = numberOf(block, "volume");
  if (gauge === undefined || volume === undefined) return lawless(`${whose} needs pressure and volume`);
  const exponent = numberOf(block, "exponent") ?? EXPONENT;
  const charged = numberOf(block, "charge-temperature") ?? ROOM;
  const working = numberOf(block, "working-temperature") ?? charged;
  if (!(volume > 0)) return lawless(`${whose} has no volume of gas that could be compressed`, true);
  if (!(exponent >= 1 && exponent <= STEEPEST)) return lawless(`${whose} has an exponent that no gas has`, true);
  const pressure = heated(gauge + ATMOSPHERE, charged, working);
  if (!(charged > 0 && pressure > 0 && Number.isFinite(pressure)))
    return lawless(`${whose} has no pressure above absolute nought`, true);
  return { pressure, volume, exponent };
}

/** A table of areas goes before one number. */
function areaOf(block: ResolvedBlock): EffectiveArea | Lawless {
  const rows = blockOf(block, "area-curve")?.rows;
  const table = rows && tableOf(rows);
  if (table !== undefined) {
    if (table.keys.length < 2) return lawless("its area curve has fewer than two points");
    if (!table.values.every((area) => area > 0))
      return lawless("its area curve has an area that is not positive", true, "area-curve");
    return tabledArea(table.keys, table.values);
  }
  const area = numberOf(block, "area");
  if (area === undefined) return lawless("it has no area");
  return area > 0 ? constantArea(area) : lawless("its area is not positive", true);
}

function measured(block: ResolvedBlock, gap: number | undefined): SpringLaw | Lawless | undefined {
  const rows = blockOf(block, "curve")?.rows;
  const table = rows && tableOf(rows);
  if (table === undefined) return undefined;
  if (table.keys.length < 2) return lawless("its curve has fewer than two points");
  const curve = measuredGasCurve(table.keys, table.values);
  if (gap !== undefined && curve.force(0) < 0)
    return lawless("its curve pulls at nought, which nothing behind a gap can do", true, "curve");
  return measuredGasSpring(curve, gap);
}

/** @param torsional of the connection; undefined where there is none */
export function gasSpringLaw(block: ResolvedBlock, torsional: boolean | undefined): SpringLaw | Lawless {
  const wrong = mismatch("gas", false, torsional);
  if (wrong !== undefined) return wrong;
  const gap = numberOf(block, "gap");
  const curve = measured(block, gap);
  if (curve !== undefined) return curve;
  const charge = chargeOf(block, "its gas");
  if (isLawless(charge)) return charge;
  const by = areaOf(block);
  if (isLawless(by)) return by;
  if (gap !== undefined && charge.pressure < ATMOSPHERE)
    return lawless(
      "its charge is below atmosphere, so that nothing presses its rod against what is behind its gap",
      true,
    );
  return gasSpring(charge, by, gap);
}
