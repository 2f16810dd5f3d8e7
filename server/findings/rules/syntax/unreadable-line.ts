/**
 * The text cannot be read at this place: a sign stands where a word, a value or a new line was
 * expected. What cannot be read is left out; everything else in the file is still computed.
 *
 * A line that is left out is a spring that is not there or a dimension that is not set. The
 * figures on the screen are then those of another car.
 *
 * Signs that only look right (a typographic quote or minus, a degree sign, a raised 2), as pasted
 * from a document, are put right by the fix.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate = 95 N/mm
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
import { oneEdit } from "../../edits.js";
import { fromSyntax, problemBehind, type SyntaxProblemOf } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { either, quoted } from "../../wording.js";

type Unreadable = SyntaxProblemOf<"unexpected" | "stray-closing" | "bad-character" | "bad-number">;

const meta = { id: "unreadable-line", title: "The line cannot be read", cost: "syntax", severity: "error" } as const;

/** Signs that a word processor makes of the ones that the language has. */
const lookalikes: Readonly<Record<string, string>> = {
  "\u2212": "-",
  "\u201c": '"',
  "\u201d": '"',
  "\u201e": '"',
  "\u00d7": "x",
  "\u00b7": "*",
  "\u22c5": "*",
  "\u00b2": "^2",
  "\u00b3": "^3",
  "\u00b0": " deg",
  "\u2026": "..",
  "\u00a0": " ",
  "\u202f": " ",
};

export const unreadableLine: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, ["unexpected", "stray-closing", "bad-character", "bad-number"], (problem) => ({
      message: messageFor(problem),
    })),
  fix: (finding) => {
    const stray = problemBehind(finding, "stray-closing");
    if (stray) return [oneEdit(`Remove ${quoted(stray.found)}`, finding.uri, stray, "", { preferred: true })];
    const bad = problemBehind(finding, "bad-character");
    const plain = bad && plainSpelling(bad.found);
    return bad && plain !== undefined
      ? [
          oneEdit(`Write ${quoted(plain.trim() || "a blank")}`, finding.uri, bad, plain, {
            preferred: true,
            safe: true,
          }),
        ]
      : [];
  },
};

function messageFor(problem: Unreadable): string {
  switch (problem.kind) {
    case "unexpected":
      return `${foundWords(problem.found)}${expectedWords(problem.expected)} What cannot be read is left out of the car until it is put right.`;
    case "stray-closing":
      return `This ${quoted(problem.found)} closes nothing: no bracket of its kind is open here. Remove it, or open one above.`;
    case "bad-character":
      return `${quoted(problem.found)} has no meaning in this language and is skipped. ${characterHint(problem.found)}`;
    case "bad-number":
      return `${quoted(problem.found)} is no number. Write digits with at most one decimal point, such as 12.5, and leave a blank before the unit.`;
  }
}

function foundWords(found: string): string {
  const text = found.trim();
  return text === "" ? "The line ends too early." : `${quoted(text)} cannot stand here.`;
}

function expectedWords(expected: readonly string[]): string {
  return expected.length === 0 ? "" : ` Expected ${either(expected.slice(0, 4))}.`;
}

function characterHint(found: string): string {
  const plain = plainSpelling(found);
  return plain === undefined
    ? "Names are letters, digits and hyphens; anything may stand in a comment, after #."
    : `Write ${quoted(plain.trim() || "a blank")} instead.`;
}

function plainSpelling(found: string): string | undefined {
  const signs = [...found].map((sign) => lookalikes[sign]);
  return signs.length > 0 && signs.every((sign) => sign !== undefined) ? signs.join("") : undefined;
}
