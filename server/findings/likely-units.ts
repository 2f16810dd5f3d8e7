/**
 * Which unit an author most likely meant: of the valid ones first those that the file already
 * uses, then the usual order of the dimension.
 */
import type { RuleContext } from "./context.js";
import { unitsUsed } from "./tree.js";

export function likelyUnits(candidates: readonly string[], context: RuleContext, most = 3): readonly string[] {
  const used = unitsUsed(context.parsed.document);
  const distinct = [...new Set(candidates)].filter((unit) => unit !== "");
  const atHome = used.filter((unit) => distinct.includes(unit));
  return [...atHome, ...distinct.filter((unit) => !atHome.includes(unit))].slice(0, most);
}
