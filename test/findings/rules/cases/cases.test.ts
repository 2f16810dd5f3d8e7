/** Findings about load cases: no equilibrium, contact with the road, lifted wheels, travel. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { underlined } from "../../../support/axle-car.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const contextWith = (...lines: readonly string[]) =>
  contextOf(
    {
      ...brokenSamples,
      "trial.crank": `use "cases.crank"\n\nsetup trial from wagtail {\n  ${lines.join("\n  ")}\n}\n`,
    },
    "trial.crank",
  );

const found = (...lines: readonly string[]) => {
  const context = contextWith(...lines);
  return runRules(context).map((finding) => `${finding.severity} ${finding.rule} at ${underlined(context, finding)}`);
};
const messages = (...lines: readonly string[]) => runRules(contextWith(...lines)).map(({ message }) => message);

describe("no-equilibrium", () => {
  it("is an error at the case, with the reason and how far the loads can grow", () => {
    const line = "case straight { speed 400 km/h }";
    expect(found(line)).toEqual([`error no-equilibrium at ${line}`]);
    expect(messages(line)[0]).toMatch(
      /^trial has no equilibrium in straight: the body would come to stand on the road at the front axle line\. Its loads can grow to \d\d % of those/,
    );
  });

  it("names both wheels in the air", () => {
    const line = "case corner { longitudinal -9 g }";
    expect(messages(line).join()).toMatch(/both rear wheels come off the ground/);
  });

  it("tells aerodynamic divergence from standing on the road", () => {
    const lines = [
      "aero.downforce-front 0.001 m^2",
      "aero.downforce-rear 0.001 m^2",
      "aero.drag.area 0 m^2",
      "aero.height-slopes.front-by-front -0.05 m^2/mm",
      "case straight { speed 330 km/h }",
    ];
    expect(messages(...lines).join()).toMatch(
      /downforce grows faster as the car sinks than springs and tyres push back/,
    );
  });

  it("is not told again where the base has it", () => {
    const context = contextOf(
      {
        ...brokenSamples,
        "low.crank": brokenSamples["no-equilibrium.crank"] ?? "",
        "trial.crank": 'use "low.crank"\n\nsetup trial from low {\n  rear.third.rate 81 N/mm\n}\n',
      },
      "trial.crank",
    );
    expect(runRules(context)).toEqual([]);
  });
});

describe("ground-contact", () => {
  it("is a warning at the set-up that brings it about", () => {
    expect(found("nose.point (420, 0, -24) mm")).toEqual(["warning ground-contact at trial"]);
    expect(messages("nose.point (420, 0, -24) mm")[0]).toMatch(
      /^nose of trial would be 2\.\d+ mm below the road in straight/,
    );
    expect(found("nose.point (420, 0, -14) mm")).toEqual([]);
  });
});

describe("wheel-lifts", () => {
  it("is information", () => {
    const line = "case corner { speed 90 km/h, lateral 2.9 g }";
    expect(found(line)).toEqual([`information wheel-lifts at ${line}`]);
    expect(messages(line)[0]).toMatch(/^The front left wheel of trial is off the road in corner/);
  });
});

describe("beyond-travel", () => {
  it("tells which wheels stand beyond the envelope", () => {
    expect(messages("front.travel -20 .. 10 mm")).toEqual([
      expect.stringMatching(/^In corner the front right wheel at 13\.\d mm is beyond the travel that is checked/),
    ]);
  });
});
