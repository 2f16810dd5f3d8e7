/** Snippets for the words that open a block: their starter text with tab stops. */
import { words } from "../vocabulary/index.js";
import { starterText } from "../vocabulary/starter-text.js";
import type { Word } from "../vocabulary/word.js";
import { elementVariants } from "./element-variants.js";

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
      body: tabStops(starterText(word), isNamed(word)).split("\n"),
    };
  }
  for (const { title, word, description, text } of elementVariants)
    found[title] = { prefix: word, description, body: tabStops(text, true).split("\n") };
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

function isNamed(word: Word): boolean {
  const first = word.takes[0]?.[0]?.kind;
  return first === "name" || first === "choice";
}

/** Whatever is the author's own becomes a stop, in the order of the text: names, modes, texts, paths, parts, points and numbers. */
function tabStops(text: string, named: boolean): string {
  let stop = 0;
  const next = (found: string): string => `\${${++stop}:${escaped(found)}}`;
  const head = /^[^{\n]*/.exec(text)?.[0] ?? "";
  const rest = text.slice(head.length);
  return stopsIn(headWithStops(head, named, next), next) + stopsIn(rest, next) + "$0";
}

/** The name or choice right behind the word, the mode behind `for`, the car behind `from`, and a text. */
function headWithStops(head: string, named: boolean, next: (text: string) => string): string {
  return head
    .split(" ")
    .map((item, index, all) => {
      const before = all[index - 1] ?? "";
      const free = (named && index === 1) || before === "for" || before === "from" || /^".*"$/.test(item);
      return free && /\S/.test(item) ? item.replace(/[^\s"]+/, next) : item;
    })
    .join(" ");
}

const free = [
  String.raw`\$\{[^}]*\}`, // a stop already
  String.raw`\([-\d., ]+\)`, // a point
  String.raw`(?<![\w.-])[a-z][a-z-]*(?:\.[a-z][a-z-]*)+`, // a path
  String.raw`(?<=\bfit |\bhold \{ )[^\s:]+`, // a part, a load case
  String.raw`(?<![\w.^-])-?\d+(?:\.\d+)?(?!\w)`, // a number, but no power of a unit
].join("|");

function stopsIn(text: string, next: (text: string) => string): string {
  return text.replace(new RegExp(free, "g"), (found) => (found.startsWith("${") ? found : next(found)));
}

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}
