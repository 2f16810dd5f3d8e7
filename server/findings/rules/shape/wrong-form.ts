/**
 * The word is right, but what follows it is not what the word takes: a value is missing, there is
 * one too many, or a name stands where a number is due.
 *
 * The line is left out until it has the form that the message shows.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.wheel.camber (0, -2.5) deg
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.wheel.camber -2.75 deg
 * }
 * ```
 */
import type { Span } from "../../../../grammar/index.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { either, quoted } from "../../wording.js";

const meta = {
  id: "wrong-form",
  title: "A word followed by the wrong thing",
  cost: "model",
  severity: "error",
} as const;

export const wrongForm: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["wrong-form"], (problem) => ({ message: messageFor(problem) })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "wrong-form");
    const isFalling = problem?.detail?.startsWith("The first end") === true;
    const swapped = isFalling ? endsSwapped(context.text, finding.span) : undefined;
    if (swapped !== undefined)
      return [oneEdit(`Write ${swapped}`, finding.uri, finding.span, swapped, { preferred: true })];
    const colon = problem?.detail?.includes("without a colon") === true ? context.text.indexOf(":", problem.start) : -1;
    if (colon < 0 || colon >= finding.span.end) return [];
    return [oneEdit("Remove the colon", finding.uri, { start: colon, end: colon + 1 }, "", { preferred: true })];
  },
};

function messageFor({ word, detail, expected }: ModelProblemOf<"wrong-form">): string {
  const what =
    detail === undefined
      ? `${quoted(word)} cannot be read in this form, so the line is left out.`
      : `${sentence(detail)} The ${quoted(word)} line is left out until this is put right.`;
  const forms = expected.map((form) => `\`${onOneLine(form)}\``);
  return forms.length === 0 ? what : `${what} Write ${either(someOf(forms))}.`;
}

/** The likely ones come first; a list of eight would be read by nobody. */
function someOf(forms: readonly string[]): readonly string[] {
  const shown = 3;
  if (forms.length <= shown + 1) return forms;
  return [...forms.slice(0, shown), `one of ${forms.length - shown} more forms that completion offers`];
}

function sentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

function onOneLine(form: string): string {
  const [first = "", ...more] = form.split("\n");
  return more.length === 0 ? first : `${first} … }`;
}

/** `25 .. -30 mm` the other way round; undefined where an end has a unit of its own or is a sum. */
function endsSwapped(text: string, { start, end }: Span): string | undefined {
  const [, first, second, unit] = /^(-?[\d.]*\d)\s*\.\.\s*(-?[\d.]*\d)(\s.*)?$/.exec(text.slice(start, end)) ?? [];
  return first === undefined || second === undefined ? undefined : `${second} .. ${first}${unit ?? ""}`;
}
