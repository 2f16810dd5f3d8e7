/** What is written but cannot be a mechanism. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { carWith, checked, found, motionOf, setup, underlined } from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";

describe("unbuildable", () => {
  it("tells once of a corner element, at the value, and says what contradicts itself", () => {
    checkFindings(
      carWith([
        "torsion-bar { diameter 11 mm, length 360 mm }\n",
        "torsion-bar { diameter 11 mm, bore 14 mm, length 360 mm }\n#                                   ^^^^^^^^^^ error unbuildable: corner-bar cannot be computed: …\n",
      ]),
    );
  });

  it("stands at the line of the set-up that does it, and is not told again", () => {
    const line = "front.corner-bar.torsion-bar.bore 14 mm";
    const context = checked(setup("mass 545 kg", line));
    expect(runRules(context).map((finding) => underlined(context, finding))).toEqual([line]);
    const car = carWith(["diameter 11 mm, length", "diameter 11 mm, bore 14 mm, length"]);
    expect(found(setup("mass 545 kg"), car)).toEqual([]);
  });

  it("leaves the rest computed", () => {
    const context = checked(setup("front.corner-bar.torsion-bar.bore 14 mm"));
    expect(motionOf(context, "front.roll-damper").roll).toBeLessThan(-1);
  });

  it("stands at the part of the linkage that it names, once for both sides", () => {
    const context = checked(
      carWith(
        [
          "push-rod on lower-wishbone { outer (2, 632, 128) mm, inner (0, 226, 436) mm }",
          "push-rod on lower-wishbone { outer (2, 632, 128) mm, inner (0, 190, 436) mm }",
        ],
        ["pivot (0, 190, 400) mm", "pivot (0, 190, 436) mm"],
      ),
    );
    const here = runRules(context).filter(({ rule }) => rule === "unbuildable");
    expect(here).toHaveLength(1);
    expect(here[0]?.message).toMatch(/^The front linkage cannot be computed: .*rocker/);
    expect(here.map((finding) => underlined(context, finding))).toEqual(["rocker"]);
  });

  it("says nothing to a bar that has a wall", () => {
    expect(found(setup("front.corner-bar.torsion-bar.bore 5 mm"))).toEqual([]);
  });
});
