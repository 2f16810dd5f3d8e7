/**
 * Judges what a car or set-up is expected to do against what is computed.
 *
 * Margin: distance to the nearest limit in SI, positive where the expectation is met.
 */
import { absent } from "./absent.js";
import { figureAtCase } from "./case-paths.js";
import type { CarCases } from "./equilibrium/results.js";
import { figureAtPath } from "./figure-paths.js";
import type { CarAnalysis, Figure } from "./results.js";
import type { CarRide } from "./whole-car/car-ride.js";
import { motionFigure } from "./whole-car/motion-paths.js";
import { roadFigure } from "./whole-car/road-paths.js";

interface Limit {
  readonly value: number;
  readonly unit: string;
}

/** What is read of an expectation; the resolved car's own have more. */
export interface Expectation {
  readonly figure: string;
  readonly at: string | undefined;
  readonly wants:
    | { readonly kind: "between"; readonly from: Limit; readonly to: Limit }
    | { readonly kind: "above" | "below"; readonly limit: Limit }
    | { readonly kind: "within"; readonly target: Limit; readonly tolerance: Limit };
}

/** A figure on its limit meets it, whatever rounding did to both; relative to the limit. */
const ROUNDING = 1e-9;

/** SI; infinite on the side where nothing is wanted. */
export function limitsOf(wants: Expectation["wants"]): {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
} {
  switch (wants.kind) {
    case "between": {
      const { from, to } = wants;
      return { low: Math.min(from.value, to.value), high: Math.max(from.value, to.value), unit: to.unit };
    }
    case "above":
      return { low: wants.limit.value, high: Infinity, unit: wants.limit.unit };
    case "below":
      return { low: -Infinity, high: wants.limit.value, unit: wants.limit.unit };
    case "within": {
      const tolerance = Math.abs(wants.tolerance.value);
      return { low: wants.target.value - tolerance, high: wants.target.value + tolerance, unit: wants.target.unit };
    }
  }
}

function judged(index: number, expectation: Expectation, value: Figure): CarAnalysis["expectations"][number] {
  const { low, high, unit } = limitsOf(expectation.wants);
  if (typeof value !== "number") return { index, value, unit, met: undefined, margin: value };
  const margin = Math.min(value - low, high - value);
  const scale = Math.max(Number.isFinite(low) ? Math.abs(low) : 0, Number.isFinite(high) ? Math.abs(high) : 0);
  return { index, value, unit, met: margin >= -ROUNDING * scale, margin };
}

/** The figure that an expectation is about, at rest or in a case. */
export function figureAsked(
  { figure, at }: Pick<Expectation, "figure" | "at">,
  car: Pick<CarAnalysis, "axles" | "elements">,
  cases: CarCases,
  ride?: CarRide,
): Figure {
  const moving = roadFigure(ride, figure, at) ?? motionFigure(ride, figure, at);
  if (moving !== undefined) return moving;
  if (at === undefined) return figureAtPath(car, figure);
  const result = cases.at(at);
  return result === undefined ? absent(`the car has no case ${at}`) : figureAtCase(result, figure);
}

export const judge = (
  expectations: readonly Expectation[],
  car: Pick<CarAnalysis, "axles" | "elements">,
  cases: CarCases,
  ride?: CarRide,
): CarAnalysis["expectations"] =>
  expectations.map((expectation, index) => judged(index, expectation, figureAsked(expectation, car, cases, ride)));
