/**
 * A block, a bracket or a text is opened and never closed.
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
import { oneEdit } from "../../edits.js";
import { fromSyntax, type SyntaxProblemOf } from "../../from-problems.js";
import type { Finding, Rule } from "../../finding.js";

type Unclosed = SyntaxProblemOf<"unclosed-block" | "unclosed-bracket" | "unclosed-text">;

const meta = { id: "unclosed", title: "Opened and never closed", cost: "syntax", severity: "error" } as const;
const kinds = ["unclosed-block", "unclosed-bracket", "unclosed-text"] as const;
const closing = { "unclosed-block": "}", "unclosed-bracket": ")", "unclosed-text": '"' } as const;

export const unclosed: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, kinds, (problem) => ({
      message: messageFor(problem),
      span: problem.kind === "unclosed-text" ? problem : problem.opened,
    })),
  fix: (finding, context) => {
    const problem = finding.data as Unclosed;
    const sign = closing[problem.kind];
    const at = endOfCode(context.text, finding.span.end, problem.end);
    const newText = problem.kind === "unclosed-block" ? `\n${indentAt(context.text, finding)}}` : sign;
    return [oneEdit(`Close it with ${sign}`, finding.uri, { start: at, end: at }, newText, { preferred: true })];
  },
};

function messageFor(problem: Unclosed): string {
  switch (problem.kind) {
    case "unclosed-block":
      return 'This block is never closed, so the lines below are read as part of it. Add a "}" where it ends.';
    case "unclosed-bracket":
      return 'This bracket is never closed, so the value is not read. Add a ")" after its last number.';
    case "unclosed-text":
      return "This text has no closing quotation mark; a text ends on its own line. Add one.";
  }
}

/** Behind the last thing that is read as part of it, before blank space. */
function endOfCode(text: string, from: number, to: number): number {
  return from + text.slice(from, Math.max(from, to)).trimEnd().length;
}

function indentAt(text: string, finding: Finding): string {
  const lineStart = text.lastIndexOf("\n", finding.span.start - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart))?.[0] ?? "";
}
