/** Whether a name can become another, and the edits that make it so. */
import type { TextEdit } from "../findings/finding.js";
import { mayBeCalled } from "../model/names.js";
import type { Origin } from "../model/origin.js";
import type { ModelSymbol } from "../model/resolved-file.js";
import type { FileView } from "../snapshot/workspace.js";
import { fileName } from "./comparison/page.js";
import { placesOf, samePlace } from "./names.js";
import { carAt } from "./subject.js";

export type Rename = { readonly edits: readonly TextEdit[] } | { readonly refused: string };

const nameShape = /^\p{L}[\p{L}\p{N}]*(?:[-_][\p{L}\p{N}]+)*$/u;

export function rename(symbol: ModelSymbol, to: string, files: readonly FileView[]): Rename {
  if (!nameShape.test(to))
    return { refused: `"${to}" is not a name: letters, digits and single hyphens, a letter first.` };
  if (!mayBeCalled(symbol.target, to))
    return { refused: `"${to}" is a word of the language and cannot name ${withArticle(symbol.target)}.` };
  const taken = to === symbol.name ? undefined : takenBy(symbol, to, files);
  if (taken !== undefined) return { refused: `"${to}" already names ${taken}.` };
  return { edits: placesOf(symbol, files).map((origin) => ({ uri: origin.uri, span: origin, newText: to })) };
}

function withArticle(target: ModelSymbol["target"]): string {
  const word = target === "setup" ? "set-up" : target;
  return `${/^[aeiou]/.test(word) ? "an" : "a"} ${word}`;
}

/** What has the name already where both would be spoken of: "an element", "a set-up in dry.crank". */
function takenBy(symbol: ModelSymbol, to: string, files: readonly FileView[]): string | undefined {
  for (const { symbols } of files) {
    const other = symbols.find((one) => wouldClash(symbol, one, to) && meet(symbol, one, files));
    if (other === undefined) continue;
    const { uri } = other.declaration;
    const what = withArticle(other.target);
    return uri === symbol.declaration.uri ? what : `${what} in ${fileName(uri)}`;
  }
  return undefined;
}

/** Cars and set-ups share their names, and so does what stands in one block; a `let` hides those around it. */
function wouldClash(symbol: ModelSymbol, other: ModelSymbol, to: string): boolean {
  if (other.name !== to || roomOf(symbol) !== roomOf(other)) return false;
  const place = symbol.path.slice(0, symbol.path.length - symbol.name.length);
  return roomOf(symbol) !== "car" || other.path === `${place}${to}`;
}

type Room = "file" | "shelf" | "let" | "car";

const rooms: Readonly<Partial<Record<ModelSymbol["target"], Room>>> = {
  car: "file",
  setup: "file",
  part: "shelf",
  let: "let",
};

const roomOf = ({ target }: ModelSymbol): Room => rooms[target] ?? "car";

/** Whether a file sees both; of what stands in cars, whether one of the cars derives from the other. */
function meet(symbol: ModelSymbol, other: ModelSymbol, files: readonly FileView[]): boolean {
  const [one, two] = [symbol.declaration, other.declaration];
  if (!files.some(({ uses }) => uses.includes(one.uri) && uses.includes(two.uri))) return false;
  if (roomOf(symbol) !== "car") return true;
  const [ofOne, ofTwo] = [lineageOf(one, files), lineageOf(two, files)];
  const [first, second] = [ofOne[0], ofTwo[0]];
  // A car that cannot be worked out may be either's.
  if (first === undefined || second === undefined) return true;
  return ofOne.some((car) => samePlace(car, second)) || ofTwo.some((car) => samePlace(car, first));
}

/** The names of the car or set-up around a place and of all that it derives from. */
function lineageOf({ uri, start }: Origin, files: readonly FileView[]): readonly Origin[] {
  const file = files.find((one) => one.uri === uri);
  const names: Origin[] = [];
  for (let car = file && carAt(file, start); car !== undefined; car = car.base) names.push(car.model.nameOrigin);
  return names;
}
