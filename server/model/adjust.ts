/** `by`: what is inherited, and something added to it; turns of an adjuster count by its thread. */
import type { Item, Statement } from "../../grammar/index.js";
import { matchesDimension, parseUnit } from "../quantities/index.js";
import type { Slot, Word } from "../../grammar/vocabulary/word.js";
import { mayHaveThread, threadOf, unitAfter } from "./adjuster.js";
import type { ResolvedValue } from "./car.js";
import { reportForm } from "./expressions.js";
import { plainWord } from "./forms.js";
import { checkRange } from "./limits.js";
import { chainAfter } from "./provenance.js";
import type { Reader } from "./reader.js";
import { mirrorCoordinates } from "./sides.js";
import { at } from "./sink.js";
import type { TreeBlock, TreeStatement } from "./tree.js";
import { readNumber, readPoint } from "./values.js";

/** Whether an override adds: `trim by push-rod` is a form of its own and does not. */
export function isAdjustment(word: Word, items: readonly Item[]): boolean {
  if (plainWord(items[0]) !== "by") return false;
  return !word.takes.some((form) => form[0]?.kind === "keyword" && form[0].word === "by");
}

export interface Adjusted {
  readonly values: readonly ResolvedValue[] | undefined;
  readonly deferred: boolean;
}

/** The target's values with the first number or point moved. The reader has been turned to the line. */
export function adjusted(
  word: Word,
  target: TreeStatement,
  parent: TreeBlock,
  raw: Statement,
  reader: Reader,
  mirrored: boolean,
): Adjusted {
  const [, item, more] = raw.items;
  const index = target.values.findIndex((value) => value.kind === "number" || value.kind === "point");
  const value = target.values[index];
  if (item === undefined || more !== undefined || value === undefined) {
    const spoken = raw.head.segments.at(-1)?.text ?? word.word;
    const expected = value === undefined ? [] : [`${spoken} by ${changeOf(value)}`];
    const detail = value === undefined ? "Only a number or a point can be adjusted." : undefined;
    reader.report({ ...at(reader.uri, more ?? raw.head), kind: "wrong-form", word: spoken, expected, detail });
    return { values: undefined, deferred: false };
  }
  const moved = move(value, item, reader.on(reader.statement, word.word, undefined), {
    word,
    target,
    parent,
    mirrored,
  });
  return { values: moved && target.values.map((other, i) => (i === index ? moved : other)), deferred: reader.deferred };
}

/** How a change of the value is written: in its own unit. */
function changeOf(value: ResolvedValue): string {
  if (value.kind === "point") return value.value.length === 2 ? "(y, z) mm" : "(x, y, z) mm";
  return value.kind === "number" ? `CHANGE ${value.unit}`.trim() : "CHANGE";
}

interface Adjusting {
  readonly word: Word;
  readonly target: TreeStatement;
  readonly parent: TreeBlock;
  readonly mirrored: boolean;
}

function move(value: ResolvedValue, item: Item, reader: Reader, how: Adjusting): ResolvedValue | undefined {
  if (value.kind === "number") return moveNumber(value, item, reader, how);
  if (value.kind !== "point") return undefined;
  if (item.kind !== "tuple") {
    const detail = "A point is moved by as many coordinates as it has.";
    reader.report({ ...at(reader.uri, item), kind: "wrong-form", word: how.word.word, expected: [], detail });
    return undefined;
  }
  const size = value.value.length === 2 ? 2 : 3;
  const dimension = value.unit === "" ? "number" : "length";
  const change = readPoint(item, { kind: "point", size, dimension }, reader);
  if (change?.kind !== "point") return undefined;
  const by = how.mirrored ? mirrorCoordinates(change.value) : change.value;
  const moved = value.value.map((coordinate, index) => coordinate + (by[index] ?? 0));
  if (!moved.every(Number.isFinite)) return beyondBounds(item, reader);
  return { ...change, value: moved, unit: value.unit, chain: chainAfter(value) };
}

function beyondBounds(item: Item, reader: Reader): undefined {
  reportForm(item, reader, "Its sum with what is inherited is beyond all bounds.");
}

type NumberValue = Extract<ResolvedValue, { kind: "number" }>;

function moveNumber(value: NumberValue, item: Item, reader: Reader, how: Adjusting): ResolvedValue | undefined {
  const { word, target, parent } = how;
  const thread = isInTurns(item) ? threadOf(target, parent) : undefined;
  if (thread === undefined && isInTurns(item) && mayHaveThread(target, parent)) {
    reader.report({ ...at(reader.uri, item), kind: "no-thread", word: word.word, statement: reader.statement });
    return undefined;
  }
  const dimension = thread === undefined ? value.dimension : "turns";
  const change = readNumber(item, { kind: "quantity", dimension }, reader, undefined);
  if (change === undefined) return undefined;
  // A change of temperature is counted from nought, not from freezing.
  const by = change.value - (parseUnit(change.unit)?.offset ?? 0);
  const moved = value.value + by * (thread?.value ?? 1);
  if (!Number.isFinite(moved)) return beyondBounds(item, reader);
  const slot = word.takes[target.form]?.find((known) => known.kind === "quantity") as Slot & { kind: "quantity" };
  const unit = unitAfter(value, change, thread);
  const shown = { si: moved, unit, dimension: value.dimension };
  if (!checkRange(word, slot, shown, change.origin, reader)) return undefined;
  return {
    ...change,
    dimension: value.dimension,
    value: moved,
    unit,
    chain: chainAfter(value),
  };
}

const isInTurns = (item: Item): boolean => {
  const unit = item.kind === "quantity" && item.unit !== undefined ? parseUnit(item.unit.text) : undefined;
  return unit !== undefined && matchesDimension(unit, "turns");
};
