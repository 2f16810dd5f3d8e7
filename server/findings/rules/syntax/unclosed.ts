/**
 * A block, a bracket or a text is opened and never closed, or a block is closed that was never opened.
 *
 * Whatever follows is then read as part of it: the rear axle as a property of the front one, the
 * next line as part of a text. The reader makes a guess where it should have ended, and the guess
 * may be wrong.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * }
 * ```
 */
import type { Item, Quantity, Tuple } from "../../../../grammar/index.js";
import { oneEdit } from "../../edits.js";
import { fromSyntax, problemBehind, type SyntaxProblemOf } from "../../from-problems.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { blockFrom, itemFrom } from "../../tree.js";

type Unclosed = SyntaxProblemOf<(typeof kinds)[number]>;

const meta = {
  id: "unclosed",
  title: "Opened and never closed, or the other way round",
  cost: "syntax",
  severity: "error",
} as const;
const kinds = ["unclosed-block", "unopened-block", "unclosed-bracket", "unclosed-text"] as const;
const closing = { "unclosed-block": "}", "unclosed-bracket": ")", "unclosed-text": '"' } as const;

export const unclosed: Rule = {
  meta,
  check: (context) => fromSyntax(meta, context, kinds, (problem) => ({ message: messageFor(problem) })),
  fix: (finding, context) => {
    const problem = kinds.map((kind) => problemBehind(finding, kind)).find((one) => one !== undefined);
    if (!problem) return [];
    if (problem.kind === "unopened-block") {
      const behind = { start: problem.end, end: problem.end };
      return [oneEdit("Open it with {", finding.uri, behind, " {", { preferred: true })];
    }
    const sign = closing[problem.kind];
    const at = endOfOpen(problem, context);
    const newText = problem.kind === "unclosed-block" ? `\n${indentAt(context.text, finding)}}` : sign;
    return [oneEdit(`Close it with ${sign}`, finding.uri, { start: at, end: at }, newText, { preferred: true })];
  },
};

function messageFor(problem: Unclosed): string {
  switch (problem.kind) {
    case "unclosed-block":
      return 'This block is never closed, so the lines below are read as part of it. Add a "}" where it ends.';
    case "unopened-block":
      return 'A "{" is missing behind this line: the lines below stand further in, and a "}" ends them. Add it.';
    case "unclosed-bracket":
      return 'This bracket is never closed, so the value is not read. Add a ")" after its last number.';
    case "unclosed-text":
      return "This text has no closing quotation mark; a text ends on its own line. Add one.";
  }
}

/** Behind the last thing that was read as part of it. */
function endOfOpen(problem: Unclosed, context: RuleContext): number {
  if (problem.kind === "unclosed-text") return problem.end;
  const { document } = context.parsed;
  const open = problem.kind === "unclosed-block" ? blockFrom(document, problem) : itemFrom(document, problem);
  const end = (open?.kind === "tuple" ? endOfNumbers(open) : open?.end) ?? problem.end;
  return problem.start + context.text.slice(problem.start, end).trimEnd().length;
}

/** `(1, 2, 3 mm`: the unit is meant for all three, so the bracket belongs before it. */
function endOfNumbers({ members, unit, end }: Tuple): number {
  const last = members.at(-1);
  const isForAll = unit === undefined && members.slice(0, -1).every((one) => isQuantity(one) && one.unit === undefined);
  if (!isForAll || last === undefined || !isQuantity(last) || last.unit === undefined) return end;
  return last.start + last.digits.length;
}

const isQuantity = (item: Item): item is Quantity => item.kind === "quantity";

function indentAt(text: string, finding: Finding): string {
  const lineStart = text.lastIndexOf("\n", finding.span.start - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart))?.[0] ?? "";
}
