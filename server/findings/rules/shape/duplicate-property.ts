/**
 * A property stands twice in one block. Only one of the two can hold, and which one is meant
 * cannot be told from the text.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm, length 300 mm }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * }
 * ```
 */
import type { RuleContext } from "../../context.js";
import { oneEdit, removal } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Fix, Rule } from "../../finding.js";
import { entryAt } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = { id: "duplicate-property", title: "A property given twice", cost: "model", severity: "error" } as const;

export const duplicateProperty: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["duplicate", "rivals"], (problem) => {
      if (problem.kind === "rivals") return rivals(problem);
      if (problem.what !== "property") return undefined;
      return {
        message: `${quoted(problem.word)} is given twice in this block, and only one can hold. Keep the one that is meant and remove the other.`,
        related: [{ origin: problem.first, message: `${quoted(problem.word)} is given here first` }],
      };
    }),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "duplicate") ?? problemBehind(finding, "rivals");
    return problem ? choices(problem, context) : [];
  },
};

const rivals = ({ word, other, first }: ModelProblemOf<"rivals">) => ({
  message: `${quoted(word)} stands beside ${quoted(other)}, and only one of the two can hold. Keep the one that is meant and remove the other.`,
  related: [{ origin: first, message: `${quoted(other)} stands here` }],
});

function choices(problem: ModelProblemOf<"duplicate" | "rivals">, context: RuleContext): readonly Fix[] {
  const { document } = context.parsed;
  if (problem.uri !== context.uri || problem.first.uri !== context.uri) return [];
  const first = entryAt(document, problem.first);
  const second = entryAt(document, problem);
  if (!first || !second || first === second) return [];
  const [one, other] = [first, second].map((entry) => context.text.slice(entry.start, entry.end));
  const same = one === other;
  const without = (span: { start: number; end: number }) => removal(context.text, span);
  const keepFirst = oneEdit(`Keep ${quoted(one ?? "")}`, problem.uri, without(second), "", {
    preferred: same,
    safe: same,
  });
  return same ? [keepFirst] : [keepFirst, oneEdit(`Keep ${quoted(other ?? "")}`, problem.uri, without(first), "")];
}
