/**
 * Where the sides of the axle differ by a line that stands for one of them: takes that line out, so that
 * the side mirrors the other again, or gives the other side the same.
 */
import { differencesOf } from "../side-differences.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { mirrorAgain, sameOnBoth, seenFromOwnLine } from "../one-sided.js";

/** Lines that are tried: a car that is different all over is meant so. */
const MOST = 3;

export function mirrorFixes(context: RuleContext, { model }: CheckedCar, { axle }: CheckedElement): readonly Fix[] {
  const differences = differencesOf(model).filter((difference) => difference.axle === axle?.name);
  return differences.slice(0, MOST).flatMap((one) => {
    const difference = seenFromOwnLine(context, one);
    const { side } = difference;
    const what = difference.what.slice(difference.axle.length + 1);
    const other = side === "left" ? "right" : "left";
    return [
      ...fixOf(
        `Mirror the ${other} side again: take the ${side} side's own ${what} out`,
        mirrorAgain(context, difference),
      ),
      ...fixOf(`Give the ${other} side the same ${what}`, sameOnBoth(context, model, difference)),
    ];
  });
}

const fixOf = (title: string, edits: readonly TextEdit[] | undefined): readonly Fix[] =>
  edits === undefined ? [] : [{ title, edits, preferred: false, safe: false }];
