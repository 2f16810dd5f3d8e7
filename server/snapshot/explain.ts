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
  const asked = askedFor(car, segments);
  const choices = choicesOf(asked, fileOf) ?? [];
  const isPart = segments.at(-1) === "fit";
  if (choices.length > 0 && !isPart && (asked.kind === "block" || choices.length > 1))
    return { kind: "values", path, values: choices };
  const chain = asked.kind === "property" ? chainOf(car, segments, fileOf) : undefined;
  if (chain === undefined) return { kind: "none", why: nothingAt(car, path, fileOf) };
  return { kind: "value", chain, brings: choices.filter((one) => one.path !== path) };
}

function nothingAt(car: CheckedCar, path: string, fileOf: FileOf): string {
  const known = valuesOf(car.model, [], fileOf).map((one) => one.path);
  const meant = didYouMean(path, known);
  const guess = meant.length === 0 ? "" : `; did you mean ${meant.join(" or ")}?`;
  return `${nameOf(car.model)} has nothing at "${path}"${guess}`;
}
