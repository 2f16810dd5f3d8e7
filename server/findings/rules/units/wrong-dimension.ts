/**
 * The value is of another kind than the place asks for: a force where a rate is due, a length
 * where an angle is. Often a part of the unit is missing (`N` for `N/mm`); in an expression, two
 * values are joined that do not go together.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N
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
import { didYouMean } from "../../did-you-mean.js";
import { oneEdit } from "../../edits.js";
import { fromModel, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { likelyUnits, unitRanking } from "../../likely-units.js";
import { unitIn } from "../../tree.js";
import { either, foundWords, quoted } from "../../wording.js";

const meta = { id: "wrong-dimension", title: "A value of the wrong kind", cost: "model", severity: "error" } as const;

export const wrongDimension: Rule = {
  meta,
  check: (context) => {
    const likely = unitRanking(context);
    return fromModel(meta, context, ["dimension"], (problem) => {
      const units = likely(problem.candidates);
      const such = units.length > 0 ? ` Give it in ${either(units)}.` : "";
      const written = problem.uri === context.uri ? unitIn(context.parsed.document, problem)?.text : undefined;
      return {
        message: `${massForForce(written, problem.candidates)}This is ${foundWords(problem.found)}, but ${foundWords(problem.due)} is due here, so it cannot be used.${such}`,
      };
    });
  },
  fix: (finding, context) => {
    const problem = problemBehind(finding, "dimension");
    const unit = unitIn(context.parsed.document, finding.span);
    if (!problem || !unit) return [];
    const units = nearest(unit.text, likelyUnits(problem.candidates, context, 12));
    return units.map((text, index) => oneEdit(`Write ${text}`, finding.uri, unit, text, { preferred: index === 0 }));
  },
};

/** `lb/in` for `lbf/in`, the commonest slip of all: said before what follows from it. */
function massForForce(written: string | undefined, due: readonly string[]): string {
  const force = written?.replace(/^lb(?!f)/, "lbf");
  if (force === undefined || force === written || !due.includes(force)) return "";
  return `lb is a mass; the force is lbf, so that ${quoted(force)} may be meant. `;
}

/** Units that begin as the written one does come first (`N` → `N/mm`), then those that look like it. */
function nearest(written: string, units: readonly string[]): readonly string[] {
  const begins = units.filter((unit) => unit.startsWith(written));
  const ordered = new Set([...begins, ...didYouMean(written, units, units.length), ...units]);
  return [...ordered].slice(0, 3);
}
