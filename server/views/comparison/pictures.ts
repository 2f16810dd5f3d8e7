/** The axles of which something differs, as they were and as they are: what a drawing lays over each other. */
import type { CarModel } from "../../model/car.js";
import type { AxleName } from "../../model/origin.js";
import { axleDrawing } from "../drawings/axle.js";
import { type AxleShape, axleShape } from "../drawings/axle-shape.js";
import type { Change } from "./change.js";

export interface AxlePicture {
  readonly axle: AxleName;
  readonly now: AxleShape;
  /** Undefined where nothing has moved. */
  readonly before: AxleShape | undefined;
  /** Paths of the elements of which something differs. */
  readonly marked: readonly string[];
}

export function axlePictures(old: CarModel, now: CarModel, changes: readonly Change[]): readonly AxlePicture[] {
  return (["front", "rear"] as const).flatMap((name) => {
    const own = changes.filter(({ group, of }) => group.axle === name && of !== "note");
    const [before, axle] = [old.axles[name], now.axles[name]];
    if (own.length === 0 || axle === undefined) return [];
    const [was, is] = [before && axleShape(before), axleShape(axle)];
    const marked = axle.elements
      .map(({ path }) => path)
      .filter((path) => own.some((change) => isWithin(change, path, name)));
    return [{ axle: name, now: is, before: was === undefined || hasSamePlaces(was, is) ? undefined : was, marked }];
  });
}

/** A path without a side speaks of both. */
function isWithin({ path, also }: Change, element: string, axle: AxleName): boolean {
  const bare = element.replace(/\.(left|right)\./, ".");
  return [path, ...also].some((one) => [element, bare].some((own) => `${one}.`.startsWith(`${own}.`)) && one !== axle);
}

/** Points of one axle and another: whether they would be drawn over each other. */
const hasSamePlaces = (a: AxleShape, b: AxleShape): boolean => JSON.stringify(places(a)) === JSON.stringify(places(b));

/** Without ways of writing a nought, and closer than anybody draws. */
const places = ({ links, rockers, wheels, elements }: AxleShape) =>
  [
    ...links.flatMap(({ from, to }) => [from, to]),
    ...rockers.flat(),
    ...wheels.flatMap(({ centre, radius, camber }) => [centre, [radius, camber]]),
    ...elements.flatMap(({ from, to }) => (to === undefined ? [from] : [from, to])),
  ].map((point) => point.map((value) => Math.round(value * 1e7)));

/** As SVG: what moved is dashed where it was, and what differs has its tag filled. */
export function pictureSvg({ now, before, marked }: AxlePicture): string | undefined {
  const views = before === undefined ? (["behind"] as const) : (["behind", "left"] as const);
  return axleDrawing(now, { views, width: 560, before, marked: new Set(marked) });
}
