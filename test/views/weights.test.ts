/** What is read of masses and corner weights: hovers and the page, from a car's text to its figures. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { completeAt } from "../../server/views/completion/complete.js";
import { hoverAt } from "../../server/views/hover.js";
import { weightsOf, weightsPage } from "../../server/views/weights-page.js";
import { twoAxles } from "../support/two-axles.js";

const lines = `driver { mass 75 kg, centre (-1150, 0, 250) mm }
  ballast nose { mass 5 kg, centre (480, 0, 60) mm }
  scales { front-left 155 kg, front-right 161 kg, rear-left 163 kg, rear-right 161 kg }`;

const car = twoAxles(lines).replace("centre (0, 780, 320) mm", "centre (-2500, 780, 320) mm");
const threaded = car.replaceAll("ride-height 30 mm", "ride-height 30 mm { thread 1.5 mm/turn }");

function fileOf(text: string) {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set("file:///car.crank", text);
  return workspace.file("file:///car.crank");
}

const carIn = (text: string, at = 0) => {
  const found = fileOf(text).cars.at(at);
  if (found === undefined) throw new Error("no car in the text");
  return found;
};

const hover = (text: string, at: string): string => hoverAt(fileOf(text), text.lastIndexOf(at) + 1)?.markdown ?? "";

describe("the hover of what weighs", () => {
  it("tells the sum on the car's own mass, and on every line beside it", () => {
    for (const at of ["mass 560 kg", "driver {", "mass 75 kg", "ballast nose", "cg-height 300 mm"]) {
      expect(hover(car, at)).toContain("| mass | 640 kg | 568 kg |");
      expect(hover(car, at)).toContain("| share on the left wheels, at rest | 50 % |");
    }
  });

  it("tells it in a set-up that changes a line", () => {
    const text = `${car}\nsetup light from tried {\n  driver.mass 70 kg\n  nose.mass 4 kg\n}\n`;
    expect(hover(text, "driver.mass 70 kg")).toContain("| mass | 634 kg |");
    expect(hover(text, "nose.mass 4 kg")).toContain("| mass | 634 kg |");
  });

  it("tells turns and what the pads show afterwards on the scales, with the cautions", () => {
    const shown = hover(threaded, "scales {");
    expect(shown).toContain("cross weight, front right with rear left | 50.6 %");
    expect(shown).toContain("| front left | front.left.side | +");
    expect(shown).toMatch(/[-+][\d.]+ turn /);
    expect(shown).toContain("competent person");
  });

  it("says what thread is missing", () => {
    expect(hover(car, "scales {")).toContain("no figure where front.left.side has no thread");
  });
});

describe("a mass line in a set-up", () => {
  const text = `${car}\nsetup light from tried {\n  n\n  remove nose\n  expect cross-weight 50 % within 0.1 %\n}\n`;

  it("is offered where a line begins, and filled in", () => {
    const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
    const half = text.replace("  remove nose\n", "");
    workspace.set("file:///car.crank", half);
    const labels = completeAt(workspace.file("file:///car.crank"), half.indexOf("\n  n\n") + 4).map(
      ({ label }) => label,
    );
    expect(labels).toEqual(expect.arrayContaining(["driver.mass", "nose.centre", "nose.mass"]));
  });

  it("is removed by its name, and what is expected of the cross weight is judged", () => {
    const light = carIn(text.replace("\n  n\n", "\n"), 1);
    expect(light.analysis.expectations[0]).toMatchObject({ met: true });
    expect(light.model.block.statements.some(({ word }) => word === "ballast")).toBe(false);
    const { symbols } = fileOf(text.replace("\n  n\n", "\n"));
    expect(symbols.find(({ name }) => name === "nose")?.references).toHaveLength(1);
  });
});

describe("the page of weights", () => {
  it("has masses, what they are put together from, the scales and the turns", () => {
    expect(weightsPage(carIn(threaded)).sections.map(({ title }) => title)).toEqual([
      "Masses, with driver, fuel and ballast",
      "What is put together",
      "On the scales",
      "To a cross weight of 50 %, ride heights of both axles kept",
      // Its axles are not equally stiff.
      "With it the body rolls",
    ]);
  });

  it("tells corner weights at trim where nothing was weighed, and the wanted cross weight is met there", () => {
    const text = car.replace(/scales \{[^}]*\}/, "cg-left 10 mm\n cross-weight 51 %");
    const { weighed, loads } = weightsOf(carIn(text));
    if ("kind" in weighed || "kind" in loads) throw new Error("no weights");
    expect(weighed.cross).toBeCloseTo(0.51, 12);
    // 560 of 640 kg lie 10 mm left.
    expect(weighed.centre[1]).toBeCloseTo((0.01 * 560) / 640, 12);
    expect(weightsPage(carIn(text)).sections.map(({ title }) => title)).toContain("Corner weights at static trim");
    const kept = `${text}\nsetup still from tried {\n  keep-seats\n}\n`;
    expect(weightsPage(carIn(kept, 1)).sections.map(({ title }) => title)).toContain(
      "Corner weights at rest on kept seats",
    );
  });

  it("turns push rods where those trim the axle, and finds the loads that lengthening them gives", () => {
    const rods = threaded
      .replaceAll("inner (-2, 333, 519) mm }", "inner (-2, 333, 519) mm, thread 1.25 mm/turn }")
      .replaceAll("ride-height 30 mm", "trim by push-rod\n    ride-height 30 mm")
      .replaceAll("rate 150 N/mm", "rate 150 N/mm\n      preload 3500 N");
    const { scales } = weightsOf(carIn(rods));
    if (scales === undefined || "kind" in scales.turns) throw new Error(JSON.stringify(scales?.turns));
    const [fl, fr, rl, rr] = scales.turns;
    expect(fl?.path).toBe("front.left.push-rod");
    // Both axles are alike, and the car is to gain on its front left and rear right corners.
    expect(fl?.raise).toBeGreaterThan(0);
    expect(fr?.raise).toBeCloseTo(-(fl?.raise ?? 0), 6);
    expect(rl?.raise).toBeCloseTo(-(fl?.raise ?? 0), 6);
    expect(rr?.raise).toBeCloseTo(fl?.raise ?? 0, 6);
    if (typeof fl?.turns !== "number" || typeof fl.movement !== "number") throw new Error("no turns");
    expect(fl.turns * 0.00125).toBeCloseTo(fl.movement, 12);
    // A longer push rod raises the body.
    expect(fl.movement).toBeGreaterThan(0);
  });
});

describe("whatever is written of masses", () => {
  const number = fc.constantFrom("0", "-3", "1", "75", "560", `1${"0".repeat(300)}`, "0.000001");
  const line = fc.oneof(
    number.map((value) => `cg-left ${value} mm`),
    number.map((value) => `cross-weight ${value} %`),
    fc.tuple(number, number).map(([mass, y]) => `ballast b { mass ${mass} kg, centre (${y}, ${mass}, 0) mm }`),
    fc
      .tuple(number, number, number)
      .map(([a, b, c]) => `scales { front-left ${a} kg, front-right ${b} kg, rear-left ${c} kg, rear-right ${a} kg }`),
    fc.constantFrom(
      "driver { }",
      "fuel { mass 3 }",
      "ballast { mass 3 kg }",
      "scales { front-left 3 kg }",
      "remove driver",
      "keep-seats",
    ),
  );

  it("gives figures or reasons, never a figure that is none", () => {
    fc.assert(
      fc.property(fc.uniqueArray(line, { maxLength: 4, selector: (text) => text.split(" ")[0] }), (written) => {
        const text = `${car.replace(/scales \{[^}]*\}/, "")}\nsetup odd from tried {\n  ${written.join("\n  ")}\n}\n`;
        for (const one of fileOf(text).cars) {
          const shown = JSON.stringify([weightsOf(one), weightsPage(one), one.analysis.axles], (_, value: unknown) =>
            typeof value === "number" && !Number.isFinite(value) ? "not finite" : value,
          );
          expect(shown).not.toContain("not finite");
          expect(shown).not.toMatch(/NaN|Infinity|no figure/);
        }
        fileOf(text).findings();
        hover(text, "odd");
      }),
      { numRuns: 60 },
    );
  });
});
