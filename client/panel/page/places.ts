/** Which element or eye a place in the text belongs to: the smallest range around it. */
import type { PanelCar, PanelPlace } from "../../../server/lsp/protocol-panel.js";
import type { Cursor } from "../messages.js";
import { SIDES } from "./scene.js";

export function isWithin({ uri, range }: PanelPlace, { uri: at, line, character }: Cursor): boolean {
  if (uri !== at) return false;
  const { start, end } = range;
  const after = line > start.line || (line === start.line && character >= start.character);
  return after && (line < end.line || (line === end.line && character <= end.character));
}

const size = ({ range }: PanelPlace): number =>
  (range.end.line - range.start.line) * 10_000 + range.end.character - range.start.character;

/** Path of an element, or `front.left.rocker.roll-low` of a point. */
export function pathAt(car: PanelCar, cursor: Cursor): string | undefined {
  const named = [
    ...car.elements,
    ...car.axles.flatMap((axle) => [
      ...axle.elements,
      ...SIDES.flatMap((side) => pointsOf(axle.name, side, axle[side].points)),
    ]),
  ];
  const around = named.flatMap(({ path, place }) =>
    place !== undefined && isWithin(place, cursor) ? [{ path, place }] : [],
  );
  return around.sort((a, b) => size(a.place) - size(b.place))[0]?.path;
}

interface Named {
  readonly path: string;
  readonly place: PanelPlace | undefined;
}

export const pointPath = (axle: string, side: string, id: string): string => `${axle}.${side}.${id}`;

const pointsOf = (
  axle: string,
  side: string,
  points: readonly { readonly id: string; readonly place: PanelPlace | undefined }[],
): readonly Named[] => points.map(({ id, place }) => ({ path: pointPath(axle, side, id), place }));
