/** Stresses and room in `rates --format json`, held against the schema and the figures of the car. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ratesJson } from "../../server/cli/output/rates-json.js";
import { contextOf } from "../support/context.js";
import { sampleCar } from "../support/samples.js";
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

describe("stages and inertance in rates --format json", () => {
  const outOf = (sample: string): string => ratesJson(sampleCar(`systems/${sample}.crank`));

  it.each(["link-springs", "inerters", "heave-together", "stacks", "tied-bars"])(
    "keep to the schema for %s",
    (sample) => {
      expect(problemsAgainst("rates", outOf(sample))).toEqual([]);
    },
  );

  it("tell stages, when link springs are used up, and what an inerter adds", () => {
    expect(JSON.parse(outOf("link-springs"))).toMatchObject({
      elements: expect.arrayContaining([
        expect.objectContaining({
          path: "front.bar",
          events: expect.arrayContaining([
            expect.objectContaining({ what: "stage", at: expect.objectContaining({ unit: "deg" }) }),
          ]),
        }),
      ]),
      changeOvers: [{ path: "front.bar", roll: { unit: "deg" }, lateral: { absent: "the car has no rear axle" } }],
    });
    const { elements } = JSON.parse(outOf("inerters")) as { elements: { path: string; inertance?: object }[] };
    expect(elements.find(({ path }) => path === "front.flywheel")?.inertance).toMatchObject({ heave: { unit: "kg" } });
  });
});
