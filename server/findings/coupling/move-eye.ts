/**
 * The computed fix: the smallest move of one eye in the rocker's plane after which the element only
 * swings in the unclaimed mode while its own motion stays within a tenth; where that is not to be had,
 * both eyes. Where other elements use an eye they are named, and an eye of its own is offered beside the move.
 *
 * What a set-up does is mended in the set-up: an eye that it inherits is moved by a line of its own.
 */
import { showQuantity } from "../../quantities/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { isInside, valueEdit } from "../setup-lines.js";
import { all } from "../wording.js";
import { coordinatesText, isPlain } from "./coordinates.js";
import { othersOn } from "./eye-ends.js";
import { type EyeMove, pairedMove, singleMoves } from "./eye-search.js";
import { ownEye } from "./own-eye.js";
import type { PlacedEye } from "./placed-rocker.js";

export function eyeMoves(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  proves: (fix: Fix) => boolean,
): readonly Fix[] {
  const limit = car.model.leakLimits.information;
  const moved = singleMoves(element, limit, () => false).flatMap((move) => movedFix(context, car, element, move));
  // An eye that others use, or that cannot be moved by one number, may stay, and the element gets one beside it.
  const stays = ({ given }: PlacedEye): boolean => othersOn(car, element.model.name, given).length > 0;
  const own = singleMoves(element, limit, () => true).flatMap((move) =>
    stays(move.eye) || movedFix(context, car, element, move).length === 0 ? newEye(context, car, element, move) : [],
  );
  const single = [...own, ...moved].filter(proves);
  if (single.length > 0) return single;
  const pair = pairedMove(element, limit);
  return pair === undefined ? [] : bothEyes(context, car, element, pair).filter(proves);
}

function movedFix(context: RuleContext, car: CheckedCar, element: CheckedElement, move: EyeMove): readonly Fix[] {
  const coordinates = coordinatesOf(move);
  const edit = coordinates === undefined ? undefined : editFor(context, car, move, coordinates);
  if (coordinates === undefined || edit === undefined) return [];
  const others = othersOn(car, element.model.name, move.eye.given);
  const title = `Move eye ${moveWords(move, coordinates)}${whereWords(car, move)}${alsoMoving(others)}`;
  return [{ title, edits: [edit], preferred: false, safe: false }];
}

function newEye(context: RuleContext, car: CheckedCar, element: CheckedElement, move: EyeMove): readonly Fix[] {
  const coordinates = coordinatesOf(move);
  return coordinates === undefined ? [] : ownEye(context, car, element, move, coordinates);
}

function bothEyes(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  moves: readonly [EyeMove, EyeMove],
): readonly Fix[] {
  const edits: TextEdit[] = [];
  const words: string[] = [];
  for (const move of moves) {
    const coordinates = coordinatesOf(move);
    const edit = coordinates === undefined ? undefined : editFor(context, car, move, coordinates);
    if (coordinates === undefined || edit === undefined) return [];
    edits.push(edit);
    words.push(moveWords(move, coordinates));
  }
  const others = new Set(moves.flatMap((move) => othersOn(car, element.model.name, move.eye.given)));
  const title = `Move both eyes: ${words.join(", ")}${alsoMoving([...others])}`;
  return [{ title, edits, preferred: false, safe: false }];
}

const moveWords = ({ end, distance, eye: { given } }: EyeMove, coordinates: string): string =>
  `${end.eye} by ${showQuantity(distance, given.unit, 2)} to ${coordinates}`;

/** An edit away from the eye's own line is not left unsaid. */
const whereWords = ({ model }: CheckedCar, { eye: { given } }: EyeMove): string =>
  isInside(given.origin, model.origin) ? "" : ` in ${model.setup ?? model.name}`;

function alsoMoving(others: readonly string[]): string {
  return others.length === 0 ? "" : `; ${all(others)} ${others.length === 1 ? "moves" : "move"} with it`;
}

/** None where a name or a sum would be replaced. */
function editFor(
  context: RuleContext,
  { model }: CheckedCar,
  { end, sides, eye: { given } }: EyeMove,
  coordinates: string,
): TextEdit | undefined {
  const { origin } = given;
  const isOwn = isInside(origin, model.origin);
  if (isOwn && !isPlain(context.text.slice(origin.start, origin.end))) return undefined;
  const side = sides.length === 2 ? "" : `${end.side}.`;
  return valueEdit(context, model, { given, path: `${end.axle}.${side}rocker.${end.eye}`, text: coordinates });
}

/** Planar points are written without their x. */
function coordinatesOf({ eye: { given }, written }: EyeMove): string | undefined {
  return coordinatesText(given.value.length === 2 ? written.slice(1) : written, given.unit);
}
