/** The axles of a sheet as pictures, with what changed marked. */
import type { CheckedCar } from "../../findings/context.js";
import { axleDrawing } from "../drawings/axle.js";
import { axleShape } from "../drawings/axle-shape.js";
import type { AxlePicture } from "./html.js";
import { isChanged, type SetupSheet } from "./item.js";

export const picturesOf =
  ({ model }: CheckedCar, { axles }: SetupSheet): AxlePicture =>
  (name) => {
    const axle = model.axles[name];
    const elements = axles.find((one) => one.name === name)?.elements ?? [];
    const changed = elements
      .filter(({ part, settings }) => [...(part === undefined ? [] : [part]), ...settings].some(isChanged))
      .flatMap(({ path }) => [path, ...["left", "right"].map((side) => path.replace(`${name}.`, `${name}.${side}.`))]);
    return axle && axleDrawing(axleShape(axle), { marked: new Set(changed) });
  };
