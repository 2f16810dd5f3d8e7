/** Checks of what the scales show and of where masses are. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { checkFindings } from "../../../support/check-findings.js";
import { contextOf } from "../../../support/context.js";
import { contextOfSetup, sharedCar } from "../../../support/shared-car.js";

const said = (...lines: readonly string[]) =>
  runRules(contextOfSetup(...lines)).map(({ rule, message }) => `${rule}: ${message}`);

const off = "scales { front-left 112 kg, front-right 126 kg, rear-left 156 kg, rear-right 146 kg }";

describe("cross-weight", () => {
  it("stands at the scales and tells figure, target and the heavy diagonal", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  ${off}
# ^^^^^^ warning cross-weight: The scales of wet show 52.22 % cross weight where 50 % within 0.5 % is wanted: front right and rear left carry too much.
}
`,
      sharedCar,
    );
  });

  it("holds them against what is wanted", () => {
    expect(said("cross-weight 52 % within 0.3 %", off)).toEqual([]);
    expect(said("cross-weight 53 %", off)[0]).toContain("front left and rear right carry too much");
    // 273/540 is 50.556 %.
    const near = "scales { front-left 120 kg, front-right 123 kg, rear-left 150 kg, rear-right 147 kg }";
    expect(said(near)).toHaveLength(1);
    expect(said("cross-weight 50 % within 0.6 %", near)).toEqual([]);
  });

  it("says nothing where a reading is missing, but that", () => {
    const rules = said("scales { front-left 112 kg, front-right 126 kg, rear-left 156 kg }");
    expect(rules).toHaveLength(1);
    expect(rules[0]).toMatch(/^missing-property: /);
  });

  it("is not told again in a set-up of the set-up", () => {
    const text = `use "shared.crank"\nsetup wet from wren {\n  ${off}\n}\nsetup later from wet {\n  mass 545 kg\n}\n`;
    checkFindings(text.replace(off, `${off}\n# ^^^^^^ warning cross-weight: The scales of wet show`), sharedCar);
  });
});

describe("mass-outside", () => {
  it("stands at the centre and says on which side of the car it lies", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  ballast floor { mass 6 kg, centre (-1200, 0, -400) mm }
#                                   ^^^^^^^^^^^^^^^^^^^ warning mass-outside: floor lies outside the car, 368 mm under the ground;
}
`,
      sharedCar,
    );
  });

  it.each([
    ["(1850, 0, 250)", /580 mm beyond half a wheelbase ahead of the front wheels/],
    ["(-4000, 0, 250)", /190 mm beyond half a wheelbase behind the rear wheels/],
    ["(-1200, -900, 250)", /160 mm further out than the wheels' contact/],
  ])("of a driver at %s", (centre, words) => {
    expect(said(`driver { mass 75 kg, centre ${centre} mm }`)).toEqual([expect.stringMatching(words)]);
  });

  it("says nothing of what is in the car", () => {
    expect(
      said("driver { mass 75 kg, centre (-1150, 0, 250) mm }", "fuel { mass 9 kg, centre (-1500, 80, 200) mm }"),
    ).toEqual([]);
    expect(said("ballast nose { mass 6 kg, centre (480, 0, 60) mm }")).toEqual([]);
  });
});

describe("measured-residual", () => {
  it("stands at the value and tells both, the difference and what is allowed", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  measured {
    figure front.ride-height 36.5 mm
#   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning measured-residual: front.ride-height of wet was measured as 36.5 mm and is predicted as 32 mm: 4.5 mm off, where 1 mm is allowed. Measure again in the state that is predicted, or find what differs: a part, a position, a load.
  }
}
`,
      sharedCar,
    );
  });

  it("takes a tolerance in the figure's unit, or in % of the prediction", () => {
    expect(said("measured { figure front.ride-height 36 mm within 4 mm }")).toEqual([]);
    expect(said("measured { figure front.ride-height 36 mm within 3.9 mm }")).toHaveLength(1);
    expect(said("measured { figure front.ride-height 36 mm within 12.5 % }")).toEqual([]);
    expect(said("measured { figure front.ride-height 36 mm within 12 % }")).toHaveLength(1);
  });

  it("is of the set-up that it stands in, not of those that derive from it", () => {
    const text = `use "shared.crank"

setup wet from wren { measured { figure front.ride-height 32.4 mm } }

setup wetter from wet { front.ride-height 40 mm }
`;
    expect(runRules(contextOf({ ...sharedCar, "wet.crank": text }, "wet.crank"))).toEqual([]);
  });

  it("says nothing of what cannot be read or is not predicted, but that", () => {
    expect(said("measured { figure front.ride-height 36 N }").map((one) => one.split(":")[0])).toEqual([
      "wrong-dimension",
    ]);
    expect(said("measured { figure front.ride-heigh 36 mm }").map((one) => one.split(":")[0])).toEqual([
      "unknown-name",
    ]);
    expect(said("measured { figure roll-gradient 1 deg/g }").map((one) => one.split(":")[0])).toEqual(["wrong-form"]);
    expect(said("measured { figure front.contact at nowhere 1 % }").map((one) => one.split(":")[0])).toEqual([
      "unknown-name",
    ]);
  });
});
