/** Stresses and room in `rates --format json`, held against the schema and the figures of the car. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ratesJson } from "../../server/cli/output/rates-json.js";
import { contextOf } from "../support/context.js";
import { problemsAgainst } from "./schema.js";

const text = readFileSync(new URL("../../samples/broken/coils.crank", import.meta.url), "utf8");

describe("rates --format json", () => {
  const [car] = contextOf({ "coils.crank": text }, "coils.crank").cars;
  if (car === undefined) throw new Error("no car");
  const out = ratesJson(car);

  it("keeps to the schema", () => {
    expect(problemsAgainst("rates", out)).toEqual([]);
  });

  it("tells stresses, the coil's margin and the stroke", () => {
    const { elements } = JSON.parse(out) as { elements: { path: string; strength?: Record<string, unknown> }[] };
    const of = (path: string) => elements.find((one) => one.path === path)?.strength;
    expect(of("front.left.corner-coil")).toMatchObject({
      stresses: [{ part: "coil", kind: "shear", stated: false, most: { unit: "MPa" } }],
      coil: { margin: { unit: "mm" } },
    });
    expect(of("front.left.side")).toMatchObject({ stresses: [], stroke: { bump: { least: { unit: "mm" } } } });
  });
});
