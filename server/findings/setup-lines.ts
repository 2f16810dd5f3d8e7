/**
 * The lines of a car's or set-up's own declaration: which of them concern an axle, and where a further
 * one goes. What a set-up inherits is never changed where it is inherited from.
 *
 * Invariant: reads the tree of the file that declares the car; edits stay inside the declaration.
 */
import type { Entry, Item, Statement } from "../../grammar/index.js";
import type { CarModel } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import type { RuleContext } from "./context.js";
import type { TextEdit } from "./finding.js";
import { insertionInto } from "./insertion.js";

/** What is read of the file that declares the car. */
type Declaring = Pick<RuleContext, "uri" | "text" | "parsed">;

export const isInside = (inner: Origin, outer: Origin): boolean =>
  inner.uri === outer.uri && outer.start <= inner.start && inner.end <= outer.end;

/** The declaring statement of a car or set-up of this file. */
function declarationOf(context: Declaring, { origin }: CarModel): Statement | undefined {
  const found = context.parsed.document.entries.find(
    (entry) => entry.kind === "statement" && entry.start === origin.start,
  );
  return found?.kind === "statement" && context.uri === origin.uri ? found : undefined;
}

const firstWord = (item: Item | undefined): string | undefined =>
  item?.kind === "path" ? item.segments[0]?.text : undefined;

/** `front.third.rate …`, `axle front { … }`, `remove front.third`: the axle that a line speaks of. */
function axleOf(entry: Entry): string | undefined {
  if (entry.kind !== "statement") return undefined;
  const [first] = entry.head.segments;
  const spokenOf = first?.text === "axle" || first?.text === "remove" ? firstWord(entry.items[0]) : first?.text;
  return spokenOf === "front" || spokenOf === "rear" ? spokenOf : undefined;
}

/** The declaration's own lines that speak of an axle. */
export function linesOf(context: Declaring, car: CarModel, axle: string): readonly Statement[] {
  const entries = declarationOf(context, car)?.block?.entries ?? [];
  return entries.filter((entry): entry is Statement => entry.kind === "statement" && axleOf(entry) === axle);
}

/** A line more in the declaration, behind those that speak of the same axle. */
export function lineAdded(context: Declaring, car: CarModel, axle: string, line: string): TextEdit | undefined {
  const block = declarationOf(context, car)?.block;
  if (block === undefined) return undefined;
  const alike = block.entries.filter((entry) => axleOf(entry) === axle);
  const above = new Set((alike.length > 0 ? alike : block.entries).map(lastWord));
  return { uri: context.uri, ...insertionInto(context.text, block, line, above) };
}

const lastWord = (entry: Entry): string => (entry.kind === "statement" ? (entry.head.segments.at(-1)?.text ?? "") : "");

export interface NewValue {
  /** Where the value in force is written. */
  readonly given: { readonly origin: Origin };
  /** How a set-up speaks of it: `front.travel`. */
  readonly path: string;
  readonly text: string;
}

/**
 * Another value for this car or set-up alone: in its own text where it is written there (a change `by`
 * becomes the value itself), else by a line more in the set-up.
 */
export function valueEdit(context: Declaring, car: CarModel, { given, path, text }: NewValue): TextEdit | undefined {
  const { origin } = given;
  if (!isInside(origin, car.origin)) return lineAdded(context, car, path.split(".")[0] ?? "", `${path} ${text}`);
  const by = /\bby[ \t]+$/.exec(context.text.slice(0, origin.start));
  return {
    uri: origin.uri,
    span: { start: origin.start - (by?.[0].length ?? 0), end: origin.end },
    newText: text,
  };
}

/** The line of a set-up that takes an element out, on one side or both (`remove front.left.side` for front, side). */
export function removalOf(context: Declaring, car: CarModel, axle: string, element: string): Origin | undefined {
  const [found] = linesOf(context, car, axle)
    .filter(({ head }) => head.segments.length === 1 && head.segments[0]?.text === "remove")
    .filter(({ items: [item] }) => item?.kind === "path" && item.segments.at(-1)?.text === element);
  return found && { uri: context.uri, start: found.start, end: found.end };
}
