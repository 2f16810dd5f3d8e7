/** Hard limits and usual ranges of the vocabulary, held against one value. */
import { limitsOf, usualOf } from "../../grammar/vocabulary/index.js";
import type { DimensionName, Limits, Slot, Word } from "../../grammar/vocabulary/word.js";
import { showQuantity } from "../quantities/index.js";
import type { Names } from "./expressions.js";
import type { Origin } from "./origin.js";

interface Value {
  readonly si: number;
  readonly unit: string;
  readonly dimension: DimensionName;
}

/** False where a hard limit is broken, so that nothing can be computed with the value. */
export function checkRange(
  word: Word,
  slot: Slot & { readonly kind: "quantity" },
  value: Value,
  place: Origin,
  names: Pick<Names, "report">,
): boolean {
  const { si, unit, dimension } = value;
  const shared = { ...place, word: word.word, value: si, unit, dimension };
  const limits = limitsOf(word, slot);
  const broken = limits && brokenLimit(limits, value);
  if (broken !== undefined) {
    names.report({ ...shared, kind: "range-violated", limit: broken });
    return false;
  }
  const usual = usualOf(word, slot);
  if (usual !== undefined && (si < usual.from || si > usual.to)) {
    names.report({ ...shared, kind: "implausible-value", ...usual });
  }
  return true;
}

/** The limit in words and in the author's unit: "above 0 mm". */
function brokenLimit(limits: Limits, { si, unit }: Value): string | undefined {
  const shown = (limit: number) => showQuantity(limit, unit);
  if (limits.above !== undefined && si <= limits.above) return `above ${shown(limits.above)}`;
  if (limits.atLeast !== undefined && si < limits.atLeast) return `at least ${shown(limits.atLeast)}`;
  if (limits.below !== undefined && si >= limits.below) return `below ${shown(limits.below)}`;
  if (limits.atMost !== undefined && si > limits.atMost) return `at most ${shown(limits.atMost)}`;
  return undefined;
}
