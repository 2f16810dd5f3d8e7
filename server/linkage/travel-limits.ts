/**
 * How far a corner can go: the angles of the lower wishbone, each way from design, at which the
 * branch that holds at design ends, and the link that ends it.
 *
 * An end is a toggle (a link in line with its arm: the closed form has no root) or the highest or
 * lowest point of the wheel centre (dz/dθ = 0). A march outwards brackets the first end, with a look
 * into every dip of a margin between two steps; bisection then closes it to the last bit of tan(θ/2).
 *
 * Invariant: everywhere inside the limits all links reach and dz/dθ > 0, so that a travel has one position.
 */
import type { Constants } from "./constants.js";
import type { BindingLink } from "./corner.js";
import {
  PLACED,
  placeRocker,
  placeUpright,
  Pose,
  ROD_BINDS,
  slope,
  type Status,
  TRACK_ROD_BINDS,
  UPPER_BINDS,
} from "./position.js";
import { transmissions } from "./transmission.js";

export interface TravelLimit {
  /** tan(θ/2) of the last reachable position. */
  readonly t: number;
  /** Wheel travel there, m. */
  readonly travel: number;
  readonly link: BindingLink;
}

export interface TravelLimits {
  readonly low: TravelLimit;
  readonly high: TravelLimit;
}

/** Step of the march, rad; no suspension turns its links through two toggles inside one. */
const STEP = Math.PI / 90;
/** The lower wishbone is not followed beyond this; nothing drawn as a suspension gets there. */
const LAST = 85;
/** Halvings: as many as a double has bits, and some. */
const HALVINGS = 60;
/** Golden-section steps into a dip: 0.618^40 of a step. */
const SHRINKS = 40;
/**
 * sin μ that counts as a toggle: its square is what rounding leaves of the closed form there, so that no position inside
 * the limits is lost to rounding. A rod's limit moves by the square of it, a wishbone's or track rod's by itself: less than
 * 1e-8 m in a corner of half a metre.
 */
const IN_TOGGLE = 3e-8;
/** The same for the rod, which has no second try: its limit moves by the square only. */
const ROD_IN_TOGGLE = 1e-7;
const GOLDEN = 0.6180339887498949;

/** The link that stands in its toggle as nearly as may be told. */
function inLine(k: Constants, p: Pose): Status {
  const { upper, trackRod, rod } = transmissions(k, p);
  if (upper < IN_TOGGLE) return UPPER_BINDS;
  if (trackRod !== undefined && trackRod < IN_TOGGLE) return TRACK_ROD_BINDS;
  return rod !== undefined && rod < ROD_IN_TOGGLE ? ROD_BINDS : PLACED;
}

interface Sample {
  readonly angle: number;
  /** What may not fall to zero: the closures' roots and dz/dθ; undefined where one has, or a link does not reach. */
  readonly margins: readonly number[] | undefined;
  readonly status: Status;
}

function sampleAt(k: Constants, p: Pose, angle: number): Sample {
  p.t = Math.tan(angle / 2);
  let status = placeUpright(k, p);
  if (status === PLACED) status = placeRocker(k, p);
  if (status === PLACED) status = inLine(k, p);
  if (status !== PLACED) return { angle, margins: undefined, status };
  const rise = slope(k, p);
  const margins = rise > 0 ? [Math.abs(p.rootU), Math.abs(p.rootT), Math.abs(p.rootR), rise] : undefined;
  return { angle, margins, status };
}

/** The end between an angle that is good and one that is not. */
function bisect(k: Constants, p: Pose, good: number, bad: Sample): { readonly t: number; readonly bad: Sample } {
  let inside = good;
  let outside = bad;
  for (let i = 0; i < HALVINGS; i++) {
    const angle = 0.5 * (inside + outside.angle);
    if (angle === inside || angle === outside.angle) break;
    const middle = sampleAt(k, p, angle);
    if (middle.margins === undefined) outside = middle;
    else inside = middle.angle;
  }
  return { t: Math.tan(inside / 2), bad: outside };
}

/** Looks for an end inside a dip of one margin between two good angles. */
function endInDip(k: Constants, p: Pose, margin: number, from: number, to: number): Sample | undefined {
  let [a, b] = [from, to];
  for (let i = 0; i < SHRINKS; i++) {
    const left = sampleAt(k, p, b - GOLDEN * (b - a));
    const right = sampleAt(k, p, a + GOLDEN * (b - a));
    const l = left.margins?.[margin];
    const r = right.margins?.[margin];
    if (l === undefined) return left;
    if (r === undefined) return right;
    if (l < r) b = right.angle;
    else a = left.angle;
  }
  return undefined;
}

/** A margin that falls and rises again over three samples may have touched zero in between. */
function dipBetween(k: Constants, p: Pose, samples: readonly Sample[]): { good: number; bad: Sample } | undefined {
  const [first, second, third] = samples.slice(-3);
  if (first?.margins === undefined || second?.margins === undefined || third?.margins === undefined) return undefined;
  for (let m = 0; m < second.margins.length; m++) {
    const [a, b, c] = [first.margins[m] ?? 0, second.margins[m] ?? 0, third.margins[m] ?? 0];
    const isDip = b <= a && b < c;
    if (!isDip) continue;
    const bad = endInDip(k, p, m, first.angle, third.angle);
    if (bad !== undefined) return { good: first.angle, bad };
  }
  return undefined;
}

/** The link that does not reach. */
export function linkOf(status: Status, rod: BindingLink): BindingLink {
  if (status === ROD_BINDS) return rod;
  return status === TRACK_ROD_BINDS ? "track-rod" : "upper-wishbone";
}

/** Which link ends the branch: the one that does not reach, or at a crest of travel the wishbone nearer to its toggle. */
function culprit(k: Constants, p: Pose, bad: Sample, rod: BindingLink): BindingLink {
  if (bad.status !== PLACED) return linkOf(bad.status, rod);
  const { lower, upper } = transmissions(k, p);
  return upper < lower ? "upper-wishbone" : "lower-wishbone";
}

function limitTowards(k: Constants, sense: 1 | -1, rod: BindingLink): TravelLimit {
  const p = new Pose();
  const samples: Sample[] = [];
  let end: { good: number; bad: Sample } | undefined;
  for (let i = -1; i <= LAST && end === undefined; i++) {
    const sample = sampleAt(k, p, sense * i * STEP);
    if (i > 0 && sample.margins === undefined) end = { good: sense * (i - 1) * STEP, bad: sample };
    else {
      samples.push(sample);
      if (i > 0) end = dipBetween(k, p, samples);
    }
  }
  const last = sense * LAST * STEP;
  const found = end === undefined ? undefined : bisect(k, p, end.good, end.bad);
  const t = found?.t ?? Math.tan(last / 2);
  p.t = t;
  placeUpright(k, p);
  placeRocker(k, p);
  return { t, travel: p.wz - k.wheelZ, link: found === undefined ? "lower-wishbone" : culprit(k, p, found.bad, rod) };
}

/** The furthest travels down and up. `k` needs no bracket yet; at design all links have to reach and dz/dθ be positive. */
export const travelLimits = (k: Constants, rod: BindingLink): TravelLimits => ({
  low: limitTowards(k, -1, rod),
  high: limitTowards(k, 1, rod),
});
