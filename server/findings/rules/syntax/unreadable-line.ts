/**
 * The text cannot be read at this place: a sign stands where a word, a value or a new line was
 * expected. What cannot be read is left out; everything else in the file is still computed.
 *
 * A line that is left out is a spring that is not there or a dimension that is not set. The
 * figures on the screen are then those of another car.
 *
 * Signs that only look right (a typographic quote or minus, three dots as one sign), as pasted from
 * a document, are put right by the fix.
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
import type { Span } from "../../../../grammar/index.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { contains } from "../../tree.js";
import { either, quoted } from "../../wording.js";

type Unreadable = SyntaxProblemOf<"unexpected" | "stray-closing" | "bad-character" | "bad-number">;

const meta = { id: "unreadable-line", title: "The line cannot be read", cost: "syntax", severity: "error" } as const;

const kinds = ["unexpected", "stray-closing", "bad-character", "bad-number"] as const;

export const unreadableLine: Rule = {
  meta,
  check: (context) => {
    const cutOff = context.parsed.problems.filter((problem) => problem.kind === "too-deep");
    return fromSyntax(meta, context, kinds, (problem) =>
      cutOff.some((limit) => isBeside(context, problem, limit))
        ? undefined
        : { message: wordsFor(problem, context.text) },
    );
  },
  fix: (finding, context) => {
    const slashes = { start: finding.span.start, end: finding.span.start + 2 };
    if (beginsComment(context.text, finding.span))
      return [oneEdit("Begin the comment with #", finding.uri, slashes, "#", { preferred: true })];
    const bad = problemBehind(finding, "bad-character");
    if (bad?.found === ";")
      return [oneEdit('Remove ";"', finding.uri, withBlank(context.text, bad), "", { preferred: true })];
    if (bad?.suggestion === '"') return [straightQuotes(finding.uri, bad, context)];
    if (bad) return plainSpelling(finding.uri, bad);
    const stray = problemBehind(finding, "stray-closing") ?? strayEquals(finding);
    return stray
      ? [oneEdit(`Remove ${quoted(stray.found)}`, finding.uri, withBlank(context.text, stray), "", { preferred: true })]
      : [];
  },
};

/** Two slashes begin a comment in many other languages. */
const beginsComment = (text: string, { start }: Span): boolean => text.startsWith("//", start);

function wordsFor(problem: Unreadable, text: string): string {
  return problem.kind === "unexpected" && beginsComment(text, problem)
    ? 'A comment begins with "#" here, not with "//". What cannot be read is left out of the car until it is put right.'
    : messageFor(problem);
}

/** Where the reader gave up at its limit of depth, the brackets around that place are empty to it. */
function isBeside(context: RuleContext, problem: Unreadable, limit: Span): boolean {
  if (problem.kind !== "unexpected") return false;
  const { lines } = context.parsed;
  return contains(problem, limit) || lines.position(problem.start).line === lines.position(limit.start).line;
}

/** All of the line at once: one alone would open a text that nobody closes. */
function straightQuotes(uri: string, bad: Span & { readonly found: string }, { parsed }: RuleContext): Fix {
  const { line } = parsed.lines.position(bad.start);
  const [from, to] = [parsed.lines.lineStart(line), parsed.lines.lineEnd(line)];
  const marks = parsed.problems.filter(
    (one) => one.kind === "bad-character" && one.suggestion === '"' && one.start >= from && one.end <= to,
  );
  const edits = marks.map(({ start, end }) => ({ uri, span: { start, end }, newText: '"' }));
  // A mark on its own may stand for inches, or in a note: then a person has to look.
  return { title: "Write straight quotation marks", edits, preferred: true, safe: marks.length % 2 === 0 };
}

function plainSpelling(uri: string, bad: SyntaxProblemOf<"bad-character">): readonly Fix[] {
  if (bad.suggestion === undefined) return [];
  // A long dash may have stood for a minus or for the dots of a range: a person has to say which.
  const safe = !"\u2013\u2012".includes(bad.found);
  return [oneEdit(`Write ${quoted(bad.suggestion)}`, uri, bad, bad.suggestion, { preferred: true, safe })];
}

/** Values stand behind their word without a sign; in many other languages they do not. */
function strayEquals(finding: Finding): SyntaxProblemOf<"unexpected"> | undefined {
  const unexpected = problemBehind(finding, "unexpected");
  return unexpected?.found === "=" && unexpected.expected.length === 0 ? unexpected : undefined;
}

function withBlank(text: string, { start, end }: Span): Span {
  return { start, end: text[end] === " " && text[start - 1] === " " ? end + 1 : end };
}

function messageFor(problem: Unreadable): string {
  switch (problem.kind) {
    case "unexpected":
      return `${foundWords(problem.found)}${expectedWords(problem)} What cannot be read is left out of the car until it is put right.`;
    case "stray-closing":
      return `This ${quoted(problem.found)} closes nothing: no bracket of its kind is open here. Remove it, or open one above.`;
    case "bad-character":
      return `${quoted(problem.found)} has no meaning in this language and is skipped. ${characterHint(problem.found, problem.suggestion)}`;
    case "bad-number":
      return `${quoted(problem.found)} is no number. Write digits with at most one decimal point, such as 12.5, and leave a blank before the unit.`;
  }
}

function foundWords(found: string): string {
  const text = found.trim();
  return text === "" ? "The line ends too early." : `${quoted(text)} cannot stand here.`;
}

const expectations: Readonly<Record<string, string>> = {
  statement: "a statement",
  name: "a name",
  value: "a value",
  "end of statement": "the end of the statement (a new line, or a comma inside braces)",
};

function expectedWords({ expected, found }: SyntaxProblemOf<"unexpected">): string {
  if (found === "=" && expected.length === 0) return " A value follows its word without a sign.";
  return expected.length === 0
    ? ""
    : ` Expected here: ${either(expected.map((what) => expectations[what] ?? quoted(what)))}.`;
}

function characterHint(found: string, suggestion: string | undefined): string {
  if (found === "^") return "A power belongs to a unit (m^2), and units are multiplied with a star: kg*m^2.";
  if (suggestion === '"') return "Write straight quotation marks.";
  if (found === ";") return "A line ends a statement; inside braces on one line a comma does. Remove it.";
  return suggestion === undefined
    ? "Names are letters, digits and hyphens; anything may stand in a comment, after #."
    : `Write ${quoted(suggestion)} instead.`;
}
