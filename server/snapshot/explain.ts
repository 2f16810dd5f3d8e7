/**
 * What is told of one path of a car or set-up where it stands alone, as on the command line: the chain of a value, the values of a
 * block, or what could have been meant.
 */
import type { CheckedCar } from "../findings/context.js";
import { didYouMean } from "../findings/did-you-mean.js";
import { nameOf } from "../views/comparison/pairs.js";
import { askedFor } from "../views/origins/asked.js";
import { chainOf, type ValueChain } from "../views/origins/chain.js";
import { choicesOf } from "../views/origins/choices.js";
import { type ValueEntry, valuesOf } from "../views/origins/values.js";
import type { FileOf } from "../views/origins/written.js";

export type Explained =
  /** `brings`: the figures that come with a part. */
  | { readonly kind: "value"; readonly chain: ValueChain; readonly brings: readonly ValueEntry[] }
  /** Of a block, or of both sides where they differ. */
  | { readonly kind: "values"; readonly path: string; readonly values: readonly ValueEntry[] }
  | { readonly kind: "none"; readonly why: string };

/** @param path as a set-up writes it: `front.third.rate`; empty for everything that the car or set-up says */
export function explain(car: CheckedCar, path: string, fileOf: FileOf): Explained {
  const segments = path === "" ? [] : path.split(".");
  if (segments.at(-1) === "expect")
    return { kind: "none", why: "an expectation is no value of the car: `bellcrank check` judges it" };
  const side = sideOf(segments);
  if (side !== undefined) return { kind: "values", path, values: ofSide(car, segments, side, fileOf) };
  const asked = askedFor(car, segments);
  const choices = choicesOf(asked, fileOf) ?? [];
  const isPart = segments.at(-1) === "fit";
  if (choices.length > 0 && !isPart && (asked.kind === "block" || choices.length > 1))
    return { kind: "values", path, values: choices };
  const chain = asked.kind === "property" ? chainOf(car, segments, fileOf) : undefined;
  if (chain === undefined) return { kind: "none", why: nothingAt(car, path, fileOf) };
  return { kind: "value", chain, brings: choices.filter((one) => one.path !== path) };
}

/** `front.left`: a whole side. */
const sideOf = ([axle, side, more]: readonly string[]): "left" | "right" | undefined =>
  (axle === "front" || axle === "rear") && (side === "left" || side === "right") && more === undefined
    ? side
    : undefined;

/** What both sides share stands by the axle's path, and is told with it. */
function ofSide(
  car: CheckedCar,
  [axle = ""]: readonly string[],
  side: "left" | "right",
  fileOf: FileOf,
): readonly ValueEntry[] {
  const other = `${axle}.${side === "left" ? "right" : "left"}.`;
  const values = choicesOf(askedFor(car, [axle]), fileOf) ?? [];
  return values.filter((one) => !one.path.startsWith(other));
}

function nothingAt(car: CheckedCar, path: string, fileOf: FileOf): string {
  const known = valuesOf(car.model, [], fileOf).map((one) => one.path);
  const meant = didYouMean(path, known);
  const guess = meant.length === 0 ? "" : `; did you mean ${meant.join(" or ")}?`;
  return `${nameOf(car.model)} has nothing at "${path}"${guess}`;
}
