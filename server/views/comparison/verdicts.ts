/** Expectations of two cars side by side: newly met, newly missed, and how far each still is. */
import type { CheckedCar } from "../../findings/context.js";
import type { Origin } from "../../model/origin.js";
import type { NewNames } from "./renames.js";
import { expectationsOf, type JudgedExpectation } from "../expectations.js";

export interface VerdictChange {
  /** "front.heave-rate at hairpin" */
  readonly asked: string;
  readonly status:
    | "newly-missed"
    | "newly-met"
    | "newly-asked"
    | "still-missed"
    | "still-met"
    | "no-longer-judged"
    | "no-longer-asked";
  readonly wanted: string;
  readonly old: string | undefined;
  readonly now: string | undefined;
  readonly margin: string | undefined;
  /** Figure, what is wanted, margin or reason in a sentence. */
  readonly message: string;
  readonly origin: Origin;
  /** From 1. */
  readonly line: number;
}

/** In the order of the text; one that was never judged, and still is not, is left out. */
export function verdictChanges(
  old: CheckedCar,
  now: CheckedCar,
  names: NewNames,
  lineOf: (origin: Origin, side: "old" | "now") => number,
): readonly VerdictChange[] {
  const before = new Map(expectationsOf(old).map((one) => [askedNow(one.asked, names), one]));
  const after = expectationsOf(now);
  const asked = new Set(after.map((one) => one.asked));
  const gone = [...before].flatMap(([key, one]) => (asked.has(key) ? [] : [one]));
  return [
    ...after.flatMap((one) => changeOf(before.get(one.asked), one, lineOf(one.origin, "now")) ?? []),
    ...gone.map(
      (one): VerdictChange => ({
        ...told(one, one),
        now: undefined,
        status: "no-longer-asked",
        line: lineOf(one.origin, "old"),
      }),
    ),
  ];
}

function askedNow(asked: string, names: NewNames): string {
  const [figure = "", at] = asked.split(" at ");
  return at === undefined ? names.path(figure) : `${names.path(figure)} at ${names.case(at)}`;
}

function changeOf(was: JudgedExpectation | undefined, is: JudgedExpectation, line: number): VerdictChange | undefined {
  const status = statusOf(was?.verdict, is.verdict);
  return status && { ...told(was, is), status, line };
}

function statusOf(
  was: JudgedExpectation["verdict"] | undefined,
  is: JudgedExpectation["verdict"],
): VerdictChange["status"] | undefined {
  switch (is) {
    case "missed":
      return was === "missed" ? "still-missed" : "newly-missed";
    case "met":
      return was === undefined ? "newly-asked" : was === "met" ? "still-met" : "newly-met";
    case "not-judged":
      return was === "met" || was === "missed" ? "no-longer-judged" : undefined;
  }
}

const told = (
  was: JudgedExpectation | undefined,
  { asked, wanted, actual, margin, message, origin }: JudgedExpectation,
) => ({
  asked,
  wanted,
  old: was?.actual,
  now: actual,
  margin,
  message,
  origin,
});
