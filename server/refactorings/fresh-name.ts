/** A name that no text speaks of and that is no word of the language: the one wanted, or with the next free number. */
import { reservedNames, words } from "../../grammar/vocabulary/index.js";

const wordsOfLanguage: ReadonlySet<string> = new Set([...words.map(({ word }) => word), ...reservedNames]);

export function freshName(wanted: string, ...texts: readonly string[]): string {
  const known = new Set(texts.flatMap((text) => text.match(/[\p{L}\p{N}_-]+/gu) ?? []));
  const isFree = (name: string): boolean => !known.has(name) && !wordsOfLanguage.has(name);
  let name = wanted;
  for (let count = 2; !isFree(name); count++) name = `${wanted}-${count}`;
  return name;
}
