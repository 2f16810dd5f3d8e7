/** Actuators that hold a length or a force case by case, links between the axles, and the samples' own cases. */
import { describe, expect, it } from "vitest";
import { solveCase } from "../../../server/analyses/equilibrium/car-cases.js";
import type { CaseFigures } from "../../../server/analyses/equilibrium/results.js";
import { assembleLoadedCar, loadCaseOf } from "../../../server/assemble/loaded-car.js";
import type { CarModel } from "../../../server/model/car.js";
import { expectClose } from "../../support/approx.js";
import { caseOf, readyFor } from "../../support/loaded-car.js";
import { quill, quillText } from "../../support/quill.js";
import { sampleContext, sampleNames } from "../../support/samples.js";
import { CLOSED_FORM } from "../../support/tolerances.js";
import { number } from "../../support/written-car.js";

function solvedIn(car: CarModel, name: string): CaseFigures {
  const asked = car.cases.find((one) => one.name === name);
  if (asked === undefined) throw new Error(`no case ${name}`);
  const result = solveCase(readyFor(assembleLoadedCar(car)), loadCaseOf(asked));
  if (result.kind !== "equilibrium") throw new Error(JSON.stringify(result));
  return result;
}

const elementIn = (found: CaseFigures, path: string) => {
  const element = found.elements.find((one) => one.path === path);
  if (element === undefined) throw new Error(`no ${path}`);
  return element;
};

describe("an actuator", () => {
  const holding = (rows: string): CarModel =>
    quill(
      quillText.replace(
        "    damper heave-damper for heave {",
        `    actuator platform for heave {
      hold { ${rows} }
      between left.rocker.third and right.rocker.third
    }
    damper heave-damper for heave {`,
      ),
    );
  const car = holding("top-speed: 4 mm, braking: -2 mm");

  it("keeps the length of the case, longer positive, and carries what that takes", () => {
    const found = solvedIn(car, "top-speed");
    expectClose(elementIn(found, "front.platform").deflection, -0.004, CLOSED_FORM);
    expectClose(elementIn(found, "front.third").deflection, -0.004, CLOSED_FORM);
    const without = solvedIn(quill(), "top-speed");
    // Pushed apart against downforce: it carries, and the front stands higher.
    expect(elementIn(found, "front.platform").force).toBeGreaterThan(500);
    expect(number(found.front.rideHeight)).toBeGreaterThan(number(without.front.rideHeight) + 0.005);
    expect(found.residual).toBeLessThanOrEqual(1e-6);
  });

  it("keeps its design length in a case that it does not speak of", () => {
    expectClose(elementIn(solvedIn(car, "hairpin"), "front.platform").deflection, 0, 0, 1e-12);
  });

  it("pushes with the force of the case", () => {
    const found = solvedIn(holding("braking: 300 N"), "braking");
    expect(elementIn(found, "front.platform").force).toBe(300);
    expect(number(found.front.rideHeight)).toBeGreaterThan(number(solvedIn(quill(), "braking").front.rideHeight));
  });

  it("keeps a length in one case and a force in another, in either order", () => {
    for (const rows of ["top-speed: 4 mm, braking: 300 N", "braking: 300 N, top-speed: 4 mm"]) {
      const mixed = holding(rows);
      expectClose(elementIn(solvedIn(mixed, "top-speed"), "front.platform").deflection, -0.004, CLOSED_FORM);
      expect(elementIn(solvedIn(mixed, "braking"), "front.platform").force).toBe(300);
    }
  });
});

describe("a link between the axles", () => {
  it("adds to pitch what its spring gives: a rod from front to rear rockers by ratio", () => {
    const joined = quill(
      quillText.replace(
        "  case top-speed",
        `  spring pitch-spring for pitch {
    rate 200 N/mm
    ratio pitch 1
    ratio heave 0
    ratio roll 0
    ratio warp 0
  }

  case top-speed`,
      ),
    );
    const [stiffer, softer] = [solvedIn(joined, "braking"), solvedIn(quill(), "braking")];
    const { deflection, force } = elementIn(stiffer, "pitch-spring");
    const z = stiffer.wheels.map(({ travel }) => travel);
    expectClose(deflection, (z[0]! + z[1]! - z[2]! - z[3]!) / 4, CLOSED_FORM);
    expectClose(force, 200e3 * deflection, CLOSED_FORM);
    expect(Math.abs(stiffer.pitch)).toBeLessThan(0.9 * Math.abs(softer.pitch));
    const roll = solveCase(readyFor(assembleLoadedCar(joined)), caseOf({ lateral: 8 }));
    const plain = solveCase(readyFor(assembleLoadedCar(quill())), caseOf({ lateral: 8 }));
    if (roll.kind !== "equilibrium" || plain.kind !== "equilibrium") throw new Error(roll.kind);
    expectClose(roll.roll, plain.roll, 2e-3);
  });
});

describe("the samples", () => {
  const cars = sampleNames.flatMap((name) => sampleContext(name).cars.map((car) => [name, car] as const));
  const whole = cars.filter(([, { model }]) => model.axles.front !== undefined && model.axles.rear !== undefined);

  it("with two axles are several", () => {
    expect(whole.length).toBeGreaterThan(5);
  });

  it.each(whole)("%s stands in all of its cases", (_, car) => {
    for (const name of car.cases.names) expect(car.cases.at(name)).toMatchObject({ kind: "equilibrium", name });
  });
});
