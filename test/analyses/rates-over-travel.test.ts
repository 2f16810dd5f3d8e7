import { describe, expect, it } from "vitest";
import { asItStands } from "../../server/analyses/as-it-stands.js";
import { ratesOverTravel } from "../../server/analyses/rates-over-travel.js";
import type { AxleName } from "../../server/model/origin.js";
import { sampleCar } from "../support/samples.js";

function ratesOf(name: string, end: AxleName) {
  const car = sampleCar(name);
  const analysis = car.analysis.axles[end]!;
  const trim = analysis.rates.trim;
  if ("kind" in trim) throw new Error(trim.reason);
  const mechanism = asItStands(car.mechanism(end)!, analysis);
  return {
    mechanism,
    rates: analysis.rates,
    at: (travels: readonly number[]) => ratesOverTravel(mechanism, trim, travels),
  };
}

describe("rates against travel", () => {
  it.each([
    ["quill/quill.crank", "front"],
    ["quill/quill.crank", "rear"],
    ["dunlin/dunlin.crank", "front"],
    ["tern/tern.crank", "rear"],
  ] as const)("say at rest what the rates say (%s, %s)", (name, end) => {
    const { at, rates, mechanism } = ratesOf(name, end);
    const [rest] = at([mechanism.staticTravel]);
    expect(rest!.heave! / Number(rates.heaveRate)).toBeCloseTo(1, 9);
    expect(rest!.roll! / Number(rates.rollStiffness)).toBeCloseTo(1, 9);
  });

  it("meet 4 K_LL = heave rate + 4 K_roll / t² at every travel of a mirrored axle", () => {
    const { at, mechanism } = ratesOf("quill/quill.crank", "front");
    for (const { heave, single, roll } of at([-0.028, -0.004, 0, 0.011, 0.024]))
      expect((heave! + (4 * roll!) / mechanism.track! ** 2) / (4 * single!)).toBeCloseTo(1, 9);
  });

  it("lose the heave spring where its seat is left in droop", () => {
    const { at } = ratesOf("quill/quill.crank", "front");
    const [seated, free] = at([-0.004, -0.02]);
    expect(seated!.heave! - free!.heave!).toBeGreaterThan(60e3);
  });
});
