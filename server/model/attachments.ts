/**
 * Ends of elements: `rocker.side`, `left.rocker.third`, `chassis (x, y, z)`, `bar.lever.end`, and at
 * car level the same behind the axle's name. Which side an end is on, which point it is, or why not.
 *
 * Invariant: an attachment that is returned exists; points are in the car's frame.
 */
import type { Attachment, ResolvedValue, RodCarrier } from "./car.js";
import {
  barNamed,
  barNames,
  eyeNames,
  eyeOf,
  hasRocker,
  hasUnreadEyes,
  inSpace,
  isPlanar,
  type AxleSides,
} from "./axle-sides.js";
import { inCar } from "./given.js";
import type { AxleName, Given, Origin, Side } from "./origin.js";
import type { ModelProblem } from "./problem.js";
import type { Sink } from "./sink.js";

export type AttachmentValue = Extract<ResolvedValue, { kind: "attachment" }>;

/** Where an element stands, and what it can be joined to. */
export interface Surroundings {
  readonly axles: { readonly [A in AxleName]: AxleSides | undefined };
  /** The axle that the element stands in; undefined at car level. */
  readonly axle: AxleSides | undefined;
  /** Set for one side of a corner element. */
  readonly side: Side | undefined;
  /** The word that it is joined with, for messages. */
  readonly word: string;
  readonly sink: Sink;
}

const bodies: ReadonlySet<string> = new Set(["lower-wishbone", "upper-wishbone", "upright"]);

/** What a path speaks of, with the axle and the side taken off its front. */
interface Spoken {
  readonly axle: AxleSides | undefined;
  readonly side: Side | undefined;
  /** The side that is written. */
  readonly written: Side | undefined;
  readonly rest: readonly string[];
  readonly origins: readonly Origin[];
}

export function spokenOf(segments: readonly string[], origins: readonly Origin[], around: Surroundings): Spoken {
  let at = 0;
  let axle = around.axle;
  const [first] = segments;
  if (first === "front" || first === "rear") {
    axle = around.axles[first];
    if (axle !== around.axle) around.sink.cannotRepeat();
    at++;
  }
  const second = segments[at];
  const side = second === "left" || second === "right" ? second : undefined;
  if (side !== undefined) at++;
  // A corner element is written for the left side: on the right one its ends are there too.
  return { axle, side: around.side ?? side, written: side, rest: segments.slice(at), origins: origins.slice(at) };
}

export function attachmentOf(value: AttachmentValue, around: Surroundings): Attachment | undefined {
  const spoken = spokenOf(value.segments, value.segmentOrigins, around);
  if (around.side !== undefined && spoken.written !== undefined) {
    const detail = "An element for corner stands on each side, and its ends are on its own.";
    return reportForm(value.origin, [spoken.rest.join(".")], detail, around);
  }
  const [body] = spoken.rest;
  if (body === "chassis") return onChassis(value, spoken, around);
  if (body !== undefined && bodies.has(body)) return onBody(value, spoken, around, body as RodCarrier);
  if (body === "rocker") return onRocker(value, spoken, around);
  if (spoken.rest[1] === "lever") return onLever(value, spoken, around);
  return reportUnknown(value.origin, value.segments.join("."), "eye", everyEnd(spoken, around), around);
}

function reportUnknown(
  place: Origin,
  name: string,
  target: string,
  candidates: readonly string[],
  around: Surroundings,
): undefined {
  around.sink.report({ ...place, kind: "unknown-name", name, target, candidates });
}

function reportForm(place: Origin, expected: readonly string[], detail: string, around: Surroundings): undefined {
  const problem: ModelProblem = { ...place, kind: "wrong-form", word: around.word, expected, detail };
  around.sink.report(problem);
}

/** Everything that an end may be, as it would be written here. */
function everyEnd({ axle, side }: Spoken, around: Surroundings): readonly string[] {
  if (axle === undefined) return [];
  const before = around.axle === undefined ? `${axle.name}.` : "";
  const sides = around.side === undefined ? ["left.", "right."] : [""];
  const eyes = eyeNames(axle, side ?? "left").map((eye) => `rocker.${eye}`);
  const bars = barNames(axle).map((bar) => `${bar}.lever.end`);
  return sides.flatMap((prefix) => [...eyes, ...bars].map((end) => before + prefix + end));
}

const pointIsDue = ["chassis (x, y, z) mm"] as const;

