/** What the language takes where nothing is written: the vocabulary's word for it, as a step without a place. */
import { findWord } from "../../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../../grammar/vocabulary/word.js";
import type { CarModel } from "../../model/car.js";
import { treeOf } from "../../model/property-at.js";
import { routeOf, startOf } from "../../model/steps.js";
import { wordIn } from "../../model/tree.js";
import { foundAt, type Step } from "./steps.js";

/** Undefined where the path leads to no word of the language, or to one that has nothing to fall back on. */
export function defaultStep(model: CarModel, path: readonly string[]): Step | undefined {
  const word = wordAt(model, path);
  if (word?.fallback === undefined) return undefined;
  const text = `When "${word.word}" is absent: ${word.fallback}`;
  return { kind: "default", by: "the language", text, origin: undefined, value: word.fallback };
}

/** The vocabulary's row for the end of a path, whether it is written or not. */
export function wordAt(model: CarModel, path: readonly string[]): Word | undefined {
  const last = path.at(-1) ?? "";
  return conceptsAt(model, path.slice(0, -1))
    .map((concept) => findWord(concept, last))
    .find((word) => word !== undefined);
}

/** The kinds of block that the next word may stand in: of an axle also its wheel's and its linkage's. */
function conceptsAt(model: CarModel, path: readonly string[]): readonly Concept[] {
  const tree = treeOf(model);
  const route = routeOf(tree, path);
  const block =
    route.rest.length === 0 ? startOf(tree, route, route.side ?? "left") : foundAt(model, path)?.statement.block;
  if (block === undefined) return [];
  const passedOver = block.concept === "axle" ? ["wheel", "linkage"] : [];
  return [block.concept, ...passedOver.flatMap((word) => wordIn(block, word)?.block?.concept ?? [])];
}
