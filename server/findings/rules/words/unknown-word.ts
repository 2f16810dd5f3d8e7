/**
 * The language does not know this word here. Perhaps it is mistyped, or it belongs into another
 * block: each block has its own words, and completion lists them.
 *
 * The line sets nothing as long as its word is unknown: the car keeps the inherited or the default value.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 { diametre 18.5 mm, diameter 18.5 mm, length 290 mm }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * }
 * ```
 */
import { words } from "../../../../grammar/vocabulary/index.js";
import { didYouMean } from "../../did-you-mean.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { either, quoted, suggestion } from "../../wording.js";

const meta = { id: "unknown-word", title: "A word that is not known here", cost: "model", severity: "error" } as const;

export const unknownWord: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["unknown-word"], (problem) => ({ message: messageFor(problem) })),
  fix: (finding) => {
    const problem = problemBehind(finding, "unknown-word");
    if (!problem) return [];
    return didYouMean(problem.word, problem.candidates).map((word, index) =>
      oneEdit(`Write ${quoted(word)}`, finding.uri, finding.span, word, { preferred: index === 0 }),
    );
  },
};

function messageFor(problem: ModelProblemOf<"unknown-word">): string {
  const likely = didYouMean(problem.word, problem.candidates);
  const isMode = problem.concept !== "for" && isModeWord(problem.word);
  const instead = isMode ? joined : likely.length > 0 ? suggestion(likely) : wordsHere(problem.candidates);
  return `${quoted(problem.word)} is not ${kindOfWord(problem.concept)}, so this line sets nothing.${instead}`;
}

const isModeWord = (word: string): boolean => ["corner", "heave", "roll", "pitch", "warp"].includes(word);

const joined = ' Modes are joined by "and": `for heave and roll`.';

function wordsHere(candidates: readonly string[]): string {
  if (candidates.length === 0) return "";
  const some = candidates.slice(0, 6).map(quoted);
  return candidates.length > some.length
    ? ` Words of this place are ${some.join(", ")} and ${candidates.length - some.length} more; completion lists them.`
    : ` Words of this place are ${either(some)}.`;
}

function kindOfWord(concept: string): string {
  if (concept === "for") return "a mode that an element can be for here";
  return concept === "file"
    ? "a word of the top level of a file"
    : `a word of ${/^[aeiou]/.test(blockName(concept)) ? "an" : "a"} ${quoted(blockName(concept))} block`;
}

/** As the author wrote it: the block `torsion-bar-part` of the vocabulary is opened by `torsion-bar`. */
function blockName(concept: string): string {
  const openers = new Set(
    words.filter((word) => word.opens === concept || word.opensByForm?.includes(concept)).map(({ word }) => word),
  );
  const [only] = openers;
  return openers.size === 1 && only !== undefined ? only : concept;
}
