/**
 * The values that a question may be about where the cursor is on a block, on `fit`, or on a value that differs from side to side:
 * what the car or set-up itself says comes first, what no file says last.
 */
import type { CarModel } from "../../model/car.js";
import { isSameStatement } from "../../model/same.js";
import { nameOf } from "../comparison/pairs.js";
import type { Asked } from "./asked.js";
import { foundAt, isOfPart } from "./steps.js";
import { type ValueEntry, valuesOf } from "./values.js";
import { type FileOf, withoutSide } from "./written.js";

/** Undefined where the question is about one value already. */
export function choicesOf(asked: Asked, fileOf: FileOf): readonly ValueEntry[] | undefined {
  if (asked.kind !== "property" && asked.kind !== "block") return undefined;
  const { path, car } = asked;
  const { model } = car;
  if (asked.kind === "block") return ownFirst(valuesOf(model, path, fileOf), model);
  if (path.at(-1) === "fit") return broughtBy(model, path, fileOf);
  const sides = sidesThatDiffer(model, path);
  return sides?.flatMap((side) => valuesOf(model, side, fileOf).filter((one) => one.path === side.join(".")));
}

/** The line itself, and the figures that come with the part. */
function broughtBy(model: CarModel, fit: readonly string[], fileOf: FileOf): readonly ValueEntry[] {
  const own = fit.join(".");
  const values = valuesOf(model, fit.slice(0, -1), fileOf).filter((one) => one.path === own || isOfPart(one));
  return [...values.filter(({ path }) => path === own), ...values.filter(({ path }) => path !== own)];
}

function sidesThatDiffer(model: CarModel, path: readonly string[]): readonly (readonly string[])[] | undefined {
  const [axle = "", ...rest] = path;
  if ((axle !== "front" && axle !== "rear") || rest.length === 0 || withoutSide(path) !== path) return undefined;
  const sides = (["left", "right"] as const).map((side) => [axle, side, ...rest]);
  const [left, right] = sides.map((side) => foundAt(model, side)?.statement);
  if (left === undefined || right === undefined || isSameStatement(left, right)) return undefined;
  return sides;
}

function ownFirst(values: readonly ValueEntry[], model: CarModel): readonly ValueEntry[] {
  const own = `${model.setup === undefined ? "car" : "set-up"} ${nameOf(model)}`;
  const rank = ({ by }: ValueEntry): number =>
    by === own ? 0 : by.startsWith("set-up ") ? 1 : by === "the language" ? 3 : 2;
  return [...values].sort((a, b) => rank(a) - rank(b));
}
