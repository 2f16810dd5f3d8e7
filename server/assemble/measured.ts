/** What was measured, from the words of the car: pads and figures, with how far off each may be. */
import type { CarModel } from "../model/car.js";
import { measuredFigures, ownMeasured } from "../model/measured-view.js";
import type { Origin } from "../model/origin.js";
import { statementOf } from "./reading.js";

export interface MeasuredValue {
  /** As it is asked of the car: `front.heave-rate`, or the pad's name. */
  readonly figure: string;
  readonly at: string | undefined;
  /** SI */
  readonly value: number;
  readonly unit: string;
  /** SI, or a share of the prediction; undefined for the usual one. */
  readonly within: { readonly value: number; readonly isShare: boolean } | undefined;
  /** 0 to 3 for what a pad under a wheel shows, kg. */
  readonly wheel: number | undefined;
  readonly origin: Origin;
}

export interface Measured {
  readonly when: string | undefined;
  readonly values: readonly MeasuredValue[];
}

const PADS = ["front-left", "front-right", "rear-left", "rear-right"] as const;

/** Undefined where nothing was measured on this very car or set-up. */
export function measuredOf(car: CarModel): Measured | undefined {
  const block = ownMeasured(car)?.block;
  if (block === undefined) return undefined;
  const [when] = statementOf(block, "when")?.values ?? [];
  const weights = statementOf(block, "corner-weights")?.block;
  const pads = PADS.flatMap((pad, wheel): MeasuredValue[] => {
    const statement = statementOf(weights, pad);
    const [value] = statement?.values ?? [];
    if (statement === undefined || value?.kind !== "number") return [];
    const { value: mass, unit } = value;
    const figure = `corner-weight ${pad}`;
    return [{ figure, at: undefined, value: mass, unit, within: undefined, wheel, origin: statement.origin }];
  });
  const figures = measuredFigures(car).map(
    ({ figure, at, value, within, origin }): MeasuredValue => ({
      figure,
      at,
      value: value.value,
      unit: value.unit,
      within: within && { value: within.given.value, isShare: within.isShare },
      wheel: undefined,
      origin,
    }),
  );
  return { when: when?.kind === "text" ? when.text : undefined, values: [...pads, ...figures] };
}
