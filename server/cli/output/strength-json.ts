/** Stresses, lengths and strokes, stages, change-overs and inertance for a machine: part of `schema/rates.json`. */
import type { ChangeOver, ElementFigures, StrokeFigures } from "../../analyses/results.js";
import { isAbsent } from "../../views/figures.js";
import type { ShowUnit } from "../../views/units-of-car.js";
import { absence, quantity } from "./json.js";

/** @param own unit of the element's own deflection */
export function strengthJson(strength: NonNullable<ElementFigures["strength"]>, unit: ShowUnit, own: string): object {
  if (isAbsent(strength)) return absence(strength);
  const { stresses, coil, stroke } = strength;
  const [stress, length] = [unit("stress"), unit("length")];
  return {
    stresses: stresses.map(({ part, kind, atRest, most, allowable, stated }) => ({
      part,
      kind,
      atRest: quantity(atRest, stress),
      most: quantity(most, stress),
      allowable: quantity(allowable, stress),
      stated,
    })),
    ...(coil === undefined
      ? {}
      : {
          coil: {
            atRest: quantity(coil.atRest, length),
            solid: quantity(coil.solid, length),
            margin: quantity(coil.margin, length),
          },
        }),
    ...(stroke === undefined
      ? {}
      : { stroke: { bump: roomJson(stroke.bump, own), rebound: roomJson(stroke.rebound, own) } }),
  };
}

const roomJson = ({ atRest, least }: StrokeFigures["bump"], unit: string): object => ({
  atRest: quantity(atRest, unit),
  least: quantity(least, unit),
});

/** Where a law goes over into another stage: at which deflection of its own, and at which travel (null: beyond it). */
export function eventsJson(events: NonNullable<ElementFigures["events"]>, length: string, own: string): object {
  if (isAbsent(events)) return absence(events);
  return events.map(({ what, at, where }) => ({
    what,
    at: quantity(at, own),
    where: where === undefined ? null : { mode: where.mode, travel: quantity(where.travel, length) },
  }));
}

/** When the springs in a bar's drop links are used up. */
export const changeOverJson = ({ path, angle, body, lateral }: ChangeOver, unit: ShowUnit): object => ({
  path,
  roll: quantity(angle, unit("angle")),
  bodyRoll: quantity(body, unit("angle")),
  lateral: quantity(lateral, "g"),
});

export const inertanceJson = (
  { heave, roll, single }: NonNullable<ElementFigures["inertance"]>,
  unit: ShowUnit,
): object => ({
  heave: quantity(heave, unit("mass")),
  roll: quantity(roll, unit("inertia")),
  single: quantity(single, unit("mass")),
});
