/**
 * Moves an eye of a rocker for the mechanism panel: what would be written, and what the axle would then be. Nothing is changed by asking.
 *
 * The eye stays in the plane across the rocker's axis that it lies in; it is written to a tenth of a millimetre. An eye that a set-up
 * inherits is moved by a line of the set-up, so that the car that it comes from stays as it is.
 */
import { coordinatesText, isPlain } from "../findings/coupling/coordinates.js";
import { type PlacedRocker, placedRocker, sameText } from "../findings/coupling/placed-rocker.js";
import { isInside, valueEdit } from "../findings/setup-lines.js";
import { dot, mirror, sub, unit, type Vec3 } from "../maths/vec3.js";
import type { AxleModel, CarModel } from "../model/car.js";
import type { AxleName, Side } from "../model/origin.js";
import { fromSI, toSI } from "../quantities/index.js";
import type { PanelAxle, PanelRange } from "../views/mechanism/data.js";
import { panelAxleOf } from "../views/mechanism/mechanism.js";
import { carNamed, placesOf } from "../views/mechanism/of-file.js";
import type { FileView } from "./workspace.js";

export interface EyeMove {
  readonly name: string;
  readonly axle: AxleName;
  readonly side: Side;
  /** `rocker.roll-low` */
  readonly point: string;
  /** At design, car frame, m. */
  readonly to: Vec3;
}

export interface MovedEye {
  readonly edit: { readonly uri: string; readonly range: PanelRange; readonly newText: string } | undefined;
  readonly reason: string | undefined;
  readonly at: Vec3;
  readonly axle: PanelAxle | undefined;
}

const stays = (to: Vec3, reason: string): MovedEye => ({ edit: undefined, reason, at: to, axle: undefined });

export function moveEye(file: FileView, asked: EyeMove): MovedEye {
  const car = carNamed(file, asked.name);
  const axle = car?.model.axles[asked.axle];
  const rocker = axle && placedRocker(axle, asked.side);
  const eye = rocker?.eyes.get(asked.point.replace(/^rocker\./, ""));
  if (car === undefined || axle === undefined || rocker === undefined || eye === undefined)
    return stays(asked.to, "There is no such eye in the text any more.");
  const { given } = eye;
  const at = tenths(inPlane(asked.to, eye.point, rocker), given.unit);
  const text = coordinatesText(given.value.length === 2 ? at.slice(1) : at, given.unit);
  const own = isInside(given.origin, car.model.origin);
  if (text === undefined || (own && !isPlain(file.text.slice(given.origin.start, given.origin.end))))
    return stays(eye.point, "Its coordinates are a name or a sum, which is not overwritten.");
  const path = pathOf(axle, asked);
  const edit = valueEdit(file, car.model, { given, path, text });
  if (edit === undefined) return stays(eye.point, "There is no line that could be changed for it.");
  return {
    edit: inRange(file, edit),
    reason: undefined,
    at,
    axle: axleWith(file, car.model, asked, `${path} ${text}`),
  };
}

/** The side that the text means: without one where both sides are written at once. */
function pathOf(axle: AxleModel, { axle: name, side, point }: EyeMove): string {
  const eye = point.replace(/^rocker\./, "");
  const [left, right] = [placedRocker(axle, "left")?.eyes.get(eye), placedRocker(axle, "right")?.eyes.get(eye)];
  return sameText(left, right) ? `${name}.rocker.${eye}` : `${name}.${side}.rocker.${eye}`;
}

/** The axle of a set-up that says just that; undefined where it could not be built. */
function axleWith(file: FileView, model: CarModel, { axle }: EyeMove, line: string): PanelAxle | undefined {
  const { car } = file.vary(model.setup ?? model.name, [line]);
  return car && panelAxleOf(car, axle, placesOf(file));
}

/** Across the rocker's axis, through where the eye is. */
function inPlane(to: Vec3, from: Vec3, { axis }: PlacedRocker): Vec3 {
  const normal = unit(axis);
  const off = dot(sub(to, from), normal);
  return [to[0] - off * normal[0], to[1] - off * normal[1], to[2] - off * normal[2]];
}

/** Of the author's unit: 0.1 mm, or as fine a step in inches. */
function tenths(at: Vec3, unitText: string): Vec3 {
  const grain = unitText === "in" ? 500 : unitText === "mm" ? 10 : undefined;
  const rounded = (metres: number): number => {
    if (grain === undefined) return Math.round(metres * 1e4) / 1e4;
    return toSI(Math.round((fromSI(metres, unitText) ?? 0) * grain) / grain, unitText) ?? metres;
  };
  return [rounded(at[0]), rounded(at[1]), rounded(at[2])];
}

function inRange(
  file: FileView,
  {
    uri,
    span,
    newText,
  }: {
    readonly uri: string;
    readonly span: { readonly start: number; readonly end: number };
    readonly newText: string;
  },
): MovedEye["edit"] {
  const lines = file.parsedOf(uri)?.lines;
  return lines && { uri, range: { start: lines.position(span.start), end: lines.position(span.end) }, newText };
}

/** Whether a right-hand eye is written as the left one's mirror image: then the left one is what is moved. */
export function onWrittenSide(file: FileView, asked: EyeMove): EyeMove {
  const axle = carNamed(file, asked.name)?.model.axles[asked.axle];
  const eye = asked.point.replace(/^rocker\./, "");
  if (axle === undefined || asked.side === "left") return asked;
  const [left, right] = [placedRocker(axle, "left")?.eyes.get(eye), placedRocker(axle, "right")?.eyes.get(eye)];
  return sameText(left, right) ? { ...asked, side: "left", to: mirror(asked.to) } : asked;
}
