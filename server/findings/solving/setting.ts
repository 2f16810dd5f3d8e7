/**
 * A value that one property of a car could be given: the line that a set-up says it with, and what the property may be.
 *
 * Invariant: numbers are written with twelve digits in the author's unit, and are the numbers that are then read.
 */
import type { NumberAt, PropertyAt } from "../../model/property-at.js";
import { showQuantity, toSI, writeQuantity } from "../../quantities/index.js";

export interface Setting {
  /** `front.third.rate` */
  readonly path: string;
  /** "61.2 N/mm", "TB-115", "4" */
  readonly text: string;
  /** SI; undefined for a part. */
  readonly value: number | undefined;
  /** From the value in force, in its adjuster's steps. */
  readonly steps?: number;
}

export const lineOf = ({ path, text }: Setting): string => `${path} ${text}`;

export function numberSetting({ path, given }: NumberAt, si: number, steps?: number): Setting | undefined {
  const text = writeQuantity(si, given.unit);
  return text === undefined ? undefined : { path, text, value: si, ...(steps === undefined ? {} : { steps }) };
}

export const partSetting = (path: string, name: string): Setting => ({ path, text: name, value: undefined });

/** As it stands. */
export const presentText = (property: PropertyAt): string =>
  property.kind === "part" ? property.name : showQuantity(property.given.value, property.given.unit, 6);

/** Whether the property counts whole positions. */
export const isCounted = ({ dimension }: NumberAt): boolean => dimension === "count";

/** Where nothing is said of its adjuster: a change of a twentieth, in round numbers of the author's unit. */
export function stepOf({ given, step, count, dimension }: NumberAt): number {
  if (count !== undefined || dimension === "count") return 1;
  if (step !== undefined) return step.value;
  const unit = toSI(1, given.unit) ?? 1;
  const shown = Math.abs(given.value / unit) / 20;
  if (shown === 0) return unit;
  const power = 10 ** Math.floor(Math.log10(shown));
  const round = [5, 2, 1].find((digit) => digit * power <= shown * (1 + 1e-9)) ?? 1;
  return round * power * unit;
}

/** Between which values it is looked for: its limits, as far as it is seen in practice or a thousand times what it is. */
export function boundsOf({ given, limits, usual, count }: NumberAt): { readonly low: number; readonly high: number } {
  const { value } = given;
  const [from, to] = [Math.min(usual?.from ?? value, value), Math.max(usual?.to ?? value, value)];
  const reach = usual === undefined ? 1000 * (Math.abs(value) || toSI(1, given.unit) || 1) : 0;
  const least =
    limits?.atLeast ?? (limits?.above === undefined ? -Infinity : limits.above + 1e-6 * (to - limits.above));
  const most = limits?.atMost ?? (limits?.below === undefined ? Infinity : limits.below - 1e-6 * (limits.below - from));
  return { low: Math.max(least, from - reach), high: Math.min(most, count ?? Infinity, to + reach) };
}
