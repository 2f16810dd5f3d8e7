/**
 * A set-up changes something that the car does not have. The path leads through the car as its
 * blocks are nested (`linkage` and `wheel` may be left out), and one step of it finds nothing.
 *
 * The line changes nothing: the car would go out with the inherited value, while the set-up says otherwise.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.thrid.rate 95 N/mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N/mm
 * }
 * ```
 */
import { didYouMean } from "../../did-you-mean.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { either, quoted, suggestion } from "../../wording.js";

const meta = {
  id: "override-without-target",
  title: "A change to something that is not there",
  cost: "model",
  severity: "error",
} as const;

export const overrideWithoutTarget: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["override-without-target"], (problem) => ({ message: messageFor(problem) })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "override-without-target");
    if (problem?.failing !== context.text.slice(finding.span.start, finding.span.end)) return [];
    return didYouMean(problem.failing, problem.candidates).map((name, index) =>
      oneEdit(`Write ${quoted(name)}`, finding.uri, finding.span, name, { preferred: index === 0 }),
    );
  },
};

function messageFor(problem: ModelProblemOf<"override-without-target">): string {
  const likely = didYouMean(problem.failing, problem.candidates);
  const instead = likely.length > 0 ? suggestion(likely) : stepsHere(problem.candidates);
  return `${quoted(problem.path)} changes nothing: there is no ${quoted(problem.failing)} in what this derives from.${instead}`;
}

function stepsHere(candidates: readonly string[]): string {
  return candidates.length === 0 ? "" : ` There is ${either(candidates.slice(0, 6).map(quoted))}.`;
}
