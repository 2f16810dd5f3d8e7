/**
 * What of the mechanism is drawn where: the pieces of one stage, in the order that they are drawn in.
 *
 * In: axles in a pose and how they are looked at. Out: paths and places in px. No element of the page is touched here.
 */
import type { PanelDrawn, PanelElement, PanelLine, PanelTee } from "../../../server/lsp/protocol-panel.js";
import { type Point2, type Point3, rotated, sum, times } from "./geometry.js";
import { type Glyph, polyline } from "./glyphs.js";
import { planeAcross } from "./eye-plane.js";
import { pointPath } from "./places.js";
import type { Projection } from "./projection.js";
import { endPoint, type PosedAxle, type PosedCorner } from "./scene.js";
import { glyphOf, twistGlyph } from "./signs.js";
import { vectorAt, wayOf } from "./tables.js";
import { teeShape } from "./tee-shape.js";
import { type WheelShape, wheelShape } from "./wheel-shape.js";

export interface DrawnEye {
  readonly path: string;
  readonly corner: PosedCorner;
  readonly index: number;
  readonly at: Point2;
}

export interface DrawnElement {
  readonly element: PanelElement;
  readonly glyph: Glyph;
  readonly middle: Point2;
  readonly ends: readonly [Point2, Point2];
  /** Half as wide as it is drawn, px. */
  readonly half: number;
}

export interface DrawnLine {
  readonly role: PanelLine["role"];
  readonly d: string;
  readonly points: readonly Point2[];
}

export interface Drawn {
  readonly wheels: readonly (WheelShape & {
    readonly key: string;
    readonly depth: number;
    readonly foot: Point2;
    readonly name: string;
  })[];
  readonly lines: readonly DrawnLine[];
  readonly rockers: readonly { readonly d: string; readonly pivot: Point2; readonly axis: string }[];
  readonly fixed: readonly Point2[];
  readonly joints: readonly Point2[];
  readonly elements: readonly DrawnElement[];
  readonly eyes: readonly DrawnEye[];
  readonly road: readonly (readonly [Point2, Point2])[];
}

/** Elements between the same ends lie beside each other, this far apart, px. */
const APART = 13;
const AXIS_LENGTH = 0.05;
const BAR_LENGTH = 0.11;

export function draw(axles: readonly PosedAxle[], elements: readonly PanelElement[], projection: Projection): Drawn {
  const corners = axles.flatMap(({ left, right }) => [left, right]);
  const at = (p: Point3 | undefined): Point2 | undefined => (p === undefined ? undefined : projection.point(p));
  const places = corners.flatMap((corner) =>
    corner.data.points.flatMap(({ role }, index) => {
      const place = at(corner.points[index]);
      return place === undefined ? [] : [{ corner, index, role, place }];
    }),
  );
  const ofRole = (role: string): readonly Point2[] =>
    places.filter((one) => one.role === role).map(({ place }) => place);
  return {
    wheels: named(corners.flatMap((corner) => drawnWheel(corner, projection)).sort((a, b) => a.depth - b.depth)),
    lines: corners.flatMap((corner) => corner.data.lines.flatMap((line) => drawnLine(line, corner, at))),
    rockers: corners.flatMap((corner) => drawnRocker(corner, at)),
    fixed: ofRole("chassis"),
    joints: ofRole("joint"),
    elements: drawnElements(elements, axles, projection),
    eyes: places
      .filter(({ role }) => role === "eye")
      .map(({ corner, index, place }) => ({
        path: pointPath(corner.axle, corner.side, corner.data.points[index]?.id ?? ""),
        corner,
        index,
        at: place,
      })),
    road: axles.flatMap((axle) => roadUnder(axle, projection)),
  };
}

function drawnWheel(corner: PosedCorner, projection: Projection): Drawn["wheels"] {
  const { wheel } = corner.data;
  if (wheel === undefined) return [];
  const [centre, spin, contact] = [wheel.centre, wheel.spin, wheel.contact].map((table) =>
    vectorAt(table, corner.weights),
  );
  if (centre === undefined || spin === undefined || contact === undefined) return [];
  return [
    {
      ...wheelShape(centre, spin, wheel.radius, projection),
      key: `${corner.axle}-${corner.side}`,
      name: corner.side,
      depth: projection.depth(centre),
      foot: projection.point(contact),
    },
  ];
}

const NAME_APART = 44;

/** Of wheels that stand behind each other only the nearest is named. */
const named = (wheels: Drawn["wheels"]): Drawn["wheels"] =>
  wheels.map((wheel, i) => {
    const nearer = wheels
      .slice(i + 1)
      .some(({ foot }) => Math.hypot(foot[0] - wheel.foot[0], foot[1] - wheel.foot[1]) < NAME_APART);
    return nearer ? { ...wheel, name: "" } : wheel;
  });

function drawnLine(
  { role, points }: PanelLine,
  corner: PosedCorner,
  at: (p: Point3 | undefined) => Point2 | undefined,
): readonly DrawnLine[] {
  const places = points.map((index) => at(corner.points[index]));
  if (places.some((place) => place === undefined)) return [];
  const known = places as readonly Point2[];
  return [{ role, d: polyline(known, points.length > 2), points: known }];
}

function drawnRocker(corner: PosedCorner, at: (p: Point3 | undefined) => Point2 | undefined): Drawn["rockers"] {
  const { rocker } = corner.data;
  const pivot = rocker && corner.points[rocker.pivot];
  const place = at(pivot);
  if (rocker === undefined || pivot === undefined || place === undefined) return [];
  const ends = [1, -1].flatMap((k) => {
    const end = at(sum(pivot, times(k * AXIS_LENGTH, rocker.axis)));
    return end === undefined ? [] : [end];
  });
  const outline = rocker.outline.flatMap((index) => {
    const one = at(corner.points[index]);
    return one === undefined ? [] : [one];
  });
  return [{ d: polyline(outline, true), pivot: place, axis: polyline(ends) }];
}

