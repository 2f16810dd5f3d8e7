/** Reading numbers and words out of a resolved block. What does not fit its word is as if it were not there. */
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { ResolvedBlock, ResolvedRow, ResolvedStatement } from "../model/car.js";
import { dimensionOfUnit } from "../quantities/index.js";

export interface Quantity {
  /** SI. */
  readonly value: number;
  readonly dimension: DimensionName;
}

export function statementOf(block: ResolvedBlock | undefined, word: string): ResolvedStatement | undefined {
  return block?.statements.find((statement) => statement.word === word && statement.form >= 0);
}

export const blockOf = (block: ResolvedBlock | undefined, word: string): ResolvedBlock | undefined =>
  statementOf(block, word)?.block;

/** The numbers of a statement, in order (`position 3 of 5`, `section 8 x 30 mm`). */
export function quantitiesOf(block: ResolvedBlock | undefined, word: string): readonly Quantity[] {
  const values = statementOf(block, word)?.values ?? [];
  return values.flatMap((value) =>
    value.kind === "number" ? [{ value: value.value, dimension: value.dimension }] : [],
  );
}

export const quantityOf = (block: ResolvedBlock | undefined, word: string): Quantity | undefined =>
  quantitiesOf(block, word)[0];

export const numberOf = (block: ResolvedBlock | undefined, word: string): number | undefined =>
  quantityOf(block, word)?.value;

export interface Range {
  readonly from: number;
  readonly to: number;
  readonly torsional: boolean;
}

/** The range behind a word (`stroke -28 .. 22 mm`), in rising order; angles are told from lengths by their unit. */
export function rangeOf(block: ResolvedBlock | undefined, word: string): Range | undefined {
  const [value] = statementOf(block, word)?.values ?? [];
  if (value?.kind !== "range") return undefined;
  const [one, other] = value.value;
  const torsional = dimensionOfUnit(value.unit) === "angle";
  return { from: Math.min(one, other), to: Math.max(one, other), torsional };
}

export function wordOf(block: ResolvedBlock | undefined, word: string): string | undefined {
  const [value] = statementOf(block, word)?.values ?? [];
  return value?.kind === "word" ? value.text : undefined;
}

export interface Table {
  readonly keys: readonly number[];
  readonly values: readonly number[];
  /** Of the values. */
  readonly dimension: DimensionName;
}

/** The rows of a block as numbers, in rising order of their keys; undefined where there are none. */
export function tableOf(rows: readonly ResolvedRow[]): Table | undefined {
  const keys: number[] = [];
  const values: number[] = [];
  let dimension: DimensionName | undefined;
  for (const { key, value } of rows) {
    const rises = key.kind === "number" && key.value > (keys.at(-1) ?? -Infinity);
    if (key.kind !== "number" || value.kind !== "number" || !rises) continue;
    keys.push(key.value);
    values.push(value.value);
    dimension ??= value.dimension;
  }
  return dimension === undefined ? undefined : { keys, values, dimension };
}
