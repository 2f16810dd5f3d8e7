/**
 * A name is taken by the language: a property of the block, `left`, `right` or `chassis`. In the
 * path `front.left.side` nobody could say whether `left` is the side of the car or an element.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   axle front {
 *     spring track for heave { rate 20 N/mm, between left.rocker.third and right.rocker.third }
 *   }
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   axle front {
 *     spring helper for heave { rate 20 N/mm, between left.rocker.third and right.rocker.third }
 *   }
 * }
 * ```
 */
import { fromModel } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = {
  id: "reserved-name",
  title: "A name that the language needs itself",
  cost: "model",
  severity: "error",
} as const;

export const reservedName: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["reserved-name"], (problem) => ({
      message: `${quoted(problem.name)} is a word of the language here, so a path that holds it could mean two things. Choose another name.`,
    })),
};
