/** Curves of an element as one SVG image, below each other. */
import type { CarModel } from "../../model/car.js";
import { sheetSvg } from "../../views/curve-plot.js";
import type { CurveSheet } from "../../views/curve-sheet.js";

export const curvesSvg = (model: CarModel, sheet: CurveSheet): string =>
  `${sheetSvg(`${model.setup ?? model.name}, ${sheet.path}`, sheet)}\n`;
