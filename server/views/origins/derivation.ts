/**
 * Which set-up derives from which car or set-up, read from the names alone: it holds for circles, broken bodies and set-ups
 * whose car cannot be worked out, and over files that nobody has open.
 *
 * In: views of files. Out: declarations with their places.
 */
import type { Span, Statement } from "../../../grammar/index.js";
import type { ModelSymbol } from "../../model/resolved-file.js";
import type { Origin } from "../../model/origin.js";
import type { FileView } from "../../snapshot/workspace.js";
import { nameAt } from "../names.js";
import { holds } from "../place.js";
import type { FileOf } from "./written.js";

/** A car or set-up, where it is declared. */
export interface Declaration {
  readonly kind: "car" | "setup";
  readonly name: string;
  /** A car's own title. */
  readonly title: string | undefined;
  /** What stands behind `from`. */
  readonly from: string | undefined;
  readonly uri: string;
  readonly statement: Statement;
  readonly nameSpan: Span;
}

/** The car or set-up whose name the cursor is on, or whose opening line. */
export function declarationAt(file: FileView, offset: number, fileOf: FileOf): Declaration | undefined {
  const named = nameAt(file, offset)?.symbol;
  if (named !== undefined && isCarOrSetup(named))
    return declarationOf(fileOf(named.declaration.uri), named.declaration);
  return named === undefined ? declarationsIn(file).find((one) => isOnOpening(one, offset)) : undefined;
}

/** What it derives from directly; undefined for a car, and where there is nothing of that name. */
export function baseOf(of: Declaration, fileOf: FileOf): Declaration | undefined {
  const file = fileOf(of.uri);
  const behindFrom = baseName(of.statement);
  const symbol =
    behindFrom &&
    file.symbols.find((one) => isCarOrSetup(one) && one.references.some((place) => isAt(place, behindFrom)));
  return symbol && declarationOf(fileOf(symbol.declaration.uri), symbol.declaration);
}

/** The set-ups that derive from it directly, in the order of the files. */
export function derivedFrom(of: Declaration, files: Iterable<FileView>): readonly Declaration[] {
  return [...files].flatMap((file) => {
    const symbol = file.symbols.find((one) => isCarOrSetup(one) && isDeclaredAt(one, of));
    const spoken = symbol?.references ?? [];
    return declarationsIn(file).filter((one) => {
      const behindFrom = baseName(one.statement);
      return behindFrom !== undefined && spoken.some((place) => isAt(place, behindFrom));
    });
  });
}

/** The declaration of that name as its file stands now. */
export const declarationCalled = (file: FileView, name: string): Declaration | undefined =>
  declarationsIn(file).find((one) => one.name === name);

const isCarOrSetup = ({ target }: ModelSymbol): boolean => target === "car" || target === "setup";

const isDeclaredAt = ({ declaration }: ModelSymbol, { uri, nameSpan }: Declaration): boolean =>
  declaration.uri === uri && declaration.start === nameSpan.start;

const isAt = (place: Span, { start, end }: Span): boolean => place.start === start && place.end === end;

const declarationOf = (file: FileView, { start }: Origin): Declaration | undefined =>
  declarationsIn(file).find(({ nameSpan }) => nameSpan.start === start);

const declarationsIn = ({ uri, parsed }: FileView): readonly Declaration[] =>
  parsed.document.entries.flatMap((entry) => (entry.kind === "statement" ? (declared(uri, entry) ?? []) : []));

function declared(uri: string, statement: Statement): Declaration | undefined {
  const { head, items } = statement;
  const [word, more] = head.segments;
  const [name, second] = items;
  if (more !== undefined || (word?.text !== "car" && word?.text !== "setup")) return undefined;
  if (name?.kind !== "path" || name.segments.length !== 1) return undefined;
  return {
    kind: word.text,
    name: name.segments[0]?.text ?? "",
    title: second?.kind === "text" ? second.value : undefined,
    from: baseName(statement)?.text,
    uri,
    statement,
    nameSpan: name,
  };
}

function baseName({ items: [, from, base] }: Statement) {
  const isFrom = from?.kind === "path" && from.segments.length === 1 && from.segments[0]?.text === "from";
  return isFrom && base?.kind === "path" && base.segments.length === 1 ? base.segments[0] : undefined;
}

/** Anywhere in front of the brace. */
const isOnOpening = ({ statement: { start, end, block } }: Declaration, offset: number): boolean =>
  holds({ start, end: block?.start ?? end }, offset);
