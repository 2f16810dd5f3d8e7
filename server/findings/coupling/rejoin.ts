/**
 * The eyes that are there already, joined otherwise: both ends' eyes swapped, one end on another eye, or
 * the connection exchanged with that of an element that has the one wanted here.
 *
 * What is offered is looked at on the mechanism first; only what would be free of leak goes on to be proven.
 */
import { connectionProbe, type ProbedElement } from "../../assemble/eye-probe.js";
import type { AxleModel, ConnectionModel, ElementModel } from "../../model/car.js";
import { type CheckedElement, elementsOf } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix } from "../finding.js";
import { type EyeEnd, eyeEndsOf } from "./eye-ends.js";
import { joinedTo } from "./joined-to.js";
import { type AxleMode, claimedMotion, leakOverTravel, unclaimedMotion } from "./motion.js";
import { placedRocker } from "./placed-rocker.js";

/** Other eyes that are tried in earnest for one element. */
const MOST = 2;

type Ends = Extract<ConnectionModel, { kind: "between" }>["ends"];

export interface Rejoining {
  readonly context: RuleContext;
  readonly car: CheckedCar;
  readonly element: CheckedElement;
  /** The mode that it is not for. */
  readonly into: AxleMode;
  readonly proves: (fix: Fix) => boolean;
}

export function rejoined(rejoining: Rejoining): readonly Fix[] {
  const { element, proves } = rejoining;
  if (element.axle === undefined || element.model.connection?.kind !== "between") return [];
  return [...swapped(rejoining), ...onOtherEyes(rejoining).slice(0, MOST), ...exchanged(rejoining)].filter(proves);
}

/** `left.rocker.high and right.rocker.low` becomes `left.rocker.low and right.rocker.high`. */
function swapped(rejoining: Rejoining): readonly Fix[] {
  const { element } = rejoining;
  const [first, second, more] = eyeEndsOf(element.model.connection);
  if (first === undefined || second === undefined || more !== undefined || first.eye === second.eye) return [];
  const eyeOf = (end: EyeEnd): string => (end === first ? second.eye : first.eye);
  if (!isClear(rejoining, eyeOf)) return [];
  return fixFor(rejoining, `Swap the eyes: ${first.side} ${second.eye}, ${second.side} ${first.eye}`, eyeOf);
}

/** The one that is moved most in its own mode first. */
function onOtherEyes(rejoining: Rejoining): readonly Fix[] {
  const { axle, model } = rejoining.element;
  const found = eyeEndsOf(model.connection).flatMap((end) => {
    const eyes = axle === undefined ? undefined : placedRocker(axle, end.side)?.eyes;
    return [...(eyes?.keys() ?? [])].flatMap((eye) => {
      const eyeOf = (one: EyeEnd): string => (one === end ? eye : one.eye);
      const own = eye === end.eye ? undefined : clearMotion(rejoining, eyeOf);
      return own === undefined ? [] : [{ own, end, eye, eyeOf }];
    });
  });
  return found
    .sort((a, b) => b.own - a.own)
    .flatMap(({ end, eye, eyeOf }) => fixFor(rejoining, `Join ${model.name} to ${end.side}.rocker.${eye}`, eyeOf));
}

function fixFor({ context, car, element }: Rejoining, title: string, eyeOf: (end: EyeEnd) => string): readonly Fix[] {
  const edits = joinedTo(context, car, element.model, eyeOf);
  return edits === undefined ? [] : [{ title, edits, preferred: false, safe: false }];
}

/** Two elements that each have the connection that the other one wants. */
function exchanged(rejoining: Rejoining): readonly Fix[] {
  const { context, car, element } = rejoining;
  const { axle, model } = element;
  const others = elementsOf(car).filter((other) => other.axle === axle && other.model.name !== model.name);
  return others.flatMap((other) => {
    const [mine, theirs] = [eyeEndsOf(model.connection), eyeEndsOf(other.model.connection)];
    if (mine.length !== 2 || theirs.length !== 2 || other.model.connection?.kind !== "between") return [];
    if (mine.some((end, index) => end.side !== theirs[index]?.side)) return [];
    const from = (ends: readonly EyeEnd[], instead: readonly EyeEnd[]) => (end: EyeEnd) =>
      instead[ends.indexOf(end)]?.eye ?? end.eye;
    if (!isClear(rejoining, from(mine, theirs))) return [];
    const own = joinedTo(context, car, model, from(mine, theirs));
    const given = joinedTo(context, car, other.model, from(theirs, mine));
    if (own === undefined || given === undefined) return [];
    return [
      {
        title: `Exchange its eyes with those of ${other.model.name}`,
        edits: [...own, ...given],
        preferred: false,
        safe: false,
      },
    ];
  });
}

const isClear = (rejoining: Rejoining, eyeOf: (end: EyeEnd) => string): boolean =>
  clearMotion(rejoining, eyeOf) !== undefined;

/** Motion in its own mode with these eyes, if the other mode only swings it. */
function clearMotion({ car, element, into }: Rejoining, eyeOf: (end: EyeEnd) => string): number | undefined {
  const { axle, model } = element;
  const probed = axle && probedWith(axle, model, eyeOf);
  if (probed === undefined) return undefined;
  const own = Math.abs(claimedMotion(probed, into));
  const limit = car.model.leakLimits.information;
  const isIt = Math.abs(unclaimedMotion(probed, into)) <= limit * own && leakOverTravel(probed, into) <= limit;
  return own > 0 && isIt ? own : undefined;
}

function probedWith(axle: AxleModel, model: ElementModel, eyeOf: (end: EyeEnd) => string): ProbedElement | undefined {
  const { connection } = model;
  if (connection?.kind !== "between") return undefined;
  const [first, second] = connection.ends.map((end) => {
    const point = end.kind === "eye" ? placedRocker(axle, end.side)?.eyes.get(eyeOf(end))?.point : undefined;
    return end.kind === "eye" && point !== undefined
      ? { ...end, eye: eyeOf(end), point: { ...end.point, value: point } }
      : end;
  });
  if (first === undefined || second === undefined) return undefined;
  const ends: Ends = [first, second];
  return connectionProbe(axle, model)({ ...connection, ends });
}
