/**
 * A `let` goes: what it says stands wherever its name stood, in every file that uses it, or at one place alone. Comments and notes
 * of its line stay as comments.
 */
import type { Entry, Item, Parsed, Span, Statement } from "../../grammar/index.js";
import type { TextEdit } from "../findings/finding.js";
import { statementAt } from "../findings/tree.js";
import type { Origin } from "../model/origin.js";
import type { FileView } from "../snapshot/workspace.js";
import { entriesOf, itemsOf } from "../views/covered-numbers.js";
import { nameAt, placesOf } from "../views/names.js";
import { proven } from "./proof.js";
import type { Offered, Refactored, Refactoring } from "./refactoring.js";
import { removedStatement } from "./slices.js";

export function inlineLet(on: Refactored): readonly Offered[] {
  const { file, offset } = on;
  const named = nameAt(file, offset);
  if (named?.symbol.target !== "let") return [];
  const { declaration, name } = named.symbol;
  const parsed = file.parsedOf(declaration.uri);
  const statement = parsed && statementAt(parsed.document, declaration);
  const value = statement?.items[1];
  if (parsed === undefined || statement === undefined || value === undefined || !isLet(statement)) return [];
  const said: Said = { value, text: parsed.text.slice(value.start, value.end) };
  const resting = on.resting([declaration.uri]);
  if (resting === undefined) return [];
  const places = placesOf(named.symbol, resting).filter((place) => !isDeclaration(place, named.symbol));
  const everywhere = inlined(on, places, said, resting);
  const choices: Refactoring[] = [];
  if (everywhere !== undefined && places.length > 0) {
    const edits = [...everywhere, removedStatement(declaration.uri, parsed, statement)];
    choices.push({
      title: `Write out \`${name}\` in ${countOf(places.length)} and take the \`let\` away`,
      kind: "inline",
      edits,
    });
  }
  const here =
    places.length > 1 && !isDeclaration(named.here, named.symbol)
      ? inlined(on, [named.here], said, resting)
      : undefined;
  if (here !== undefined) choices.push({ title: `Write out \`${name}\` here alone`, kind: "inline", edits: here });
  return choices.flatMap((choice) => proven(choice, on) ?? []);
}

interface Said {
  readonly value: Item;
  readonly text: string;
}

const countOf = (places: number): string => (places === 1 ? "its one place" : `all ${places} places`);

const isDeclaration = (place: Origin, { declaration }: { readonly declaration: Origin }): boolean =>
  place.uri === declaration.uri && place.start === declaration.start;

const isLet = ({ head, equals }: Statement): boolean => head.segments[0]?.text === "let" && equals !== undefined;

/** Undefined where a place cannot be found in its text. */
function inlined(
  { file }: Refactored,
  places: readonly Origin[],
  said: Said,
  resting: readonly FileView[],
): readonly TextEdit[] | undefined {
  const edits: TextEdit[] = [];
  for (const place of places) {
    const parsed = resting.find(({ uri }) => uri === place.uri)?.parsed ?? file.parsedOf(place.uri);
    const isWhole = parsed && standsAlone(parsed, place);
    if (isWhole === undefined) return undefined;
    edits.push({
      uri: place.uri,
      span: place,
      newText: isWhole || !needsBrackets(said) ? said.text : `(${said.text})`,
    });
  }
  return edits;
}

/** A sum inside a product, and a sign behind another. */
const needsBrackets = ({ value, text }: Said): boolean =>
  value.kind === "binary" || value.kind === "negation" || /^[-+]/.test(text);

/** Whether the name is all that its statement says; undefined where no name stands there. */
function standsAlone({ document }: Parsed, place: Span): boolean | undefined {
  for (const entry of entriesOf(document.entries)) {
    if (entry.start > place.start || place.end > entry.end) continue;
    const item = itemsOf(entry).find((one) => one.start <= place.start && place.end <= one.end);
    if (item !== undefined) return item.kind === "path" && isOnlyValue(entry);
  }
  return undefined;
}

const isOnlyValue = (entry: Entry): boolean => entry.kind === "statement" && entry.items.length === 1;
