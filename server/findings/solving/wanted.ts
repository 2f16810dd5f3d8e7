/**
 * What is wanted of a car that a few settings are tried on: expectations as the language reads them, and what they come to.
 */
import { isAbsent } from "../../analyses/absent.js";
import { limitsOf } from "../../analyses/expectations.js";
import type { Band } from "../../analyses/solve.js";
import type { ExpectationModel } from "../../model/car.js";
import type { CheckedCar, RuleContext, Varied } from "../context.js";
import { isInside } from "../setup-lines.js";
import { lineOf, type Setting } from "./setting.js";

/** What of a file solving reads; a rule's context and a workspace's file both are one. */
export type SolvableFile = Pick<RuleContext, "cars" | "uses" | "parsedOf" | "vary">;

export interface Outcome {
  readonly figure: string;
  readonly at: string | undefined;
  readonly unit: string;
  readonly value: number;
  readonly isMet: boolean;
  /** To the nearest limit, SI, negative where it is missed. */
  readonly margin: number;
}

/** All that were asked for, in order; or why they cannot be had. */
export type Tried = { readonly outcomes: readonly Outcome[] } | { readonly why: string };

interface Read {
  readonly wanted: ExpectationModel;
  readonly index: number;
}

const ownExpectations = ({ model }: CheckedCar): readonly Read[] =>
  model.expectations
    .map((wanted, index) => ({ wanted, index }))
    .filter(({ wanted }) => isInside(wanted.origin, model.origin))
    .sort((a, b) => a.wanted.origin.start - b.wanted.origin.start);

function readOf({ car, complaints }: Varied, wanted: readonly string[]): readonly Read[] | { readonly why: string } {
  const [complaint] = complaints;
  if (complaint !== undefined) return { why: complaint };
  const found = car === undefined ? [] : ownExpectations(car);
  return found.length === wanted.length
    ? found
    : { why: "Two expectations are about the same figure: say one with `between`." };
}

/** @param wanted each as it stands behind `expect` */
export function trial(file: SolvableFile, of: string, wanted: readonly string[]) {
  const lines = wanted.map((one) => `expect ${one}`);
  const varied = (settings: readonly Setting[]): Varied => file.vary(of, [...settings.map(lineOf), ...lines]);
  return {
    /** The bands that are wanted, SI; or what is wrong with how they are written. */
    bands(): readonly Band[] | { readonly why: string } {
      const read = readOf(varied([]), wanted);
      return "why" in read ? read : read.map((one) => limitsOf(one.wanted.wants));
    },
    at(settings: readonly Setting[]): Tried {
      const made = varied(settings);
      const read = readOf(made, wanted);
      return "why" in read || made.car === undefined
        ? { why: "why" in read ? read.why : "" }
        : outcomesOf(made.car, read);
    },
  };
}

function outcomesOf({ analysis }: CheckedCar, read: readonly Read[]): Tried {
  const outcomes: Outcome[] = [];
  for (const { wanted, index } of read) {
    const judged = analysis.expectations[index];
    if (judged === undefined) return { why: `${wanted.figure} is not judged` };
    const { value, margin, unit, met } = judged;
    if (isAbsent(value) || isAbsent(margin)) return { why: isAbsent(value) ? value.reason : "there is no margin" };
    outcomes.push({ figure: wanted.figure, at: wanted.at, unit, value, margin, isMet: met === true });
  }
  return { outcomes };
}
