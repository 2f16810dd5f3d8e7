/**
 * Everything computed for one car or set-up: its axles' figures, which are shared with every car that
 * has the same axle, and what takes both axles.
 */
import { absent, isAbsent } from "./absent.js";
import { type Expectation, judge } from "./expectations.js";
import type { AxleAnalysis, AxleRates, CarAnalysis, ElementFigures, Figure } from "./results.js";

/** What is read of a car; `Axle` is whatever the caller computes an axle's analysis from. */
export interface CarQuestion<Axle> {
  readonly axles: { readonly front: Axle | undefined; readonly rear: Axle | undefined };
  readonly expectations: readonly Expectation[];
}

/** Share of `own` in the car's roll stiffness, tyres left out. */
function rollShare(own: AxleRates, other: AxleRates | undefined): Figure {
  if (isAbsent(own.rollStiffness)) return own.rollStiffness;
  if (other === undefined) return absent("the car has one axle only");
  if (isAbsent(other.rollStiffness)) return other.rollStiffness;
  const sum = own.rollStiffness + other.rollStiffness;
  return Math.abs(sum) > 0 ? own.rollStiffness / sum : absent("neither axle has any roll stiffness");
}

function withShare(analysis: AxleAnalysis | undefined, other: AxleAnalysis | undefined): AxleAnalysis | undefined {
  if (analysis === undefined) return undefined;
  return { ...analysis, rates: { ...analysis.rates, rollStiffnessShare: rollShare(analysis.rates, other?.rates) } };
}

/**
 * @param analysisOf the analysis of one axle, remembered or computed
 * @param elements figures of the elements that join the axles
 */
export function analyseCar<Axle>(
  car: CarQuestion<Axle>,
  analysisOf: (axle: Axle) => AxleAnalysis,
  elements: readonly ElementFigures[] = [],
): CarAnalysis {
  const front = car.axles.front && analysisOf(car.axles.front);
  const rear = car.axles.rear && analysisOf(car.axles.rear);
  const axles = { front: withShare(front, rear), rear: withShare(rear, front) };
  return { axles, elements, expectations: judge(car.expectations, { axles, elements }) };
}
