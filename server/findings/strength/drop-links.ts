/**
 * The drop link's length at which a bar hangs free: found on the car itself, by false position over the checks on the
 * changed text, and written to a hundredth of a millimetre.
 */
import type { Figure } from "../../analyses/results.js";
import type { Given, Origin, Side } from "../../model/origin.js";
import { fromSI, toSI } from "../../quantities/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { changedBy } from "../proven.js";
import { isInside, lineAdded, valueEdit } from "../setup-lines.js";
import { nameOf } from "../where.js";

const TRIES = 8;
/** rad; below what a hundredth of a millimetre makes. */
const FREE = 1e-6;
/** Change of length that the first look takes, m. */
const LOOK = 1e-3;

/** What of the changed car says whether it serves. */
export interface Judged {
  readonly twist: Figure;
  readonly isFound: boolean;
}

const longerOf = ({ model: { connection } }: CheckedElement, side: Side): Given | undefined =>
  connection?.kind === "bar" || connection?.kind === "tee" ? connection.longer[side] : undefined;

/** The lines that set its links, those of one side alone first. */
export function linkPlacesOf(element: CheckedElement): readonly Origin[] {
  const { connection } = element.model;
  if (connection?.kind !== "bar" && connection?.kind !== "tee") return [];
  const set = [longerOf(element, "left"), longerOf(element, "right")].flatMap((given) => given ?? []);
  const later = [...set].sort((a, b) => b.chain.length - a.chain.length || b.statement.start - a.statement.start);
  return [...later.map(({ statement }) => statement), connection.origin];
}

export function untwisting(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  judge: (after: CheckedCar) => Judged | undefined,
): readonly Fix[] {
  for (const side of sidesToSet(element)) {
    const found = onSide(context, car, element, side, judge);
    if (found !== undefined) return [found];
  }
  return [];
}

/** The side whose link is set away from the other's is the one to set again. */
function sidesToSet(element: CheckedElement): readonly Side[] {
  const away = (side: Side): number => Math.abs(longerOf(element, side)?.value ?? 0);
  return away("right") > away("left") ? ["right", "left"] : ["left", "right"];
}

function onSide(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  side: Side,
  judge: (after: CheckedCar) => Judged | undefined,
): Fix | undefined {
  const given = longerOf(element, side);
  const unit = given?.unit ?? "mm";
  const look = (length: number): (Judged & { readonly edit: TextEdit; readonly text: string }) | undefined => {
    const text = lengthText(length, unit);
    const edit = text === undefined ? undefined : edited(context, car, element, side, text);
    const after = edit && changedBy(context, { edits: [edit] })?.cars.find((one) => nameOf(one) === nameOf(car));
    const judged = after && judge(after);
    return judged === undefined || edit === undefined || text === undefined ? undefined : { ...judged, edit, text };
  };
  const start = given?.value ?? 0;
  let [before, at] = [start, start + LOOK];
  let was = element.figures.deflection;
  for (let i = 0; i < TRIES; i++) {
    const here = look(at);
    if (here === undefined || typeof here.twist !== "number" || typeof was !== "number") return undefined;
    if (Math.abs(here.twist) < FREE || (!here.isFound && i > 1)) return fixOf(side, element, here);
    const slope = (here.twist - was) / (at - before);
    if (!(Math.abs(slope) > 0)) return undefined;
    [before, was, at] = [at, here.twist, at - here.twist / slope];
  }
  return undefined;
}

function fixOf(
  side: Side,
  { model }: CheckedElement,
  { edit, text }: { readonly edit: TextEdit; readonly text: string },
) {
  const title = `Set the ${side} drop link of ${model.name} to ${text} longer than drawn`;
  return { title, edits: [edit], preferred: false, safe: false };
}

/** To a hundredth of a millimetre, in the author's unit. */
function lengthText(length: number, unit: string): string | undefined {
  const [value, size] = [fromSI(length, unit), fromSI(1e-5, unit)];
  if (value === undefined || size === undefined || toSI(0, unit) === undefined) return undefined;
  return `${Number((Math.round(value / size) * size).toPrecision(8)) + 0} ${unit}`;
}

/** In its own line where that speaks of this side alone, else as a line of the set-up. */
function edited(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  side: Side,
  text: string,
): TextEdit | undefined {
  const { model } = element;
  const [given, other] = [longerOf(element, side), longerOf(element, side === "left" ? "right" : "left")];
  const path = `${model.axle ?? ""}.${side}.${model.name}.drop-link.longer`;
  const isOfBoth = given !== undefined && given.origin.start === other?.origin.start;
  if (given !== undefined && !isOfBoth && isInside(given.origin, car.model.origin)) {
    return valueEdit(context, car.model, { given, path, text });
  }
  if (car.model.setup === undefined || model.axle === undefined) return undefined;
  return lineAdded(context, car.model, model.axle, `${path} ${text}`);
}
