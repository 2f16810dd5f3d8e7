/**
 * A block or bracket is nested deeper, or a name is longer, than the language allows. Both limits
 * are far beyond any car; reaching one is the sign of a runaway script or a missing quotation mark.
 *
 * What lies beyond the limit is not read.
 */
import { fromSyntax, type SyntaxProblemOf } from "../../from-problems.js";
import type { Rule } from "../../finding.js";

const meta = {
  id: "beyond-limits",
  title: "Nested too deep, or a name too long",
  cost: "syntax",
  severity: "error",
} as const;

export const beyondLimits: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, ["too-deep", "too-long-name"], (problem) => ({ message: messageFor(problem) })),
};

function messageFor(problem: SyntaxProblemOf<"too-deep" | "too-long-name">): string {
  return problem.kind === "too-deep"
    ? `Blocks and brackets may stand ${problem.limit} deep in each other; what is deeper is not read. Close some of them, or let a value have a name of its own with "let".`
    : `A name may have ${problem.limit} letters; this one is not read. Shorten it, or look for a missing quotation mark or blank.`;
}
