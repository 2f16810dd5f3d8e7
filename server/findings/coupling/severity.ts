/** How bad a leak is, by the limits of the car. */
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar } from "../context.js";
import { largestLeak, leakOf } from "./leak.js";

export type LeakSeverity = "information" | "warning";

/** Undefined where it is none, or where its own mode does not move the element: that claim is wrong rather than coupled. */
export function severityOf({ model }: CheckedCar, { figures }: CheckedElement): LeakSeverity | undefined {
  const leak = leakOf(figures);
  if (leak === undefined || figures.idleIn.length === figures.for.length) return undefined;
  const largest = largestLeak(leak);
  if (largest > model.leakLimits.warning) return "warning";
  return largest > model.leakLimits.information ? "information" : undefined;
}
