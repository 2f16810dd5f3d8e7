/**
 * Every file that is made from the vocabulary, by its path in the repository. `test/support/generate.mjs`
 * writes them; a test holds what is committed against this.
 */
import { languageConfiguration } from "./language-configuration.js";
import { referencePage, type Show } from "./reference.js";
import { snippets } from "./snippets.js";
import { textMateGrammar } from "./textmate.js";

export function generatedFiles(show: Show): ReadonlyMap<string, string> {
  const json = (value: object): string => `${JSON.stringify(value, undefined, 2)}\n`;
  return new Map([
    ["grammar/highlighting/bellcrank.tmLanguage.json", json(textMateGrammar())],
    ["grammar/highlighting/language-configuration.json", json(languageConfiguration())],
    ["grammar/REFERENCE.md", referencePage(show)],
    ["client/snippets.json", json(snippets())],
  ]);
}
