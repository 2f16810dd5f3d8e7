/** What a name declares, and whether it may be called so. */
import { findWord, reservedNames, words } from "../../grammar/vocabulary/index.js";
import type { Concept, NameTarget, Word } from "../../grammar/vocabulary/word.js";
import type { Origin } from "./origin.js";
import { type Scope } from "./scope.js";

/** What the name of such a statement is; undefined where it has none of its own (`axle front`). */
export function targetOf(word: Word): NameTarget | undefined {
  for (const form of word.takes) {
    for (const slot of form) if (slot.kind === "name") return slot.declares;
  }
  return undefined;
}

const alwaysReserved: ReadonlySet<string> = new Set(["left", "right", "chassis"]);

/** Notes the declaration; tells where a path with this name in it could mean two things. */
export function checkName(
  word: Word,
  name: { readonly text: string; readonly origin: Origin },
  concept: Concept,
  scope: Scope,
): void {
  const target = targetOf(word);
  if (target === undefined) return;
  scope.sink.declare({ target, name: name.text, place: scope.place, declaration: name.origin });
  if (isReserved(word, name.text, concept)) {
    scope.sink.report({ ...name.origin, kind: "reserved-name", name: name.text });
  }
}

function isReserved(word: Word, name: string, concept: Concept): boolean {
  if (alwaysReserved.has(name)) return true;
  if (word.role === "element") return reservedNames.has(name);
  if (word.role === "part") return false;
  const isAxle = concept === "car" && (name === "front" || name === "rear");
  return isAxle || findWord(concept, name) !== undefined;
}

/**
 * Whether the language lets something of that kind have the name, wherever it stands. A `let` may hide any property; it is
 * refused here so that no line that reads the property comes to read the `let`.
 */
export function mayBeCalled(target: NameTarget, name: string): boolean {
  if (target === "let") return !reservedNames.has(name) && !words.some(({ word }) => word === name);
  const declaring = words.filter((word) => targetOf(word) === target);
  return !declaring.some((word) => word.in.some((concept) => isReserved(word, name, concept)));
}
