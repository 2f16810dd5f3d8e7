/**
 * A part of the catalogue is fitted nowhere in this file. A shelf may well hold more than the car
 * does, so this is only a hint; often, though, a `fit` names another part than was meant.
 * A file of parts alone is there for others to use, so nothing in it counts as unused.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * catalogue {
 *   torsion-bar TB-130 { diameter 13 mm, length 360 mm }
 * }
 *
 * setup wet from wren {
 *   front.corner-bar.fit TB-120
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * catalogue {
 *   torsion-bar TB-130 { diameter 13 mm, length 360 mm }
 * }
 *
 * setup wet from wren {
 *   front.corner-bar.fit TB-130
 * }
 * ```
 */
import { fromModel } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = { id: "unused-part", title: "A part that is fitted nowhere", cost: "model", severity: "hint" } as const;

export const unusedPart: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["unused-part"], (problem) => ({
      message: `${quoted(problem.name)} is fitted nowhere in this file. If it should be, write "fit ${problem.name}" in the element.`,
      tags: ["unnecessary"],
    })),
};
