/** The front axle's figures of a sample, and that the sample still says what a second way rests on. */
import { expect } from "vitest";
import type { AxleAnalysis, AxleRates, ElementFigures } from "../../server/analyses/results.js";
import type { CheckedCar } from "../../server/findings/context.js";
import { sharedLinkage } from "../support/plain-axle.js";
import { sampleCar, samples } from "../support/samples.js";
import { elementIn } from "../support/written-car.js";

export interface Front {
  readonly car: CheckedCar;
  readonly axle: AxleAnalysis;
  readonly rates: AxleRates;
  element(name: string): ElementFigures;
}

/** Of samples/systems/`file`.crank; `car` names a set-up in it. */
export function frontOf(file: string, car?: string): Front {
  const checked = sampleCar(`systems/${file}.crank`, car);
  const axle = checked.analysis.axles.front;
  if (axle === undefined) throw new Error(`no front axle in ${file}`);
  return { car: checked, axle, rates: axle.rates, element: (name) => elementIn(axle, `front.${name}`) };
}

/** The numbers that the second way takes from the file, as they stand in it. */
export function says(file: string, ...texts: readonly string[]): void {
  const text = samples[`systems/${file}.crank`] ?? "";
  for (const part of [...sharedLinkage, ...texts]) expect(text).toContain(part);
}
