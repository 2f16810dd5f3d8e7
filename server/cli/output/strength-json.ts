/** Stresses, a coil's lengths and what is left of a stroke for a machine: part of `schema/rates.json`. */
import type { ElementFigures, StrokeFigures } from "../../analyses/results.js";
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
