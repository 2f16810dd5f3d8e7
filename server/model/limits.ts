/** Hard limits and usual ranges of the vocabulary, held against one value. */
import { limitsOf, usualOf } from "../../grammar/vocabulary/index.js";
import type { DimensionName, Limits, Slot, UsualRange, Word } from "../../grammar/vocabulary/word.js";
import { showQuantity } from "../quantities/index.js";
import type { Names } from "./expressions.js";
import type { Origin } from "./origin.js";

type QuantitySlot = Extract<Slot, { kind: "quantity" }>;

interface Value {
  readonly si: number;
  readonly unit: string;
  readonly dimension: DimensionName;
}

/** False where a hard limit is broken, so that nothing can be computed with the value. */
export function checkRange(
  word: Word,
  slot: QuantitySlot,
  value: Value,
  place: Origin,
  names: Pick<Names, "report">,
): boolean {
  const limits = limitsOf(word, slot);
  const broken = limits && brokenLimit(limits, value);
  if (broken !== undefined) {
    names.report({ ...place, ...shownAs(word, value), kind: "range-violated", limit: broken });
    return false;
  }
  const usual = usualFor(word, slot);
  if (usual !== null && (value.si < usual.from || value.si > usual.to)) {
    names.report({ ...place, ...shownAs(word, value), kind: "implausible-value", ...usual });
  }
  return true;
}

const shownAs = ({ word }: Word, { si, unit, dimension }: Value) => ({ word, value: si, unit, dimension });

const usualRanges = new WeakMap<QuantitySlot, Map<Word, UsualRange | null>>();

/** The vocabulary's answer, asked once a slot. */
function usualFor(word: Word, slot: QuantitySlot): UsualRange | null {
  let byWord = usualRanges.get(slot);
  if (byWord === undefined) usualRanges.set(slot, (byWord = new Map()));
  let usual = byWord.get(word);
  if (usual === undefined) byWord.set(word, (usual = usualOf(word, slot) ?? null));
  return usual;
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
