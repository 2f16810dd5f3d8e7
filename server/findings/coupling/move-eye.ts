/**
 * The computed fix: the smallest move of one eye in the rocker's plane after which the element only
 * swings in the unclaimed mode while its own motion stays within a tenth; where that is not to be had,
 * both eyes. Where other elements use an eye they are named, and an eye of its own is offered beside the move.
 */
import { showNumber } from "../../quantities/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { all } from "../wording.js";
import { coordinatesText } from "./coordinates.js";
import { eyeNameIn } from "./eye-name.js";
import { type EyeEnd, type EyeMove, pairedMove, singleMoves } from "./eye-search.js";
import { placedRocker, type PlacedEye } from "./placed-rocker.js";

export function eyeMoves(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  proves: (fix: Fix) => boolean,
): readonly Fix[] {
  const limit = car.model.leakLimits.information;
  const single = singleMoves(element, limit)
    .flatMap((move) => fixesFor(context, car, element, move))
    .filter(proves);
  if (single.length > 0) return single;
  const pair = pairedMove(element, limit);
  return pair === undefined ? [] : bothEyes(context, car, element, pair).filter(proves);
}

function fixesFor(context: RuleContext, car: CheckedCar, element: CheckedElement, move: EyeMove): readonly Fix[] {
  const coordinates = coordinatesOf(context, move);
  if (coordinates === undefined) return [];
  const others = othersOn(car, element, move.eye);
  const fix: Fix = {
    title: `Move eye ${moveWords(move, coordinates)}${alsoMoving(others)}`,
    edits: [editFor(move, coordinates)],
    preferred: false,
    safe: false,
  };
  return others.length === 0 ? [fix] : [...ownEye(context, element, move, coordinates), fix];
}

function bothEyes(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  [first, second]: readonly [EyeMove, EyeMove],
): readonly Fix[] {
  const firstText = coordinatesOf(context, first);
  const secondText = coordinatesOf(context, second);
  if (firstText === undefined || secondText === undefined) return [];
  const others = [...new Set([first, second].flatMap((move) => othersOn(car, element, move.eye)))];
  const title = `Move both eyes: ${moveWords(first, firstText)}, ${moveWords(second, secondText)}${alsoMoving(others)}`;
  return [{ title, edits: [editFor(first, firstText), editFor(second, secondText)], preferred: false, safe: false }];
}

const moveWords = ({ end, distance }: EyeMove, coordinates: string): string =>
  `${end.eye} by ${showNumber(distance * 1000, 2)} mm to ${coordinates}`;

function alsoMoving(others: readonly string[]): string {
  return others.length === 0 ? "" : `; ${all(others)} ${others.length === 1 ? "moves" : "move"} with it`;
}

function editFor({ eye: { given } }: EyeMove, coordinates: string): TextEdit {
  return { uri: given.origin.uri, span: given.origin, newText: coordinates };
}

/** Planar points are written without their x. */
function coordinatesOf(context: RuleContext, { eye: { given }, written }: EyeMove): string | undefined {
  const text = context.textOf(given.origin.uri)?.slice(given.origin.start, given.origin.end);
  const point = given.value.length === 2 ? written.slice(1) : written;
  return text === undefined ? undefined : coordinatesText(text, point, given.unit);
}

/** Names of the other elements that are joined to the same eye, each once. */
function othersOn(car: CheckedCar, element: CheckedElement, { given }: PlacedEye): readonly string[] {
  const elements = [car.model.axles.front, car.model.axles.rear].flatMap((axle) => axle?.elements ?? []);
  const using = elements.filter(
    (other) =>
      other.name !== element.model.name &&
      endsOf(other).some(
        (end) => end.point.origin.start === given.origin.start && end.point.origin.uri === given.origin.uri,
      ),
  );
  return [...new Set(using.map(({ name }) => name))];
}

function endsOf({ connection }: CheckedElement["model"]): readonly EyeEnd[] {
  const ends =
    connection?.kind === "between"
      ? connection.ends
      : connection?.kind === "bar"
        ? [connection.links.left, connection.links.right]
        : [];
  return ends.filter((end): end is EyeEnd => end?.kind === "eye");
}

/** A new eye for this element alone, below the shared one. */
function ownEye(
  context: RuleContext,
  { model, axle }: CheckedElement,
  { eye: { given }, end }: EyeMove,
  coordinates: string,
): readonly Fix[] {
  const text = context.textOf(given.statement.uri);
  if (text === undefined || model.connection?.kind !== "between" || axle === undefined) return [];
  // Where a set-up moved the eye there is no rocker block to add another to.
  if (!text.startsWith("eye ", given.statement.start)) return [];
  const taken = placedRocker(axle, end.side)?.eyes;
  const name = freeName(`${end.eye}-${model.name}`, (candidate) => taken?.has(candidate) === true);
  const lineStart = text.lastIndexOf("\n", given.statement.start - 1) + 1;
  const indent = /^\s*/.exec(text.slice(lineStart))?.[0] ?? "";
  const added = {
    uri: given.statement.uri,
    span: { start: given.statement.end, end: given.statement.end },
    newText: `\n${indent}eye ${name} ${coordinates}`,
  };
  const renamed = model.connection.ends.flatMap((one) => {
    const span = one.kind === "eye" && one.eye === end.eye ? eyeNameIn(context, one) : undefined;
    return span === undefined ? [] : [{ uri: one.origin.uri, span, newText: name }];
  });
  const title = `Give ${model.name} an eye of its own at ${coordinates}`;
  return renamed.length === 0 ? [] : [{ title, edits: [added, ...renamed], preferred: false, safe: false }];
}

function freeName(wanted: string, isTaken: (name: string) => boolean): string {
  let name = wanted;
  for (let number = 2; isTaken(name); number += 1) name = `${wanted}-${number}`;
  return name;
}
