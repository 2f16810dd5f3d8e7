/** What is set and measured at the four wheels on the flat patch: loads, ride heights, camber, toe, tyre pressures. */
import { GRAVITY } from "../../analyses/loads.js";
import type { CheckedCar } from "../../findings/context.js";
import { propertyAt } from "../../model/property-at.js";
import type { AxleName, Given, Side } from "../../model/origin.js";
import { showQuantity } from "../../quantities/index.js";
import { AS_DRAWN, angleWords } from "../alignment-card.js";
import { isAbsent, showFigure } from "../figures.js";
import { unitsOfCar } from "../units-of-car.js";
import { weightsOf } from "../weights-page.js";
import type { PatchLine, SheetItem } from "./item.js";

export const WHEELS = [
  ["front", "left"],
  ["front", "right"],
  ["rear", "left"],
  ["rear", "right"],
] as const satisfies readonly (readonly [AxleName, Side])[];

export function patchOf(car: CheckedCar): readonly PatchLine[] {
  const lines = [weights(car), rideHeights(car), angles(car, "camber"), angles(car, "toe"), pressures(car)];
  return lines.filter(({ wheels }) => wheels.some((item) => item !== undefined));
}

type Wheel = (typeof WHEELS)[number];

function lineOf(name: string, item: (wheel: Wheel, index: number) => SheetItem | undefined): PatchLine {
  return { name, isMeasured: true, wheels: WHEELS.map(item) };
}

function weights(car: CheckedCar): PatchLine {
  const { loads } = weightsOf(car);
  const unit = unitsOfCar(car.model)("mass");
  return lineOf("corner weight", ([axle, side], index) => {
    const load = isAbsent(loads) ? undefined : loads[index];
    if (load === undefined) return undefined;
    return {
      key: `corner-weight.${axle}.${side}`,
      name: "corner weight",
      value: showFigure(load / GRAVITY, unit, 4),
    };
  });
}

function rideHeights({ model, analysis }: CheckedCar): PatchLine {
  const unit = unitsOfCar(model)("length");
  return lineOf("ride height", ([axle, side]) => {
    const height = analysis.axles[axle]?.atRest.rideHeight;
    if (height === undefined || isAbsent(height)) return undefined;
    const given = model.axles[axle]?.rideHeight;
    const value = showFigure(height, given?.unit ?? unit, 4);
    return { key: `${axle}.${side}.ride-height`, name: "ride height", value };
  });
}

function angles(car: CheckedCar, angle: "camber" | "toe"): PatchLine {
  return lineOf(angle, ([axle, side]) => {
    const given = car.model.axles[axle]?.wheel[side][angle];
    if (given === undefined) return undefined;
    const how = angleWords(car, { axle, side, angle, given })
      .filter((words) => words !== AS_DRAWN)
      .join(", ");
    return { key: `${axle}.${side}.${angle}`, name: angle, value: shown(given), ...(how === "" ? {} : { how }) };
  });
}

function pressures({ model }: CheckedCar): PatchLine {
  return lineOf("tyre pressure", ([axle, side]) => {
    const key = `${axle}.${side}.wheel.pressure`;
    const pressure = propertyAt(model, key);
    return pressure?.kind === "number" ? { key, name: "tyre pressure", value: shown(pressure.given) } : undefined;
  });
}

const shown = ({ value, unit }: Given): string => showQuantity(value, unit, 4);
