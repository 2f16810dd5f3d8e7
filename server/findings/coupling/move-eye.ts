/**
 * The computed fix: the smallest move of one eye in the rocker's plane after which the element only
 * swings in the unclaimed mode while its own motion stays within a tenth. Where other elements use
 * the eye they are named, and an eye of its own is offered beside the move.
 */
import { clearEye, type EyePlane } from "../../analyses/clear-eye.js";
import { eyeProbe, type ProbedElement } from "../../assemble/eye-probe.js";
import { cross, mirror, norm, scale, sub, add, unit, type Vec3 } from "../../maths/vec3.js";
import type { Attachment, AxleModel, RockerModel } from "../../model/car.js";
import type { Given, Side } from "../../model/origin.js";
import { showNumber } from "../../quantities/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix } from "../finding.js";
import { all } from "../wording.js";
import { eyeNameIn } from "./eye-name.js";
import { leakOf } from "./leak.js";
import { coordinatesText } from "./coordinates.js";

/** The own motion may change by a tenth: more would be another set-up. */
const KEEP = 0.1;

type EyeEnd = Extract<Attachment, { kind: "eye" }>;

interface Candidate {
  readonly end: EyeEnd;
  readonly eye: Given<Vec3>;
  /** The new place, as it is written for the side whose text gives it. */
  readonly written: Vec3;
  readonly distance: number;
}

export function eyeMoves(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  proves: (fix: Fix) => boolean,
): readonly Fix[] {
  return candidates(element, car.model.leakLimits.information)
    .sort((a, b) => a.distance - b.distance)
    .flatMap((candidate) => fixesFor(context, car, element, candidate))
    .filter(proves);
}

function candidates({ model, axle, figures }: CheckedElement, limit: number): Candidate[] {
  const mode = leakOf(figures)?.mode;
  if (axle === undefined || model.connection?.kind !== "between" || (mode !== "heave" && mode !== "roll")) return [];
  const seen = new Set<number>();
  return model.connection.ends.flatMap((end) => {
    const rocker = end.kind === "eye" ? rockerOf(axle, end.side) : undefined;
    const eye = end.kind === "eye" ? rocker?.eyes.get(end.eye) : undefined;
    if (end.kind !== "eye" || rocker === undefined || eye === undefined || seen.has(eye.origin.start)) return [];
    seen.add(eye.origin.start);
    return moved(axle, model, end, eye, rocker, mode, limit) ?? [];
  });
}

function moved(
  axle: AxleModel,
  element: CheckedElement["model"],
  end: EyeEnd,
  eye: Given<Vec3>,
  rocker: RockerModel,
  into: "heave" | "roll",
  limit: number,
): Candidate | undefined {
  const sides = (["left", "right"] as const).filter(
    (side) => rockerOf(axle, side)?.eyes.get(end.eye)?.origin.start === eye.origin.start,
  );
  const toLeft = (point: Vec3): Vec3 => (end.side === "left" ? point : mirror(point));
  const from = toLeft(eye.value);
  const [e1, e2] = planeOf(toLeft(rocker.axis.value));
  const place = (a: number, b: number): Vec3 => add(from, add(scale(e1, a), scale(e2, b)));
  const pivot = toLeft(rocker.pivot.value);
  const furthest = norm(sub(from, pivot));
  const probe = eyeProbe(axle, element, { eye: end.eye, sides });
  const at = (a: number, b: number): ProbedElement | undefined => probe(place(a, b));
  const move = clearEye(planeFor(at, into, limit, furthest));
  if (move === undefined) return undefined;
  const point = place(move.a, move.b);
  // A mirrored eye is written for the left side; one that stands for the right alone in its own place.
  const written = sides.includes("left") ? point : mirror(point);
  return { end, eye, written, distance: Math.hypot(move.a, move.b) };
}

/** Over the travel a little below the limit, so that rounding the coordinates does not cross it. */
const BELOW = 0.95;