function onChassis(value: AttachmentValue, { axle, rest }: Spoken, around: Surroundings): Attachment | undefined {
  if (rest.length > 1) return reportForm(value.origin, pointIsDue, "A point on the chassis has no name.", around);
  const point = pointBehind(value, axle, around);
  return point && { kind: "chassis", point, origin: value.origin };
}

function pointBehind(value: AttachmentValue, axle: AxleSides | undefined, around: Surroundings) {
  const { point } = value;
  const body = value.segments.at(-1) ?? "chassis";
  if (point === undefined) {
    return reportForm(value.origin, [`${body} (x, y, z) mm`], "The point on the body is missing.", around);
  }
  const isFlat = point.value.length === 2;
  if (isFlat && (axle === undefined || !isPlanar(axle))) {
    return reportForm(value.origin, [`${body} (x, y, z) mm`], "Three coordinates are due in space.", around);
  }
  const own = around.side === undefined ? point : inCar(point, around.side);
  return axle === undefined
    ? (own as Given<readonly [number, number, number]>)
    : inSpace(own, axle, around.side ?? "left");
}

/** The axle and side that an end is on; told where it does not say. */
function sideOf(value: AttachmentValue, { axle, side, rest }: Spoken, around: Surroundings) {
  const end = rest.join(".");
  if (axle === undefined) {
    const expected = ["front", "rear"].map((name) => `${name}.${side ?? "left"}.${end}`);
    return reportForm(value.origin, expected, "Say which axle it is on.", around);
  }
  if (side !== undefined) return { axle, side };
  const before = around.axle === undefined ? `${axle.name}.` : "";
  const expected = [`${before}left.${end}`, `${before}right.${end}`];
  return reportForm(value.origin, expected, "Say which side it is on.", around);
}

function onBody(
  value: AttachmentValue,
  spoken: Spoken,
  around: Surroundings,
  body: RodCarrier,
): Attachment | undefined {
  const found = sideOf(value, spoken, around);
  const point = found && pointBehind(value, found.axle, around);
  return found && point && { kind: "body", side: found.side, body, point, axle: found.axle.name, origin: value.origin };
}

function onRocker(value: AttachmentValue, spoken: Spoken, around: Surroundings): Attachment | undefined {
  const [, name, more] = spoken.rest;
  const found = sideOf(value, spoken, around);
  if (found === undefined) return undefined;
  const { axle, side } = found;
  if (name === undefined || more !== undefined || value.point !== undefined) {
    const expected = eyeNames(axle, side)
      .slice(0, 3)
      .map((eye) => `rocker.${eye}`);
    return reportForm(value.origin, expected, "A rocker is joined at one of its eyes.", around);
  }
  const eye = eyeOf(axle, side, name);
  const place = spoken.origins[1] ?? value.origin;
  if (eye === undefined) {
    if (hasUnreadEyes(axle, side)) return undefined;
    const isThere = hasRocker(axle, side);
    return reportUnknown(place, isThere ? name : "rocker", "eye", isThere ? eyeNames(axle, side) : [], around);
  }
  mentionEye(eye.statement.root, name, place, axle, around);
  return { kind: "eye", side, eye: name, point: eye.point, axle: axle.name, origin: value.origin };
}

function mentionEye(
  root: Origin | undefined,
  name: string,
  place: Origin,
  axle: AxleSides,
  around: Surroundings,
): void {
  if (root === undefined) return;
  const rocker = { segment: "rocker", outer: { segment: axle.name, outer: undefined } };
  around.sink.refer({ target: "eye", name, place: rocker, declaration: root }, place);
}

function onLever(value: AttachmentValue, spoken: Spoken, around: Surroundings): Attachment | undefined {
  const [name = "", , end, more] = spoken.rest;
  const { axle } = spoken;
  if (axle === undefined) return sideOf(value, spoken, around) && undefined;
  const bar = barNamed(axle, name);
  const place = spoken.origins[0] ?? value.origin;
  if (bar === undefined) return reportUnknown(place, name, "element", barNames(axle), around);
  if (end !== "end" || more !== undefined) {
    return reportForm(value.origin, [`${name}.lever.end`], "A lever is joined at its end.", around);
  }
  if (bar.root !== undefined) {
    around.sink.refer(
      { target: "element", name, place: { segment: axle.name, outer: undefined }, declaration: bar.root },
      place,
    );
  }
  // The lever is written for the left side, and so is what is joined to it without a side.
  return { kind: "lever-end", side: spoken.side ?? "left", bar: name, axle: axle.name, origin: value.origin };
}
