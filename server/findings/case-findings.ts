/**
 * Walking over the load cases of the cars in a file, and the finding that stands at a case: at its line where the car or
 * set-up has one, else at the set-up that changes what happens in it.
 */
import type { CaseAbsent, CaseFigures, CaseResult, CaseWheel, NoEquilibrium } from "../analyses/equilibrium/results.js";
import type { CaseModel } from "../model/car.js";
import { showQuantity, unitSystem, usualUnit } from "../quantities/index.js";
import type { CheckedCar, RuleContext } from "./context.js";
import type { Finding, Rule } from "./finding.js";
import { placeFor } from "./where.js";

export interface CheckedCase<Result = CaseResult> {
  readonly car: CheckedCar;
  readonly model: CaseModel;
  readonly result: Result;
}

/** Every case of every car and set-up of the file, in the order of the text. */
function casesOf({ cars }: RuleContext): readonly CheckedCase[] {
  return cars.flatMap((car) =>
    car.model.cases.flatMap((model) => {
      const result = car.cases.at(model.name);
      return result === undefined ? [] : [{ car, model, result }];
    }),
  );
}

export const solvedCases = (context: RuleContext): readonly CheckedCase<CaseFigures>[] =>
  casesOf(context).flatMap(({ result, ...rest }) => (result.kind === "equilibrium" ? [{ ...rest, result }] : []));

export const failedCases = (context: RuleContext): readonly CheckedCase<NoEquilibrium>[] =>
  casesOf(context).flatMap(({ result, ...rest }) => (result.kind === "no-equilibrium" ? [{ ...rest, result }] : []));

export const absentCases = (context: RuleContext): readonly CheckedCase<CaseAbsent>[] =>
  casesOf(context).flatMap(({ result, ...rest }) => (result.kind === "absent" ? [{ ...rest, result }] : []));

/** Whether the car or set-up underneath, in the case of this name, is the same in what matters. */
export function sameInBase({ car, model }: CheckedCase<unknown>, has: (result: CaseResult) => boolean): boolean {
  const result = car.base?.cases.at(model.name);
  return result !== undefined && has(result);
}

export function caseFinding(
  context: RuleContext,
  { car, model }: CheckedCase<unknown>,
  meta: Rule["meta"],
  message: string,
): Finding {
  const { start, end } = placeFor(context, car, { places: [model.nameOrigin, model.origin] });
  const { uri } = context;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri,
    span: { start, end },
    message,
    related: [],
    tags: [],
    data: undefined,
  };
}

export const wheelWords = ({ axle, side }: Pick<CaseWheel, "axle" | "side">): string => `the ${axle} ${side} wheel`;

/** A length in the car's own system. */
export function lengthIn({ model }: CheckedCar, metres: number): string {
  const given = model.axles.front?.track ?? model.wheelbase;
  return showQuantity(metres, usualUnit("length", given === undefined ? "si" : unitSystem(given.unit)), 3);
}

/** "a", "a and b", "a, b and c". */
export function listed(parts: readonly string[]): string {
  const last = parts.at(-1) ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
}