/** What has to come to nothing, and what has to be kept: the own motion within a tenth, no leak over the travel. */
function planeFor(
  at: (a: number, b: number) => ProbedElement | undefined,
  into: "heave" | "roll",
  limit: number,
  furthest: number,
): EyePlane {
  const start = at(0, 0);
  const kept = start === undefined ? 0 : claimedMotion(start, into);
  return {
    furthest,
    unclaimed(a, b) {
      const probed = at(a, b);
      return probed && (into === "heave" ? inHeave(probed) : inRoll(probed));
    },
    allowed(a, b) {
      const probed = at(a, b);
      if (probed === undefined) return false;
      const [leaked, own] = into === "heave" ? [probed.heave, probed.roll] : [probed.roll, probed.heave];
      return Math.abs(claimedMotion(probed, into) / kept - 1) <= KEEP && leaked <= BELOW * limit * own;
    },
  };
}

const inHeave = ({ design }: ProbedElement): number => design.dL + design.dR;
const inRoll = ({ design }: ProbedElement): number => design.dR - design.dL;
const claimedMotion = (probed: ProbedElement, into: "heave" | "roll"): number => (into === "heave" ? inRoll(probed) : inHeave(probed));

/** Two unit vectors that span the plane across the axis. */
function planeOf(axis: Vec3): readonly [Vec3, Vec3] {
  const along = unit(axis);
  const helper: Vec3 = Math.abs(along[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const first = unit(cross(along, helper));
  return [first, cross(along, first)];
}

function rockerOf(axle: AxleModel, side: Side): RockerModel | undefined {
  const corner = axle.corner[side];
  return corner.kind === "hardpoints" ? corner.rocker : undefined;
}

function fixesFor(
  context: RuleContext,
  car: CheckedCar,
  element: CheckedElement,
  candidate: Candidate,
): readonly Fix[] {
  const { eye, written, end, distance } = candidate;
  const text = context.textOf(eye.origin.uri)?.slice(eye.origin.start, eye.origin.end);
  const coordinates = text === undefined ? undefined : coordinatesText(text, written, eye.unit);
  if (coordinates === undefined) return [];
  const others = othersOn(car, element, eye);
  const far = `${showNumber(distance * 1000, 2)} mm`;
  const also = others.length === 0 ? "" : `; ${all(others)} ${others.length === 1 ? "moves" : "move"} with it`;
  const move: Fix = {
    title: `Move eye ${end.eye} by ${far} to ${coordinates}${also}`,
    edits: [{ uri: eye.origin.uri, span: eye.origin, newText: coordinates }],
    preferred: false,
    safe: false,
  };
  return others.length === 0 ? [move] : [...ownEye(context, element, candidate, coordinates), move];
}

/** Names of the other elements that are joined to the same eye, each once. */
function othersOn(car: CheckedCar, element: CheckedElement, eye: Given<Vec3>): readonly string[] {
  const elements = [car.model.axles.front, car.model.axles.rear].flatMap((axle) => axle?.elements ?? []);
  const using = elements.filter(
    (other) =>
      other.name !== element.model.name &&
      endsOf(other).some(
        (end) => end.point.origin.start === eye.origin.start && end.point.origin.uri === eye.origin.uri,
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
  { eye, end }: Candidate,
  coordinates: string,
): readonly Fix[] {
  const text = context.textOf(eye.statement.uri);
  if (text === undefined || model.connection?.kind !== "between" || axle === undefined) return [];
  const taken = rockerOf(axle, end.side)?.eyes;
  const name = freeName(`${end.eye}-${model.name}`, (candidate) => taken?.has(candidate) === true);
  const lineStart = text.lastIndexOf("\n", eye.statement.start - 1) + 1;
  const indent = /^\s*/.exec(text.slice(lineStart))?.[0] ?? "";
  const added = {
    uri: eye.statement.uri,
    span: { start: eye.statement.end, end: eye.statement.end },
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
