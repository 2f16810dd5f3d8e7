/**
 * The unit is not one that the language knows. Units are written as in print, with the case that
 * the standards give them: `N/mm`, `lbf/in`, `N*s/mm`, `kg*m^2`, `km/h`, `deg`, `%`, and `g` for standard gravity.
 *
 * The value cannot be used until its unit is known.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 n/mm
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
import { suggestUnits } from "../../../quantities/index.js";
import { didYouMean } from "../../did-you-mean.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { unitRanking } from "../../likely-units.js";
import { unitIn } from "../../tree.js";
import { dimensionWords, either, quoted, suggestion } from "../../wording.js";

const meta = { id: "unknown-unit", title: "A unit that is not known", cost: "model", severity: "error" } as const;

export const unknownUnit: Rule = {
  meta,
  check: (context) => {
    const likely = unitRanking(context);
    return fromModel(meta, context, ["unknown-unit"], (problem) => ({ message: messageFor(problem, likely) }));
  },
  fix: (finding, context) => {
    const problem = problemBehind(finding, "unknown-unit");
    if (!problem) return [];
    const { units } = offered(problem, unitRanking(context));
    const place = unitIn(context.parsed.document, finding.span) ?? finding.span;
    return units.map((unit, index) => oneEdit(`Write ${unit}`, finding.uri, place, unit, { preferred: index === 0 }));
  },
};

type Ranking = ReturnType<typeof unitRanking>;

function messageFor(problem: ModelProblemOf<"unknown-unit">, likely: Ranking): string {
  const isKnown = problem.dimension !== undefined && problem.dimension !== "any";
  const due = isKnown ? ` ${capital(dimensionWords(problem.dimension))} is due here.` : "";
  const { units, alike } = offered(problem, likely);
  const instead = alike ? suggestion(units) : units.length > 0 ? ` It may be in ${either(units)}.` : "";
  return `${quoted(problem.unit)} is not a unit that is known, so the value cannot be used.${due}${instead}`;
}

/** Units of another size than what was written: one may take them, but they are not what was meant. */
const otherSizes: ReadonlySet<string> = new Set(["kgf", "kp", "mil", "thou"]);

/** Another spelling first (`kph` is `km/h`, however near `mph` looks), then what looks alike, else the usual ones. */
function offered(problem: ModelProblemOf<"unknown-unit">, likely: Ranking) {
  const meant = suggestUnits(problem.unit).filter((unit) => problem.candidates.includes(unit));
  if (otherSizes.has(problem.unit.toLowerCase())) return { units: likely(problem.candidates), alike: false };
  if (meant.length > 0) return { units: meant.slice(0, 3), alike: true };
  const similar = didYouMean(problem.unit, problem.candidates);
  return similar.length > 0 ? { units: similar, alike: true } : { units: likely(problem.candidates), alike: false };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
