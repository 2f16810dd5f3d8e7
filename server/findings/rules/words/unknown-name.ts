/**
 * A name is used that nothing has: an eye that the rocker lacks, a part that no catalogue holds, a
 * case or an element that is not there. Names are looked up in the file and in the files that it uses.
 *
 * An element on an eye that does not exist is connected to nothing, and its rate is missing from every sum.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.corner-bar.fit TB-102
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.corner-bar.fit TB-120
 * }
 * ```
 */
import { didYouMean } from "../../did-you-mean.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { either, quoted, suggestion, targetWords } from "../../wording.js";

const meta = { id: "unknown-name", title: "A name that nothing has", cost: "model", severity: "error" } as const;

/** What another file may declare. While one that is used is missing, its names are not unknown, only not yet here. */
const fromFiles: ReadonlySet<string> = new Set(["part", "car", "setup", "car-or-setup", "let"]);

export const unknownName: Rule = {
  meta,
  check: (context) => {
    const isIncomplete = context.problems.some(({ kind }) => kind === "file-not-found");
    return fromModel(meta, context, ["unknown-name"], (problem) =>
      isIncomplete && fromFiles.has(problem.target) ? undefined : { message: messageFor(problem) },
    );
  },
  fix: (finding, context) => {
    const problem = problemBehind(finding, "unknown-name");
    if (!problem) return [];
    const names = didYouMean(problem.name, problem.candidates);
    // One candidate is worth offering even where it looks quite different.
    const offered = names.length === 0 && problem.candidates.length === 1 ? problem.candidates : names;
    const span = placeOfName(context.text, finding.span, problem.name);
    return offered.map((name, index) =>
      oneEdit(`Use ${quoted(name)}`, finding.uri, span, name, { preferred: index === 0 && names.length > 0 }),
    );
  },
};

function messageFor(problem: ModelProblemOf<"unknown-name">): string {
  const likely = didYouMean(problem.name, problem.candidates);
  const instead = likely.length > 0 ? suggestion(likely) : known(problem.candidates, problem.target);
  return `There is no ${targetWords(problem.target)} called ${quoted(problem.name)} here, so this refers to nothing.${instead}`;
}

function known(candidates: readonly string[], target: string): string {
  if (candidates.length === 0)
    return ` No ${targetWords(target)} is declared in this file or in what it uses${fromFiles.has(target) ? '; `use "FILE.crank"` at the top makes those of another file known' : ""}.`;
  const more = candidates.length > 6 ? `, and ${candidates.length - 6} more` : "";
  return ` There is ${either(candidates.slice(0, 6).map(quoted))}${more}.`;
}

/** The problem may lie on a whole path (`left.rocker.thrid`); only the name itself is replaced. */
function placeOfName(text: string, span: { start: number; end: number }, name: string) {
  const within = text.slice(span.start, span.end).lastIndexOf(name);
  return within === -1 ? span : { start: span.start + within, end: span.start + within + name.length };
}
