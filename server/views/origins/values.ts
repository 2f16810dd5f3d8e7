/**
 * Every value of a car or set-up by its path, as it is in force: what may be asked about when nothing in particular is under the
 * cursor, or a block of them.
 */
import { findWord, opensAt, wordsIn } from "../../../grammar/vocabulary/index.js";
import type { CarModel, ResolvedStatement } from "../../model/car.js";
import type { AxleName, Origin } from "../../model/origin.js";
import { treeOf } from "../../model/property-at.js";
import { isSameStatement } from "../../model/same.js";
import { axleBlock, type TreeBlock } from "../../model/tree.js";
import { foundAt, valueOf } from "./steps.js";
import { type FileOf, writtenAt } from "./written.js";

export interface ValueEntry {
  readonly path: string;
  readonly value: string;
  /** Who says it; "the language" where nothing is written. */
  readonly by: string;
}

const AXLES = ["front", "rear"] as const;

/** @param under only what lies at or below this path; values that nothing is written of come last */
export function valuesOf(model: CarModel, under: readonly string[], fileOf: FileOf): readonly ValueEntry[] {
  const paths = writtenPaths(model).filter((path) => isUnder(path, under));
  const written = paths.flatMap((path) => entryOf(model, path, fileOf) ?? []);
  return [...written, ...unwritten(model, paths, under)];
}

/** Dotted paths of the lines that have a value, sides told apart where they differ. */
export function writtenPaths(model: CarModel): readonly (readonly string[])[] {
  const tree = treeOf(model);
  const ofCar = pathsIn(tree.block, []).filter(([first]) => !AXLES.some((axle) => axle === first));
  const cases = new Set(model.cases.map(({ name }) => name));
  const isOfCase = ([first = ""]: readonly string[]): boolean => cases.has(first);
  return [
    ...ofCar.filter((path) => !isOfCase(path)),
    ...AXLES.flatMap((axle) => pathsOfAxle(model, axle)),
    ...ofCar.filter(isOfCase),
  ];
}

function pathsOfAxle(model: CarModel, axle: AxleName): readonly (readonly string[])[] {
  const tree = treeOf(model);
  const [left, right] = [axleBlock(tree, axle, "left"), axleBlock(tree, axle, "right")];
  if (left === undefined) return [];
  const own = pathsIn(left, []);
  if (right === undefined || right === left) return own.map((path) => [axle, ...path]);
  const all = [...new Map([...own, ...pathsIn(right, [])].map((path) => [path.join("."), path])).values()];
  return all.flatMap((path) => {
    const [one, other] = [foundAt(model, [axle, "left", ...path]), foundAt(model, [axle, "right", ...path])];
    if (one !== undefined && other !== undefined && isSameStatement(one.statement, other.statement))
      return [[axle, ...path]];
    return [
      ...(one === undefined ? [] : [[axle, "left", ...path]]),
      ...(other === undefined ? [] : [[axle, "right", ...path]]),
    ];
  });
}

/** Blocks that paths leave out. */
const passedOver: ReadonlySet<string> = new Set(["linkage", "wheel"]);

function pathsIn(block: TreeBlock, around: readonly string[]): readonly (readonly string[])[] {
  return block.statements.flatMap((statement) => {
    if (isAmongMany(block, statement)) return [];
    const path = passedOver.has(statement.word) ? around : [...around, statement.name?.text ?? statement.word];
    const own = path === around ? [] : [path];
    return [...own, ...(statement.block === undefined ? [] : pathsIn(statement.block, path))];
  });
}

/** Expectations and the like have no path of their own. */
const isAmongMany = ({ concept }: TreeBlock, { word }: ResolvedStatement): boolean =>
  findWord(concept, word)?.times === "many";

export const isUnder = (path: readonly string[], under: readonly string[]): boolean =>
  under.every((name, i) => path[i] === name);

function entryOf(model: CarModel, path: readonly string[], fileOf: FileOf): ValueEntry | undefined {
  const found = foundAt(model, path);
  const rows = found?.statement.block?.rows.length ?? 0;
  const value = valueOf(found, path) ?? (rows === 0 ? undefined : `${rows} rows`);
  if (found === undefined || value === undefined) return undefined;
  return { path: path.join("."), value, by: writerOf(found.statement, fileOf) };
}

const writerOf = ({ origin }: { readonly origin: Origin }, fileOf: FileOf): string =>
  writtenAt(origin, fileOf)?.by ?? "";

/** Words that could stand in the blocks that are there and have something to fall back on. */
function unwritten(
  model: CarModel,
  written: readonly (readonly string[])[],
  under: readonly string[],
): readonly ValueEntry[] {
  const there = new Set(written.map((path) => path.join(".")));
  const blocks = [
    ...new Map([[under.join("."), under] as const, ...written.map((path) => [path.join("."), path] as const)]).values(),
  ];
  return blocks.flatMap((around) => {
    const block = blockAt(model, around);
    if (block === undefined) return [];
    return wordsIn(block.concept).flatMap((word) => {
      const path = [...around, word.word].join(".");
      const isOpen = word.times === "one" && word.fallback !== undefined && !there.has(path);
      return isOpen ? [{ path, value: word.fallback ?? "", by: "the language" }] : [];
    });
  });
}

function blockAt(model: CarModel, path: readonly string[]): Pick<TreeBlock, "concept"> | undefined {
  if (path.length === 0) return treeOf(model).block;
  const found = foundAt(model, path);
  if (found === undefined) {
    const [axle, more] = path;
    const isAxle = (axle === "front" || axle === "rear") && more === undefined;
    return isAxle ? axleBlock(treeOf(model), axle, "left") : undefined;
  }
  const { statement, parent } = found;
  if (statement.block !== undefined) return statement.block;
  const word = findWord(parent.concept, statement.word);
  const concept = word && opensAt(word, statement.form);
  return concept === undefined ? undefined : { concept };
}
