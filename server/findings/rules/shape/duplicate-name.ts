/**
 * Two things in one block have the same name. A path or a reference that uses it could mean
 * either, so the second one is not taken into the car.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 *   torsion-bar TB-185 { diameter 19.5 mm, length 290 mm }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 *   torsion-bar TB-195 { diameter 19.5 mm, length 290 mm }
 * }
 * ```
 */
import { oneEdit } from "../../edits.js";
import { fromModel, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = { id: "duplicate-name", title: "Two things with one name", cost: "model", severity: "error" } as const;

export const duplicateName: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["duplicate"], (problem) =>
      problem.what !== "name"
        ? undefined
        : {
            message: `${quoted(problem.word)} is the name of something else already, so this one cannot be referred to. Give it a name of its own.`,
            related: [{ origin: problem.first, message: `${quoted(problem.word)} is declared here first` }],
          },
    ),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "duplicate");
    if (!problem || context.text.slice(finding.span.start, finding.span.end) !== problem.word) return [];
    const name = freeName(problem.word, context.text);
    return [oneEdit(`Rename to ${quoted(name)}`, finding.uri, finding.span, name)];
  },
};

function freeName(name: string, text: string): string {
  const words = new Set(text.match(/[\p{L}\d-]+/gu));
  let number = 2;
  while (words.has(`${name}-${number}`)) number++;
  return `${name}-${number}`;
}
