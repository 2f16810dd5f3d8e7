/** The dotted paths of computed figures that `expect` can read, filled with the axles and elements of the car. */
import { figures, type FigureWord } from "../../../grammar/vocabulary/index.js";
import type { CheckedCar } from "../../findings/context.js";
import type { ElementModel } from "../../model/car.js";

export interface FigurePathHelp {
  readonly path: string;
  readonly help: string;
}

export function figurePaths(car: CheckedCar | undefined): readonly FigurePathHelp[] {
  return figures.flatMap((figure) => pathsOf(figure, car).map((path) => ({ path, help: figure.help })));
}

function pathsOf(figure: FigureWord, car: CheckedCar | undefined): readonly string[] {
  switch (figure.scope) {
    case "car":
      return [figure.figure];
    case "axle":
      return axlesOf(car).map((axle) => `${axle}.${figure.figure}`);
    case "wheel":
      return axlesOf(car).flatMap((axle) => ["", "left.", "right."].map((side) => `${axle}.${side}${figure.figure}`));
    case "point":
      return pointsOf(car).map((name) => `${name}.${figure.figure}`);
    case "element":
      return elementsOf(car).flatMap((element) =>
        endingsFor(figure, element).map((ending) => `${plainPath(element)}.${ending}`),
      );
  }
}

function axlesOf(car: CheckedCar | undefined): readonly ("front" | "rear")[] {
  return (["front", "rear"] as const).filter((axle) => car === undefined || car.model.axles[axle] !== undefined);
}

const pointsOf = (car: CheckedCar | undefined): readonly string[] =>
  (car?.model.block.statements ?? []).flatMap(({ word, name }) =>
    word === "clearance-point" && name !== undefined ? [name.text] : [],
  );

function elementsOf(car: CheckedCar | undefined): readonly ElementModel[] {
  if (car === undefined) return [];
  const { axles, elements } = car.model;
  const all = [...(axles.front?.elements ?? []), ...(axles.rear?.elements ?? []), ...elements];
  // A corner element stands there once a side; its plain path speaks of both.
  return all.filter((element) => element.side !== "right");
}

const plainPath = (element: ElementModel): string => element.path.replace(".left.", ".");

/** A leak is asked of the modes that the element is not for; a sensitivity of every mode. */
function endingsFor(figure: FigureWord, element: ElementModel): readonly string[] {
  if (figure.modes === undefined) return [figure.figure];
  const corner = element.for.includes("corner");
  const scope = element.axle === undefined ? ["heave", "roll", "pitch", "warp"] : ["heave", "roll"];
  const leaks = corner ? ["other-wheel"] : scope.filter((mode) => !(element.for as readonly string[]).includes(mode));
  const modes = figure.figure.endsWith("-leak") ? leaks : ["heave", "roll", "pitch", "warp"];
  return modes.filter((mode) => figure.modes?.includes(mode)).map((mode) => figure.figure.replace("<mode>", mode));
}
