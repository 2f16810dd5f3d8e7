import { describe, expect, it } from "vitest";
import { propertyAt } from "../../server/model/property-at.js";
import { quill, quillText } from "../support/quill.js";

const car = quill();

describe("what a path speaks of", () => {
  it("is a number with its unit and limits", () => {
    expect(propertyAt(car, "front.third.rate")).toMatchObject({
      kind: "number",
      path: "front.third.rate",
      dimension: "rate",
      given: { value: 55_000, unit: "N/mm" },
      step: undefined,
      limits: { above: 0 },
    });
  });

  it("counts positions from what it says about their number", () => {
    expect(propertyAt(car, "front.bar.blade.position")).toMatchObject({ given: { value: 3 }, count: 5 });
  });

  it("is how much longer a rod is set, by its thread, written or not", () => {
    for (const path of ["front.push-rod", "front.push-rod.longer", "front.linkage.push-rod"]) {
      const found = propertyAt(car, path);
      expect(found).toMatchObject({ kind: "number", given: { value: 0, unit: "mm" }, step: { value: 0.00125 } });
      expect(found?.path).toMatch(/push-rod\.longer$/);
    }
  });

  it("is the part that is fitted, or a figure that comes with it", () => {
    expect(propertyAt(car, "front.corner-bar.fit")).toMatchObject({ kind: "part", concept: "spring", name: "TB-110" });
    expect(propertyAt(car, "front.corner-bar.torsion-bar.diameter")).toMatchObject({
      kind: "number",
      given: { value: 0.011 },
    });
  });

  it("tells the sides apart where they differ", () => {
    const other = quill(quillText.replace("axle rear {", "axle rear {\n    right { wheel { camber -1 deg } }"));
    const camber = (path: string) => {
      const found = propertyAt(other, path);
      return found?.kind === "number" ? (found.given.value * 180) / Math.PI : undefined;
    };
    expect(camber("rear.right.camber")).toBeCloseTo(-1, 9);
    expect(camber("rear.left.camber")).toBeCloseTo(-1.5, 9);
    expect(camber("rear.camber")).toBeCloseTo(-1.5, 9);
  });

  it.each(["front.thrid.rate", "front.rocker.pivot", "front", "front.third", "front.bar.blade.section", ""])(
    "is nothing where the path has no one value: %s",
    (path) => expect(propertyAt(car, path)).toBeUndefined(),
  );
});
