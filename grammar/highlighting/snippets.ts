/** Snippets for the words that open a block: their starter text with tab stops. */
import { words } from "../vocabulary/index.js";
import { starterText } from "../vocabulary/starter-text.js";
import type { Word } from "../vocabulary/word.js";

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

const withSnippet: ReadonlySet<Word["role"]> = new Set(["structure", "element", "part", "case", "expectation"]);

export function snippets(): Readonly<Record<string, Snippet>> {
  const found: Record<string, Snippet> = {};
  for (const word of words) {
    if (!withSnippet.has(word.role) || word.takes.every((form) => form.length === 0 && word.opens === undefined))
      continue;
    found[titleOf(word)] = {
      prefix: word.word,
      description: firstSentence(word.help),
      body: tabStops(word).split("\n"),
    };
  }
  return found;
}

/** A word that stands in several places (`rocker`, in space and planar) has a snippet for each. */
function titleOf(word: Word): string {
  const twins = words.filter((other) => other.word === word.word && withSnippet.has(other.role));
  return twins.length === 1 ? word.word : `${word.word} (${word.in[0] ?? ""})`;
}

function firstSentence(help: string): string {
  return /^.*?[.:](?=\s|$)/s.exec(help)?.[0].replace(/:$/, ".") ?? help;
}

/** Names that the author gives, fixed choices, points and numbers become stops, in the order of the text. */
function tabStops(word: Word): string {
  let stop = 0;
  const next = (text: string): string => `\${${++stop}:${escaped(text)}}`;
  const text = starterText(word);
  const head = /^[^{\n]*/.exec(text)?.[0] ?? "";
  const rest = text.slice(head.length);
  return numbersAsStops(headWithStops(word, head, next), next) + numbersAsStops(rest, next) + "$0";
}

/** The name or choice right behind the word, the mode behind `for`, and a title. */
function headWithStops(word: Word, head: string, next: (text: string) => string): string {
  const first = word.takes[0]?.[0]?.kind;
  const named = first === "name" || first === "choice";
  return head
    .split(" ")
    .map((item, index, all) => {
      const free = (named && index === 1) || all[index - 1] === "for" || item === '"title"';
      return free && /\S/.test(item) ? item.replace(/[^\s"]+/, next) : item;
    })
    .join(" ");
}

/** A point as a whole, or a number by itself; what is a stop already is left alone. */
function numbersAsStops(text: string, next: (text: string) => string): string {
  return text.replace(/\$\{[^}]*\}|\([-\d., ]+\)|(?<![\w.-])-?\d+(?:\.\d+)?(?![\w])/g, (found) =>
    found.startsWith("${") ? found : next(found),
  );
}

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}
