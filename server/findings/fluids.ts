/** Elements with gas or oil in them: where their findings stand, and their figures in words. */
import type { FluidFigures } from "../analyses/results.js";
import type { ResolvedBlock } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import { showNumber, showQuantity } from "../quantities/index.js";
import { type CheckedElement, elementsOf } from "./axle-parts.js";
import type { CheckedCar, RuleContext } from "./context.js";
import type { Finding, Severity } from "./finding.js";
import { placeFor } from "./where.js";

export interface FluidElement {
  readonly car: CheckedCar;
  readonly element: CheckedElement;
}

/** Every one with gas or oil, once where its left and right are written as one. */
export function fluidsOf(context: RuleContext): readonly FluidElement[] {
  return context.cars.flatMap((car) => {
    const seen = new Set<number>();
    return elementsOf(car).flatMap((element) => {
      const { nameOrigin } = element.model;
      if (element.figures.fluid === undefined || seen.has(nameOrigin.start)) return [];
      seen.add(nameOrigin.start);
      return [{ car, element }];
    });
  });
}

export interface FluidWords {
  readonly used: string;
  readonly lowest: string;
  readonly highest: string;
}

/** Pressures in the author's unit, above atmosphere. */
export function fluidWords({ model, figures }: CheckedElement): FluidWords {
  const unit = pressureUnit(model.block) ?? "bar";
  const { used, over } = figures.fluid ?? NOTHING;
  const shown = (value: number): string => showQuantity(value, unit, 3);
  return {
    used: typeof used === "number" ? `${showNumber(used * 100, 3)} %` : "part",
    lowest: "kind" in over ? "nothing" : shown(over.lowest),
    highest: "kind" in over ? "nothing" : shown(over.highest),
  };
}

const NOTHING: Pick<FluidFigures, "used" | "over"> = { used: undefined, over: { lowest: 0, highest: 0 } };

/** The statements of a word in the element's own block or in that of its accumulator. */
function statementsOf(block: ResolvedBlock, word: string): readonly ResolvedBlock["statements"][number][] {
  return block.statements.flatMap((statement) => [
    ...(statement.word === word ? [statement] : []),
    ...(statement.word === "accumulator" && statement.block !== undefined ? statementsOf(statement.block, word) : []),
  ]);
}

function pressureUnit(block: ResolvedBlock): string | undefined {
  const [value] = statementsOf(block, "pressure").flatMap(({ values }) => values);
  return value?.kind === "number" ? value.unit : undefined;
}

export interface FluidFault {
  readonly rule: string;
  readonly severity: Severity;
  /** The lines that it is the value of, the likeliest first. */
  readonly words: readonly string[];
  readonly message: string;
}

/** At the value, where it is written in this file; else at the element. */
export function fluidFinding(
  context: RuleContext,
  car: CheckedCar,
  { model }: CheckedElement,
  { rule, severity, words, message }: FluidFault,
): Finding {
  const places: readonly Origin[] = words.flatMap((word) =>
    statementsOf(model.block, word).map(({ origin }) => origin),
  );
  const { start, end } = placeFor(context, car, { places: [...places, model.nameOrigin], element: model });
  return { rule, severity, uri: context.uri, span: { start, end }, message, related: [], tags: [], data: undefined };
}
