/** Frequencies and damping ratios of pure motions after `expect`, against the axles' own rates and ζ = c/(2√(k m)). */
import { describe, expect, it } from "vitest";
import { massesOfCar } from "../../../server/assemble/masses.js";
import { expectClose } from "../../support/approx.js";
import { contextOf } from "../../support/context.js";
import { quillParts, quillText } from "../../support/quill.js";
import { CLOSED_FORM } from "../../support/tolerances.js";
import { number, reason } from "../../support/written-car.js";

function checked(line: string, text = quillText) {
  const trial = `use "quill.crank"\n\nsetup trial from quill {\n  ${line}\n}\n`;
  const [car] = contextOf({ "quill.crank": text, ...quillParts, "trial.crank": trial }, "trial.crank").cars;
  return car!;
}

const figureOf = (path: string, text = quillText) =>
  checked(`expect ${path} above 0${path.includes("frequency") ? " Hz" : ""}`, text).analysis.expectations.at(-1)!.value;

const { analysis, model } = checked("");
const { front, rear } = analysis.axles;
const known = massesOfCar(model).sprung.mass;
if (typeof known === "string") throw new Error(known);
const mass = known;

/** The loads' lever on the bent paths of the contact points, which only the whole car takes in. */
const LEFT_OUT = 1e-3;

describe("pure motions after expect", () => {
  it("in heave are both axles' rates and damping on the sprung mass", () => {
    const k = number(front!.rates.heaveRate) + number(rear!.rates.heaveRate);
    const c = number(front!.rates.heaveDamping) + number(rear!.rates.heaveDamping);
    expectClose(number(figureOf("heave-frequency")), Math.sqrt(k / mass) / (2 * Math.PI), LEFT_OUT);
    expectClose(number(figureOf("heave-damping-ratio")), c / (2 * Math.sqrt(k * mass)), LEFT_OUT);
  });

  it("of a wheel's hop are those of its mass between wheel rate and tyre", () => {
    const k = number(front!.rates.wheelRate.left) + 165e3;
    expectClose(number(figureOf("front.left.wheel-hop-frequency")), Math.sqrt(k / 17) / (2 * Math.PI), LEFT_OUT);
    expectClose(
      number(figureOf("front.wheel-hop-frequency")),
      number(figureOf("front.right.wheel-hop-frequency")),
      CLOSED_FORM,
    );
  });

  it("have the springs and the air of a case", () => {
    const [still, fast] = ["heave-frequency", "heave-frequency at top-speed"].map((path) => number(figureOf(path)));
    expect(fast).not.toBe(still);
    expect(number(figureOf("rear.corner-damping-ratio at hairpin"))).toBeGreaterThan(0);
  });

  it("say what is missing", () => {
    const without = quillText.replace(/^ {2}roll-inertia .*$/m, "");
    expect(reason(figureOf("roll-frequency", without))).toMatch(/roll-inertia/);
    expect(reason(figureOf("roll-frequency at nowhere"))).toMatch(/no case nowhere/);
  });
});
