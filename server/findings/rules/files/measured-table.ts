/**
 * A measured table in a CSV file cannot be read: a row has no two numbers, the travel does not
 * rise, or there are too few rows. The message names the line of the CSV file.
 *
 * Without its table the element has no motion or no force, and is left out of every sum.
 */
import { fromModel } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = {
  id: "measured-table",
  title: "A measured table that cannot be read",
  cost: "model",
  severity: "error",
} as const;

export const measuredTable: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["csv"], (problem) => {
      const where = problem.line > 0 ? `, line ${problem.line}` : "";
      return {
        message: `The table in ${quoted(problem.path)}${where} cannot be read: ${problem.detail}. Nothing that rests on it is computed; correct the file.`,
      };
    }),
};
