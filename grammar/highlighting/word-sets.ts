/** The vocabulary's words sorted by what they look like in a text. */
import { axleModes, carModes, connectives, words } from "../vocabulary/index.js";
import type { NameTarget, Slot, Word } from "../vocabulary/word.js";

type Role = Word["role"];

/** A word that has several roles (`torsion-bar` is a law and a part) looks like the first of these. */
const order: readonly Role[] = ["structure", "element", "part", "connection", "case", "expectation", "law", "property"];

const headScopes: Readonly<Record<Role, string>> = {
  structure: "keyword.control",
  element: "storage.type.element",
  part: "storage.type.part",
  connection: "keyword.other.connection",
  case: "keyword.control",
  expectation: "keyword.control",
  law: "support.type.property-name",
  property: "support.type.property-name",
};

/** Heads by the scope that they get, each word once, in the table's order. */
export function headsByScope(): ReadonlyMap<string, readonly string[]> {
  const roleOf = new Map<string, Role>();
  for (const role of order) {
    for (const word of words) if (word.role === role && !roleOf.has(word.word)) roleOf.set(word.word, role);
  }
  const byScope = new Map<string, string[]>();
  for (const [word, role] of roleOf) {
    const scope = headScopes[role];
    byScope.set(scope, [...(byScope.get(scope) ?? []), word]);
  }
  return byScope;
}

const nameScopes: Readonly<Record<NameTarget, string>> = {
  car: "entity.name.type.car",
  setup: "entity.name.type.setup",
  "car-or-setup": "entity.name.type.car",
  element: "entity.name.type.element",
  part: "entity.name.type.part",
  eye: "entity.name.tag.eye",
  case: "entity.name.section.case",
  let: "variable.other.constant",
  cylinder: "entity.name.tag.cylinder",
};

export interface Declaring {
  readonly words: readonly string[];
  readonly headScope: string;
  readonly nameScope: string;
}

/** The words that are followed by a name of the author's, with the scope of that name. */
export function declaring(): readonly Declaring[] {
  const groups = new Map<string, { words: Set<string>; headScope: string; nameScope: string }>();
  for (const word of words) {
    const first = word.takes[0]?.[0];
    if (first?.kind !== "name") continue;
    const key = `${word.role} ${first.declares}`;
    const group = groups.get(key) ?? {
      words: new Set(),
      headScope: headScopes[word.role],
      nameScope: nameScopes[first.declares],
    };
    group.words.add(word.word);
    groups.set(key, group);
  }
  return [...groups.values()].map((group) => ({ ...group, words: [...group.words] }));
}

const slots: readonly Slot[] = words.flatMap((word) => word.takes.flat());

export const modes: readonly string[] = [...new Set<string>([...axleModes, ...carModes])];

/** Words with a fixed meaning behind a head, joining words and modes left out: `rear`, `planar`, `both-ways`. */
export const fixedWords: readonly string[] = [
  ...new Set(
    slots.flatMap((slot) => (slot.kind === "choice" ? slot.words : slot.kind === "keyword" ? [slot.word] : [])),
  ),
].filter((word) => !connectives.has(word) && !modes.includes(word));
