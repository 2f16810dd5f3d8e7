/** Findings about stability: downforce that outgrows the springs, and a body that swings up. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const found = (base: string, car: string, ...lines: readonly string[]) =>
  runRules(
    contextOf(
      {
        ...brokenSamples,
        "trial.crank": `use "${base}"\n\nsetup trial from ${car} {\n  ${lines.join("\n  ")}\n}\n`,
      },
      "trial.crank",
    ),
  );
const told = (rule: string, ...asked: Parameters<typeof found>) =>
  found(...asked).flatMap((finding) => (finding.rule === rule ? [finding.message] : []));

/** Without drag, nothing but the slope has a part: downforce slope · ½ρv² against the springs of that end. */
const sucked = (slope: string, speed: string) => [
  "aero.downforce-front 0.001 m^2",
  "aero.downforce-rear 0.001 m^2",
  "aero.drag.area 0.2 m^2",
  `aero.height-slopes.front-by-front ${slope} m^2/mm`,
  `case straight { speed ${speed} km/h }`,
];

describe("aero-divergence", () => {
  const speedOf = (...asked: Parameters<typeof sucked>): number => {
    const [message = ""] = told("aero-divergence", "cases.crank", "wagtail", ...sucked(...asked));
    return Number(/diverges at ([\d.]+) km/.exec(message)?.[1]);
  };

  it("tells the speed, which falls with the root of the slope and not with the case", () => {
    const [gentle, steep] = [speedOf("-0.03", "260"), speedOf("-0.04", "225")];
    // Not quite, since drag and what downforce there is move load on the way.
    expect(Math.abs(gentle / steep / Math.sqrt(4 / 3) - 1)).toBeLessThan(0.01);
    expect(speedOf("-0.04", "232")).toBeCloseTo(steep, 0);
  });

  it("is silent well below it, and without aero", () => {
    expect(told("aero-divergence", "cases.crank", "wagtail", ...sucked("-0.04", "150"))).toEqual([]);
    expect(told("aero-divergence", "axle.crank", "plover", "case fast { speed 300 km/h }")).toEqual([]);
  });
});

describe("porpoising", () => {
  const lines = (lag: string, damping: string) => [
    "aero.height-slopes.front-by-front 0.04 m^2/mm",
    "aero.height-slopes.rear-by-rear 0.04 m^2/mm",
    `aero.lag ${lag}`,
    `front.side-damper.damping ${damping} N*s/mm`,
    `rear.side-damper.damping ${damping} N*s/mm`,
    "case straight { speed 300 km/h }",
  ];

  it("tells what swings up, in which case, and from which speed on", () => {
    const [message] = told("porpoising", "porpoising-car.crank", "dipper", ...lines("120 ms", "1"));
    expect(message).toMatch(/^trial swings up in heave in straight, on a straight from \d+(\.\d)? km\/h on:/);
  });

  it("is silent with enough damping, with air that follows at once, and where no lag is stated", () => {
    expect(told("porpoising", "porpoising-car.crank", "dipper", ...lines("120 ms", "6"))).toEqual([]);
    expect(told("porpoising", "porpoising-car.crank", "dipper", ...lines("0 ms", "1"))).toEqual([]);
    expect(told("porpoising", "cases.crank", "wagtail", "case straight { speed 150 km/h }")).toEqual([]);
  });
});
