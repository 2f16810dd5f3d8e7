/**
 * A set-up changes something that the car does not have. The path leads through the car as its
 * blocks are nested (`linkage` and `wheel` may be left out), and one step of it finds nothing.
 *
 * An element that joins the sides, and what an axle has once (its track, its ride height), cannot be changed on
 * one side only. What an element is for is changed behind its name: `front.bar for heave and roll`.
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
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { either, quoted, shortened, suggestion } from "../../wording.js";

const meta = {
  id: "override-without-target",
  title: "A change to something that is not there",
  cost: "model",
  severity: "error",
} as const;

export const overrideWithoutTarget: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["override-without-target", "no-sides"], (problem) => ({
      message: problem.kind === "no-sides" ? noSides(problem) : messageFor(problem),
    })),
  fix: (finding, context) => {
    const sided = problemBehind(finding, "no-sides");
    if (sided !== undefined) return withoutSide(sided, context);
    const problem = problemBehind(finding, "override-without-target");
    if (problem?.failing !== context.text.slice(finding.span.start, finding.span.end)) return [];
    if (isClaim(problem)) return asClaim(finding, context);
    return didYouMean(problem.failing, problem.candidates).map((name, index) =>
      oneEdit(`Write ${quoted(name)}`, finding.uri, finding.span, name, { preferred: index === 0 }),
    );
  },
};

function noSides({ path, side, thing }: ModelProblemOf<"no-sides">): string {
  const what = `${quoted(thing)} is there once, for both sides of the axle`;
  return `${quoted(path)} changes nothing: ${what}. Leave ${quoted(side)} out, if both sides are meant.`;
}

/** Only where the side stands in the line itself; a block around it may hold lines that do have sides. */
function withoutSide({ side, uri, start, end }: ModelProblemOf<"no-sides">, { text }: RuleContext): readonly Fix[] {
  if (text.slice(start, end) !== side || text[end] !== ".") return [];
  return [oneEdit(`Leave ${quoted(side)} out`, uri, { start, end: end + 1 }, "", { preferred: true })];
}

/** `front.bar.for heave` */
const isClaim = ({ failing, path }: ModelProblemOf<"override-without-target">): boolean =>
  failing === "for" && path.endsWith(".for");

function asClaim({ uri, span: { start, end } }: Finding, { text }: RuleContext): readonly Fix[] {
  if (text[start - 1] !== ".") return [];
  return [oneEdit('Write " for" behind the name', uri, { start: start - 1, end }, " for", { preferred: true })];
}

function messageFor(problem: ModelProblemOf<"override-without-target">): string {
  if (isClaim(problem)) {
    const name = problem.path.slice(0, -".for".length);
    return `${quoted(problem.path)} changes nothing: what an element is for stands behind its name. Write \`${shortened(name)} for <mode>\`.`;
  }
  const likely = didYouMean(problem.failing, problem.candidates);
  const instead = likely.length > 0 ? suggestion(likely) : stepsHere(problem.candidates);
  return `${quoted(problem.path)} changes nothing: there is no ${quoted(problem.failing)} in what this derives from.${instead}`;
}

function stepsHere(candidates: readonly string[]): string {
  return candidates.length === 0 ? "" : ` There is ${either(candidates.slice(0, 6).map(quoted))}.`;
}
