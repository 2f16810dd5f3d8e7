/**
 * A block lacks a property that nothing can stand in for. What depends on it is not computed, and
 * says so; all the rest is. Turns of a rod or a drop link likewise need to know its `thread`.
 *
 * The fix inserts the property with a usual value: a value to start from, not the one of your car.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 { length 290 mm }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * }
 * ```
 */
import type { Block, Entry } from "../../../../grammar/index.js";
import { findWord, wordsIn } from "../../../../grammar/vocabulary/index.js";
import { starterText } from "../../../../grammar/vocabulary/starter-text.js";
import { didYouMean } from "../../did-you-mean.js";
import type { RuleContext } from "../../context.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Fix, Rule } from "../../finding.js";
import { insertionInto } from "../../insertion.js";
import { blockAt, contains } from "../../tree.js";
import { quoted, shortened } from "../../wording.js";

const meta = {
  id: "missing-property",
  title: "A property that cannot be done without",
  cost: "model",
  severity: "error",
} as const;

export const missingProperty: Rule = {
  meta,
  check: (context) => {
    // The block and the mechanism that it describes may both miss one and the same line.
    const told = new Set<string>();
    return fromModel(meta, context, ["missing-property", "no-thread"], (problem) => {
      if (problem.kind === "no-thread") return { message: noThread };
      const key = `${problem.uri} ${problem.insertAt} ${problem.word}`;
      if (told.has(key) || mayBeUnread(context, problem)) return undefined;
      told.add(key);
      return { message: messageFor(problem) };
    });
  },
  fix: (finding, context) => {
    const turned = problemBehind(finding, "no-thread");
    if (turned !== undefined) return insertThread(turned, context);
    const problem = problemBehind(finding, "missing-property");
    return problem && problem.uri === context.uri ? insert(problem, context) : [];
  },
};

const thread = "thread 1.25 mm/turn";

const noThread =
  "This is counted in turns, but nothing says how far one turn goes, so the line is left out. Say its thread first, " +
  `such as "${thread}", or give the change in mm.`;

/** Above the line, by the path that the line itself takes: the block may stand in another file. */
function insertThread({ statement, word }: ModelProblemOf<"no-thread">, context: RuleContext): readonly Fix[] {
  const { text, uri } = context;
  const head = /^\S+/.exec(text.slice(statement.start, statement.end))?.[0];
  if (statement.uri !== uri || head === undefined) return [];
  const path = head.split(".");
  const owner = (path.at(-1) === word ? path.slice(0, -1) : path).join(".");
  const line = owner === "" ? thread : `${owner}.${thread}`;
  const before = text.slice(text.lastIndexOf("\n", statement.start - 1) + 1, statement.start);
  const newText = before.trim() === "" ? `${line}\n${before}` : `${line}, `;
  const span = { start: statement.start, end: statement.start };
  return [{ title: `Say "${line}" first`, edits: [{ uri, span, newText }], preferred: true, safe: false }];
}

function messageFor(problem: ModelProblemOf<"missing-property">): string {
  const help = findWord(problem.concept, problem.word)?.help;
  const what = help === undefined ? "" : ` (${firstSentence(help)})`;
  const starter = starterOf(problem);
  const such = starter === undefined ? "" : `, such as ${titleOf(starter)}`;
  return `${problem.owner} has no ${quoted(problem.word)}${what}, and what depends on it is not computed. Add it${such}.`;
}

function firstSentence(help: string): string {
  const end = help.search(/[.;](\s|$)/);
  return end === -1 ? help : help.slice(0, end);
}

/** A line of the same block that could not be read may be the one that is missing: one mistake, one finding. */
function mayBeUnread(context: RuleContext, problem: ModelProblemOf<"missing-property">): boolean {
  const unread = context.parsed.problems;
  if (problem.uri !== context.uri) return false;
  const block = blockFor(context, problem);
  if (block === undefined) return false;
  return (
    unread.some((one) => contains(block, one)) ||
    block.entries.some((entry) => isRowOf(entry, problem.word)) ||
    isMistyped(context, problem, block)
  );
}

/** `Rate 55 N/mm`, `pushrod on …`: the word that is not known is this one. */
function isMistyped({ problems, uri }: RuleContext, { word }: { readonly word: string }, block: Block): boolean {
  return problems.some(
    (one) =>
      one.kind === "unknown-word" &&
      one.uri === uri &&
      contains(block, one) &&
      didYouMean(one.word, one.candidates, 1)[0] === word,
  );
}

/** `mass: 560 kg`: told as a line of a wrong form. */
function isRowOf(entry: Entry, word: string): boolean {
  return (
    entry.kind === "row" && entry.key.kind === "path" && entry.key.segments.map(({ text }) => text).join(".") === word
  );
}

/** `insertAt` is the closing brace, or the end of a block that has none. */
function blockFor(context: RuleContext, { insertAt }: ModelProblemOf<"missing-property">): Block | undefined {
  const { document } = context.parsed;
  const brace = { start: insertAt, end: insertAt + 1 };
  return blockAt(document, context.text[insertAt] === "}" ? brace : { start: insertAt, end: insertAt });
}

function insert(problem: ModelProblemOf<"missing-property">, context: RuleContext): readonly Fix[] {
  const block = blockFor(context, problem);
  const statement = starterOf(problem);
  if (!block || statement === undefined) return [];
  const { span, newText } = insertionInto(context.text, block, statement, wordsBefore(problem));
  return [
    { title: `Add ${titleOf(statement)}`, edits: [{ uri: problem.uri, span, newText }], preferred: true, safe: false },
  ];
}

/** A usual value, or a block with what is needed inside. */
function starterOf({ word, concept }: ModelProblemOf<"missing-property">): string | undefined {
  const entry = findWord(concept, word);
  return entry && starterText(entry);
}

function titleOf(statement: string): string {
  const lines = statement.split("\n");
  return `"${lines.length === 1 ? shortened(statement, 90) : `${lines[0]} … }`}"`;
}

/** The vocabulary lists the words of a block in the order in which a file usually has them. */
function wordsBefore(problem: ModelProblemOf<"missing-property">): ReadonlySet<string> {
  const words = wordsIn(problem.concept).map((entry) => entry.word);
  return new Set(words.slice(0, Math.max(0, words.indexOf(problem.word))));
}
