/** Eyes where a rocker can hold them, and where it can hardly. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { carWith, checked, setup, underlined } from "../../../support/axle-car.js";

const told = (text: string, car?: string): readonly string[] => {
  const context = checked(text, car);
  return runRules(context)
    .filter(({ rule }) => rule === "rocker-eye")
    .map((finding) => `${finding.severity} at ${underlined(context, finding)}: ${finding.message}`);
};
/** The rocker turns about a line along the car through (0, 190, 400) mm; its rod works it at (0, 226, 436) mm. */
const eye = (point: string): readonly string[] => told(setup(`front.rocker.eye spare ${point} mm`));

describe("rocker-eye", () => {
  it("warns of an eye on the axis, wherever along it", () => {
    expect(eye("(-70, 190, 400)")).toEqual([
      "warning at (-70, 190, 400) mm: Eye spare lies on the rocker's axis, so that the rocker turning does not move it. Move it off the axis.",
    ]);
  });

  it.each([
    ["(30, 190, 405)", "Eye spare is only 5 mm from the rocker's axis"],
    ["(30, 190, 700)", "Eye spare is 300 mm from the rocker's axis; rockers reach to 250 mm at most"],
    ["(-160, 190, 440)", "Eye spare is 160 mm along the axis from where the rod works the rocker"],
    ["(46, 176, 453)", "Eyes roll-high and spare are 1.7 mm apart, nearer than a pin is thick"],
  ])("informs of an eye at %s, as common practice", (point, words) => {
    const [one, more] = eye(point);
    expect(one).toContain(`information at ${point} mm: ${words}`);
    expect(one).toContain("(common practice, no published source)");
    expect(more).toBeUndefined();
  });

  it("says nothing of an eye on a lever that can be made, nor of two that are a pin apart", () => {
    for (const point of ["(30, 160, 400)", "(45, 175, 460)", "(140, 190, 440)"]) expect(eye(point)).toEqual([]);
  });

  it("is told once for both sides, and of one side where that is written for itself", () => {
    expect(told(setup("front.right.rocker.third (0, -190, 403) mm"))).toEqual([
      expect.stringMatching(/^information at \(0, -190, 403\) mm: Eye third is only 3 mm/),
    ]);
  });

  it("is told with the car and not again with a set-up", () => {
    const car = carWith([
      "eye third (0, 192, 456) mm",
      "eye third (0, 192, 456) mm\n        eye spare (0, 190, 403) mm",
    ]);
    expect(told(car)).toHaveLength(1);
    expect(told(setup("mass 545 kg"), car)).toEqual([]);
  });

  it("leaves eyes alone that are drawn in one plane and may be apart across it", () => {
    const planar = carWith([
      "eye third (0, 192, 456) mm",
      "eye third (0, 192, 456) mm\n        eye spare (60, 192, 456) mm",
    ]);
    expect(told(planar)).toEqual([]);
  });
});
