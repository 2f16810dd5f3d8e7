/** All units of every sample, converted: the same cars within rounding, the same comments, laid out as before. */
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/index.js";
import { applyEdits } from "../../server/findings/edits.js";
import type { ResolvedBlock, ResolvedValue } from "../../server/model/car.js";
import { laidOut } from "../../server/refactorings/laid-out.js";
import { convertUnits } from "../../server/views/convert-units.js";
import { contextOf, isFormatted, uriOf } from "../support/context.js";
import { sampleNames, samples } from "../support/samples.js";
import { CONVERTED_SHARE } from "../support/tolerances.js";
import { commentsOf } from "./refactored.js";

/** Every number of a block by the way to it. */
function* numbersIn({ statements, rows }: ResolvedBlock, way: string): Generator<readonly [string, number]> {
  for (const { word, name, values, block } of statements) {
    const here = `${way}.${name?.text ?? word}`;
    for (const [index, value] of values.entries()) yield* numbersOf(value, `${here} ${index}`);
    if (block !== undefined) yield* numbersIn(block, here);
  }
  for (const [index, { key, value }] of rows.entries()) {
    yield* numbersOf(key, `${way}: key ${index}`);
    yield* numbersOf(value, `${way}: ${index}`);
  }
}

function* numbersOf(value: ResolvedValue, way: string): Generator<readonly [string, number]> {
  if (value.kind === "number") yield [way, value.value];
  if (value.kind === "point" || value.kind === "range")
    for (const [index, one] of value.value.entries()) yield [`${way}/${index}`, one];
  if (value.kind === "attachment" && value.point !== undefined)
    for (const [index, one] of value.point.value.entries()) yield [`${way}/${index}`, one];
}

const numbersOfCars = (name: string, text: string): ReadonlyMap<string, number> =>
  new Map(
    contextOf({ ...samples, [name]: text }, name).cars.flatMap(({ model }) => [
      ...numbersIn(model.block, model.setup ?? model.name),
    ]),
  );

describe("converting all units of a file", () => {
  it.each(sampleNames)("leaves %s what it is", (name) => {
    const text = samples[name] ?? "";
    const before = numbersOfCars(name, text);
    for (const target of ["si", "inch"] as const) {
      const after = applyEdits(text, laidOut(text, convertUnits(uriOf(name), parse(text), target)));
      expect(commentsOf({ [name]: after })).toEqual(commentsOf({ [name]: text }));
      expect(isFormatted(after)).toBe(isFormatted(text));
      const now = numbersOfCars(name, after);
      expect([...now.keys()]).toEqual([...before.keys()]);
      // Lengths are never finer than 2 µm, others closer than five millionths of themselves.
      const others = [...before].filter(
        ([way, value]) => Math.abs((now.get(way) ?? Number.NaN) - value) > 2e-6 + CONVERTED_SHARE * Math.abs(value),
      );
      expect(others).toEqual([]);
    }
  });
});
