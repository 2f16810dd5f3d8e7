import { describe, expect, it } from "vitest";
import { contextOf } from "../../support/context.js";
import { quillParts, quillText } from "../../support/quill.js";

const judged = (...lines: readonly string[]) => {
  const trial = `use "quill.crank"\n\nsetup trial from quill {\n  ${lines.join("\n  ")}\n}\n`;
  const [car] = contextOf({ "quill.crank": quillText, ...quillParts, "trial.crank": trial }, "trial.crank").cars;
  return car!.analysis.expectations.slice(-1)[0]!;
};

describe("expectations on the road", () => {
  it("are judged on the one that is written, on the straight and in a case", () => {
    const road = "road { class B, speed 120 km/h }";
    expect(judged(road, "expect front.contact below 90 %")).toMatchObject({ met: true, unit: "%" });
    expect(judged(road, "expect front.contact below 0.1 %")).toMatchObject({ met: false });
    expect(judged(road, "expect rear.platform at hairpin above 0.01 mm")).toMatchObject({ met: true });
  });

  it("have no figure where no road is written", () => {
    expect(judged("expect front.platform below 3 mm").value).toMatchObject({ kind: "absent" });
  });
});