/** The way of every eye and lever end over the whole travel. */
export const trailsOf = (axles: readonly PosedAxle[], projection: Projection, steer: number): readonly string[] =>
  axles.flatMap(({ left, right }) => [left, right].flatMap((corner) => eyeTrails(corner, projection, steer)));

function eyeTrails(corner: PosedCorner, { point }: Projection, steer: number): readonly string[] {
  return corner.data.points
    .filter(({ role }) => role === "eye" || role === "end")
    .map((eye) => polyline(wayOf(eye, corner.data, steer).map(point)))
    .filter((d) => d !== "");
}

function roadUnder({ left, right }: PosedAxle, { point }: Projection): Drawn["road"] {
  const ends = [left, right].map((corner) => corner.data.wheel && vectorAt(corner.data.wheel.contact, corner.weights));
  const [l, r] = ends;
  if (l === undefined || r === undefined) return [];
  const over: Point3 = [(l[0] - r[0]) * 0.22, (l[1] - r[1]) * 0.22, (l[2] - r[2]) * 0.22];
  return [[point(sum(l, over)), point([r[0] - over[0], r[1] - over[1], r[2] - over[2]])]];
}

function drawnElements(
  elements: readonly PanelElement[],
  axles: readonly PosedAxle[],
  projection: Projection,
): readonly DrawnElement[] {
  const shared = new Map<string, PanelDrawn[]>();
  for (const drawn of elements.flatMap((element) => element.drawn)) {
    const key = endsKey(drawn);
    if (key !== undefined) shared.set(key, [...(shared.get(key) ?? []), drawn]);
  }
  const size = Math.min(8, Math.max(4.2, projection.scale * 0.0065));
  const apart = (drawn: PanelDrawn): number => {
    const group = shared.get(endsKey(drawn) ?? "") ?? [drawn];
    return (group.indexOf(drawn) - (group.length - 1) / 2) * Math.max(APART, 2.2 * size);
  };
  return elements.flatMap((element) =>
    element.drawn.flatMap((drawn) =>
      drawn.kind === "about"
        ? aboutAxis(element, drawn, axles, projection, size)
        : drawn.kind === "tee"
          ? teeBar(element, drawn, axles, projection, size)
          : between(element, drawn, axles, projection, size, apart(drawn)),
    ),
  );
}

function between(
  element: PanelElement,
  drawn: Extract<PanelDrawn, { kind: "between" }>,
  axles: readonly PosedAxle[],
  projection: Projection,
  size: number,
  aside: number,
): readonly DrawnElement[] {
  const [from, to] = [endPoint(drawn.from, axles), endPoint(drawn.to, axles)];
  if (from === undefined || to === undefined) return [];
  const [a, b] = [projection.point(from), projection.point(to)];
  const shift = asideOf(a, b, aside);
  const ends: DrawnElement["ends"] = [
    [a[0] + shift[0], a[1] + shift[1]],
    [b[0] + shift[0], b[1] + shift[1]],
  ];
  const middle: Point2 = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2];
  return [{ element, glyph: glyphOf(element.kind, a, b, size, aside), middle, ends, half: size }];
}

/** Across the line, px. */
function asideOf([ax, ay]: Point2, [bx, by]: Point2, aside: number): Point2 {
  const length = Math.hypot(bx - ax, by - ay);
  const k = length > 0 ? aside / length : 0;
  return [-k * (by - ay), k * (bx - ax)];
}

function endsKey(drawn: PanelDrawn): string | undefined {
  if (drawn.kind !== "between") return undefined;
  return [drawn.from, drawn.to]
    .map(({ axle, side, point }) => `${axle} ${side} ${point}`)
    .sort()
    .join(" | ");
}

function teeBar(
  element: PanelElement,
  tee: PanelTee,
  axles: readonly PosedAxle[],
  { point }: Projection,
  size: number,
): readonly DrawnElement[] {
  const shape = teeShape(tee, axles);
  if (shape === undefined) return [];
  const { foot, head, arm, links } = shape;
  const [a, b] = [point(foot), point(head)];
  const stem = twistGlyph(a, b, size * 0.45);
  const line = [stem.line, ...[arm, ...links].map((ends) => polyline(ends.map(point)))].join("");
  return [{ element, glyph: { line }, middle: b, ends: [a, b], half: size }];
}

/** A torsion bar along its rocker's axis; its end wears a hand that turns with the rocker, so that the twist is seen end on too. */
function aboutAxis(
  element: PanelElement,
  { axle, side }: { readonly axle: string; readonly side: "left" | "right" },
  axles: readonly PosedAxle[],
  { point }: Projection,
  size: number,
): readonly DrawnElement[] {
  const corner = axles.find(({ data }) => data.name === axle)?.[side];
  const rocker = corner?.data.rocker;
  const pivot = rocker && corner?.points[rocker.pivot];
  if (corner === undefined || rocker === undefined || pivot === undefined) return [];
  const rearwards = rocker.axis[0] > 0 ? -1 : 1;
  const end = sum(pivot, times(rearwards * BAR_LENGTH, rocker.axis));
  const [a, b] = [point(pivot), point(end)];
  const hand = rotated(planeAcross(rocker.axis).v, rocker.axis, corner.rockerAngle);
  const glyph = twistGlyph(a, b, size * 0.45);
  const tip = point(sum(pivot, times(0.017, hand)));
  return [{ element, glyph: { line: `${glyph.line}${polyline([a, tip])}` }, middle: a, ends: [a, b], half: 10 }];
}
