/**
 * Which unit an author most likely meant: of the valid ones first those that the file already
 * uses, then the usual one of each system, then the others.
 */
import { unitSystem } from "../quantities/index.js";
import type { RuleContext } from "./context.js";
import { unitsUsed } from "./tree.js";

/** For a check that asks often: the file's own units are counted once, when first asked. */
export function unitRanking(context: RuleContext): (candidates: readonly string[], most?: number) => readonly string[] {
  let used: readonly string[] | undefined;
  return (candidates, most = 3) => {
    used ??= unitsUsed(context.parsed.document);
    return ranked(candidates, used).slice(0, most);
  };
}

export function likelyUnits(candidates: readonly string[], context: RuleContext, most = 3): readonly string[] {
  return unitRanking(context)(candidates, most);
}

function ranked(candidates: readonly string[], used: readonly string[]): readonly string[] {
  const valid = candidates.filter((unit) => unit !== "");
  // Candidates come in the usual order of their dimension.
  const usual = (["si", "inch"] as const).flatMap((system) => valid.find((unit) => unitSystem(unit) === system) ?? []);
  return [...new Set([...used.filter((unit) => valid.includes(unit)), ...usual, ...valid])];
}
