/** What has to fit into the drawing: every place over the whole travel, so that it stands still while the mechanism moves. */
import type { PanelAxle, PanelCar } from "../../../server/lsp/protocol-panel.js";
import type { Point3 } from "./geometry.js";
import { AT_REST } from "./pose.js";
import { endPoint, type PosedAxle, type PosedCorner, posedCar, SIDES } from "./scene.js";
import { pointAt, vectorAt, wayOf } from "./tables.js";
import { teeShape } from "./tee-shape.js";
import { wheelCorners } from "./wheel-shape.js";

const AT_ROCKERS: ReadonlySet<string> = new Set(["eye", "pivot", "end"]);

/** @param near only rockers, levers and what lies between them; all where there are none */
export function placesToFit(car: PanelCar, axles: readonly PanelAxle[], near: boolean): readonly Point3[] {
  const posed = posedCar(car, axles, AT_REST, axles[0]?.name ?? "front");
  const ofCorners = posed.flatMap((axle) => SIDES.flatMap((side) => cornerPlaces(axle[side], near)));
  const all = [...ofCorners, ...posed.flatMap((axle) => elementPlaces(axle, posed))];
  return near && all.length === 0 ? placesToFit(car, axles, false) : all;
}

function elementPlaces({ data }: PosedAxle, axles: readonly PosedAxle[]): readonly Point3[] {
  return data.elements
    .flatMap(({ drawn }) => drawn)
    .flatMap((drawn) => {
      switch (drawn.kind) {
        case "between":
          return [endPoint(drawn.from, axles), endPoint(drawn.to, axles)].filter((place) => place !== undefined);
        case "tee": {
          const shape = teeShape(drawn, axles);
          return shape === undefined ? [] : [shape.foot, ...shape.arm];
        }
        case "about":
          return [];
      }
    });
}

function cornerPlaces({ data, weights }: PosedCorner, near: boolean): readonly Point3[] {
  const points = near ? data.points.filter(({ role }) => AT_ROCKERS.has(role)) : data.points;
  const places = points.flatMap((point) => {
    const place = pointAt(point, weights);
    return [...wayOf(point, data, 0), ...(place === undefined ? [] : [place])];
  });
  const centre = data.wheel && vectorAt(data.wheel.centre, weights);
  const spin = data.wheel && vectorAt(data.wheel.spin, weights);
  if (near || data.wheel === undefined || centre === undefined || spin === undefined) return places;
  return [...places, ...wheelCorners(centre, spin, data.wheel.radius)];
}
