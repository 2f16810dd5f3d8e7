/** The load case that is asked for, which the car has to have. */
import type { CheckedCar } from "../findings/context.js";
import type { Asked } from "./car-command.js";
import { UsageError } from "./usage-error.js";

export function caseAsked({ cases, model }: CheckedCar, { at }: Asked): string | undefined {
  if (at === undefined || cases.names.includes(at)) return at;
  const has = cases.names.length === 0 ? "it has none" : `it has ${cases.names.join(", ")}`;
  throw new UsageError(`${model.setup ?? model.name} has no case ${at}; ${has}`);
}
