/** Trim by the rods' length: held to differences of the springs' energy, and to rods that are set by hand. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { isAbsent } from "../../server/analyses/absent.js";
import { carriedLoads } from "../../server/analyses/loads.js";
import { trimmedByRods } from "../../server/analyses/rod-trim.js";
import { axlePositions, isBound } from "../../server/analyses/states.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { expectClose } from "../support/approx.js";
import { ENERGY_DIFFERENCE } from "../support/tolerances.js";
import { mechanismOf } from "../support/written-car.js";

const quill = readFileSync("samples/quill/quill.crank", "utf8");
const parts = { "parts.crank": readFileSync("samples/quill/parts.crank", "utf8") };

/** The Quill's front axle on coil springs with a stated preload, so that the rods decide how high it stands. */
const byRods = quill
  .replace("trim by corner-bar", "trim by push-rod")
  .replace(
    /spring corner-bar for corner \{[^}]*\}/,
    "spring corner-bar for corner {\n rate 40 N/mm\n preload 1200 N\n between rocker.side and chassis (10, 40, 360) mm\n }",
  );

const mechanism = (text: string): AxleMechanism => mechanismOf(text, parts);

/** Energy of every spring of the axle at two travels, from its law and the positions alone. */
function energy(axle: AxleMechanism, left: number, right: number): number {
  const { motion } = axlePositions(axle).at(left, right);
  if (isBound(motion)) throw new Error("not reached");
  return axle.elements.reduce((sum, { connection, law }) => {
    const d = connection?.deflection(motion);
    return d === undefined || "kind" in d || law?.kind !== "spring" ? sum : sum + law.energy(d.s);
  }, 0);
}

const found = (axle: AxleMechanism) => {
  const trimmed = trimmedByRods(axle);
  if (isAbsent(trimmed)) throw new Error(trimmed.reason);
  return trimmed;
};

describe("trim by push rods", () => {
  it("balances each wheel's load, by differences of the energy", () => {
    const { mechanism: set } = found(mechanism(byRods));
    const { motion } = axlePositions(set).at(0, 0);
    if (isBound(motion)) throw new Error("not reached");
    const loads = carriedLoads(set, motion);
    if (isAbsent(loads)) throw new Error(loads.reason);
    const h = 1e-5;
    expectClose((energy(set, h, 0) - energy(set, -h, 0)) / (2 * h), loads.left, ENERGY_DIFFERENCE);
    expectClose((energy(set, 0, h) - energy(set, 0, -h)) / (2 * h), loads.right, ENERGY_DIFFERENCE);
  });

  it("keeps the rods of a mirrored axle alike, and says nothing of seats", () => {
    const { set } = found(mechanism(byRods));
    expect(set.left).toBe(set.right);
    expect(Math.abs(set.left)).toBeGreaterThan(1e-4);
    const { rates } = analyseAxle(mechanism(byRods));
    expect(rates).toMatchObject({ trim: [], rods: { kind: "push-rod", left: set.left } });
    expect(typeof rates.heaveRate).toBe("number");
  });

  it("finds nothing left to set where the text has the rods at the length that it found", () => {
    const { set } = found(mechanism(byRods));
    const written = `${byRods}\nsetup set from quill {\n front.push-rod by ${(set.left * 1e3).toFixed(9)} mm\n}\n`;
    const again = found(mechanismOfSetup(written));
    expect(Math.abs(again.set.left)).toBeLessThan(1e-9);
  });

  it("gives both rods their own length where the springs differ", () => {
    const { set, mechanism: axle } = found(
      mechanismOfSetup(`${byRods}\nsetup odd from quill {\n front.left.corner-bar.preload 1300 N\n}\n`),
    );
    expect(set.left).not.toBe(set.right);
    expect(set.left).toBeLessThan(set.right);
    const h = 1e-5;
    const left = (energy(axle, h, 0) - energy(axle, -h, 0)) / (2 * h);
    const right = (energy(axle, 0, h) - energy(axle, 0, -h)) / (2 * h);
    expectClose(left, right, ENERGY_DIFFERENCE);
  });

  it("holds where elements between the axles carry a part of the weight", () => {
    const { rods, ...rest } = mechanism(byRods);
    const joined = { left: 300, right: 300 };
    const { mechanism: set } = found({ ...rest, rods, joined });
    const h = 1e-5;
    const free = found(mechanism(byRods)).mechanism;
    const own = (axle: AxleMechanism): number => (energy(axle, h, 0) - energy(axle, -h, 0)) / (2 * h);
    expectClose(own(free) - own(set), 300, 1e-4);
  });

  it("says why not where no length does it, or there is no rod", () => {
    const weak = byRods.replace("preload 1200 N", "preload 0 N").replace("rate 40 N/mm", "rate 0.001 N/mm");
    expect(trimmedByRods(mechanism(weak.replace(/spring third for heave \{[^}]*\}/, "")))).toMatchObject({
      reason: "no length of the front push-rods carries the weight at ride height",
    });
    const { rods: _, ...without } = mechanism(byRods);
    expect(trimmedByRods(without)).toMatchObject({ reason: "the front axle has no rod whose length could be set" });
  });
});

function mechanismOfSetup(text: string): AxleMechanism {
  return mechanismOf(text, parts, "last");
}
