import { describe, expect, it } from "vitest";
import { type Answer, solveFor } from "../../../server/findings/solving/solve-for.js";
import { lineOf } from "../../../server/findings/solving/setting.js";
import { contextOf } from "../../support/context.js";
import { quillParts, quillText } from "../../support/quill.js";

const files = { ...quillParts, "quill.crank": quillText };
const quill = contextOf(files, "quill.crank");
const run = (paths: readonly string[], wanted: readonly string[]) => {
  const found = solveFor(
    quill,
    "quill",
    paths.map((path) => ({ path })),
    wanted,
  );
  if ("why" in found) throw new Error(found.why);
  return found;
};

/** The answer written into a file, judged as any file is. */
function judgedInText({ settings }: Answer, wanted: readonly string[]) {
  const lines = [...settings.map(lineOf), ...wanted.map((one) => `expect ${one}`)];
  const text = `use "quill.crank"\n\nsetup answer from quill {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
  const [car] = contextOf({ ...files, "answer.crank": text }, "answer.crank").cars;
  const { model, analysis } = car!;
  return analysis.expectations.filter(({ index }) => model.expectations[index]!.origin.uri.endsWith("answer.crank"));
}

describe("one unknown", () => {
  it("is linear where a spring's rate adds to the heave rate: the closed form is met", () => {
    const rateAt = (value: number) => {
      const { car } = quill.vary("quill", [`front.third.rate ${value} N/mm`]);
      return car!.analysis.axles.front!.rates.heaveRate as number;
    };
    // With the preload held, heave rate = a + b · rate exactly: k∇s∇sᵀ is linear in k, and F∇²s does not change with it.
    const [at40, at80] = [rateAt(40), rateAt(80)];
    const wanted = (at40 + 2.5 * (at80 - at40)) / 1e3;
    const { answer } = run(["front.third.rate"], [`front.heave-rate between ${wanted} and ${wanted} N/mm`]);
    expect(answer.settings[0]?.value).toBeCloseTo(140_000, 1);
    expect(answer.isMet).toBe(true);
  });

  it("tries every position, and says when none is right", () => {
    const { answer } = run(["front.bar.blade.position"], ["roll-stiffness-front above 99 %"]);
    expect(answer.isMet).toBe(false);
    expect(answer.settings).toEqual([expect.objectContaining({ text: "5" })]);
  });

  it("tries every part of the kind that is fitted", () => {
    const wanted = ["front.wheel-rate above 45 N/mm"];
    const { answer } = run(["front.corner-bar.fit"], wanted);
    expect(judgedInText(answer, wanted).every(({ met }) => met)).toBe(answer.isMet);
    expect(answer.settings[0]?.path).toBe("front.corner-bar.fit");
  });

  it("offers the nearest part in place of a value that comes with one", () => {
    const { answer, onSteps } = run(
      ["front.corner-bar.torsion-bar.diameter"],
      ["front.heave-rate between 170 and 172 N/mm"],
    );
    expect(answer.isMet).toBe(true);
    expect(onSteps).toBeUndefined();
    const found = run(["front.corner-bar.torsion-bar.diameter"], ["front.heave-rate between 150 and 190 N/mm"]);
    expect(found.withPart?.settings[0]).toMatchObject({ path: "front.corner-bar.fit" });
    expect(found.withPart?.isMet).toBe(true);
  });

  it("says what it comes nearest to, and which bound holds it", () => {
    const found = run(["front.third.rate"], ["front.heave-rate below 5 N/mm"]);
    expect(found.answer.isMet).toBe(false);
    expect(found.answer.outcomes[0]?.value).toBeGreaterThan(5000);
    expect(found.atBounds).toEqual(["front.third.rate"]);
  });
});

describe("a compensated change", () => {
  it("stiffens the front in heave at the same share of roll stiffness, and holds when it is written", () => {
    const share = quill.cars[0]!.analysis.axles.front!.rates.rollStiffnessShare as number;
    const wanted = [
      "front.heave-rate between 180 and 181 N/mm",
      `roll-stiffness-front between ${share * 100 - 0.01} and ${share * 100 + 0.01} %`,
    ];
    const { answer } = run(["front.corner-bar.torsion-bar.diameter", "front.third.rate"], wanted);
    expect(answer.isMet).toBe(true);
    const judged = judgedInText(answer, wanted);
    expect(judged.map(({ met }) => met)).toEqual([true, true]);
  });

  it("meets a figure of a case and one at rest together", () => {
    const wanted = [
      "load-transfer-front at hairpin between 47 and 47.2 %",
      "front.heave-rate between 165 and 166 N/mm",
    ];
    const { answer } = run(["front.third.rate", "front.bar.torsion-bar.diameter"], wanted);
    expect(answer.isMet).toBe(true);
    expect(judgedInText(answer, wanted).map(({ met }) => met)).toEqual([true, true]);
  });

  it("takes parts together with rates", () => {
    const wanted = ["front.heave-rate between 170 and 171 N/mm", "front.wheel-rate between 40 and 60 N/mm"];
    const { answer } = run(["front.corner-bar.fit", "front.third.rate"], wanted);
    expect(answer.isMet).toBe(judgedInText(answer, wanted).every(({ met }) => met));
    expect(answer.settings.map(({ path }) => path)).toEqual(["front.corner-bar.fit", "front.third.rate"]);
  });
});

describe("what cannot be asked", () => {
  const why = (paths: readonly string[], wanted: readonly string[]) => {
    const found = solveFor(
      quill,
      "quill",
      paths.map((path) => ({ path })),
      wanted,
    );
    return "why" in found ? found.why : "";
  };
  it("is said in the words of the checks", () => {
    expect(why(["front.thrid.rate"], ["front.heave-rate above 170 N/mm"])).toContain("front.thrid.rate");
    expect(why(["front.third.rate"], ["front.heave-rate above 170 mm"])).toContain("mm");
    expect(why(["front.third.rate"], ["front.heaverate above 170 N/mm"])).not.toBe("");
    expect(why(["front.third.rate"], ["front.heave-rate"])).not.toBe("");
    expect(why(["front.third.rate"], ["front.heave-rate above 170 N/mm", "front.heave-rate below 180 N/mm"])).toContain(
      "between",
    );
  });
});
