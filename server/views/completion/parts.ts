/** Catalogue parts that go into the block around `fit`, each with its line in the catalogue. */
import { findWord } from "../../../grammar/vocabulary/index.js";
import { outlineOf } from "../outline.js";
import { type Candidate, candidate } from "./candidate.js";
import type { ValueScene } from "./scene.js";

export function partCandidates(scene: ValueScene): readonly Candidate[] {
  return scene.file.uses.flatMap((uri) => {
    const parsed = scene.file.parsedOf(uri);
    if (parsed === undefined) return [];
    const parts = outlineOf(parsed.document)
      .flatMap((entry) => [entry, ...entry.children])
      .filter(({ kind }) => kind === "part");
    return parts
      .filter((part) => fitsInto(part.detail, scene.concept))
      .map((part) =>
        candidate(part.name, "part", scene.span, {
          detail: part.detail,
          documentation: source(parsed.text, part.span),
        }),
      );
  });
}

function fitsInto(word: string, concept: string): boolean {
  const into = findWord("catalogue", word)?.fits?.into;
  return into === undefined || into.includes(concept);
}

const source = (text: string, span: { readonly start: number; readonly end: number }): string =>
  `\`\`\`bellcrank\n${text.slice(span.start, span.end)}\n\`\`\``;
