/** Parts from the shelf that clear a fault, the nearest in rate first: each is tried on the car. */
import type { Document, Statement } from "../../../grammar/index.js";
import type { ResolvedStatement } from "../../model/car.js";
import { showNumber } from "../../quantities/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { RuleContext } from "../context.js";
import type { Fix } from "../finding.js";
import { valueEdit } from "../setup-lines.js";
import { pathTo } from "./line-edits.js";
import { clearedBy, type Mending } from "./proof.js";

/** A fix is asked for, not typed: but a shelf of hundreds is not tried whole. */
const MOST_TRIED = 60;
const OFFERED = 2;

/** Names of the parts of a kind in every file that this one rests on. */
function partsOf(context: RuleContext, word: string): readonly string[] {
  const catalogues = context.uses.flatMap((uri) => statementsIn(context.parsedOf(uri)?.document, "catalogue"));
  const parts = catalogues.flatMap(({ block }) => statementsIn(block, word));
  return parts.flatMap(({ items: [name] }) => (name?.kind === "path" ? (name.segments[0]?.text ?? []) : []));
}

const statementsIn = (block: Pick<Document, "entries"> | undefined, word: string): readonly Statement[] =>
  (block?.entries ?? []).filter(
    (entry): entry is Statement =>
      entry.kind === "statement" && entry.head.segments.length === 1 && entry.head.segments[0]?.text === word,
  );

const fittedName = ({ values: [value] }: ResolvedStatement): string =>
  value?.kind === "path" ? value.segments.join(".") : "";

interface Tried {
  readonly fix: Fix;
  /** By how much its rate is off, as a natural logarithm. */
  readonly off: number;
}

/** The line that fits a part of this kind into the element. */
function fitLine({ context, element }: Mending, word: string): ResolvedStatement | undefined {
  const names = partsOf(context, word);
  return element.model.block.statements.find((one) => one.word === "fit" && names.includes(fittedName(one)));
}

export const isFitted = (mending: Mending, word: string): boolean => fitLine(mending, word) !== undefined;

/** @param word of the catalogue: what kind of part is to be swapped; nothing is offered where none is fitted */
export function strongerParts(mending: Mending, word: string): readonly Fix[] {
  const { context, car, element } = mending;
  const fit = fitLine(mending, word);
  const value = fit?.values[0];
  if (fit === undefined || value === undefined) return [];
  const tried = partsOf(context, word)
    .filter((name) => name !== fittedName(fit))
    .slice(0, MOST_TRIED)
    .flatMap((name): readonly Tried[] => {
      const change = { given: { origin: value.origin }, path: pathTo(mending, "fit"), text: name };
      const edit = valueEdit(context, car.model, change);
      const after = edit && clearedBy(mending, { edits: [edit] });
      if (edit === undefined || after === undefined) return [];
      const off = rateChange(element, after);
      return [{ fix: { title: titleFor(name, off), edits: [edit], preferred: false, safe: false }, off: off ?? 0 }];
    });
  return tried
    .sort((a, b) => Math.abs(a.off) - Math.abs(b.off))
    .slice(0, OFFERED)
    .map(({ fix: found }) => found);
}

/** ln(rate after / rate before); undefined where either is not known. */
export function rateChange(before: CheckedElement, after: CheckedElement): number | undefined {
  const [from, to] = [before.figures.rate, after.figures.rate];
  return typeof from === "number" && typeof to === "number" && from > 0 && to > 0 ? Math.log(to / from) : undefined;
}

function titleFor(name: string, off: number | undefined): string {
  return off === undefined ? `Fit ${name}` : `Fit ${name}, ${changeWords(off)}`;
}

/** "12 % stiffer", "of the same rate". */
export function changeWords(off: number): string {
  const percent = 100 * (Math.exp(off) - 1);
  if (Math.abs(percent) < 0.5) return "of the same rate";
  return `${showNumber(Math.abs(percent), 2)} % ${percent > 0 ? "stiffer" : "softer"}`;
}
