/** Small plots in hovers: the curves of an element, and a table with its points, as images that stand in the text. */
import type { FileView } from "../snapshot/workspace.js";
import { leadingCurves } from "./curve-sheet.js";
import { plotOf } from "./curve-plot.js";
import { drawPlot, type Plot, svgOf } from "./drawings/plot.js";
import { dataAddress } from "./drawings/svg.js";
import { areAlike, pathOfPair } from "./like-sides.js";
import type { Place } from "./place.js";
import type { ElementSubject } from "./subject.js";
import { tablePlot } from "./table-plot.js";
import { unitsOfCar } from "./units-of-car.js";

/** A bracket or a backslash in the words would end them early. */
const alternative = (text: string): string => text.replace(/[[\]\\`]/g, "").replaceAll("\n", " ");

function image(plot: Plot): string {
  const svg = svgOf([drawPlot(plot)], plot.description);
  return `![${alternative(plot.description)}](${dataAddress(svg)})`;
}

/** Of one element, or of the left and the right one: one of them speaks for both where they are alike. */
export function elementPlots(elements: readonly ElementSubject[]): readonly string[] {
  const [first] = elements;
  if (first !== undefined && areAlike(elements)) return plotsOfOne(first, `${pathOfPair(first)}, both sides`);
  return elements.flatMap((element) => plotsOfOne(element, element.model.path));
}

/** Its law, and what it gives at the wheels in its first mode; drawn once while the axle's figures are the same. */
function plotsOfOne(element: ElementSubject, title: string): readonly string[] {
  const { car, axle } = element;
  const figures = axle && car.analysis.axles[axle.name];
  const draw = (): readonly string[] => {
    const images = leadingCurves(element).map((curve) => image(plotOf(title, curve)));
    return images.length === 0 ? [] : [images.join("\n")];
  };
  return figures === undefined ? draw() : car.keptWith(figures, `${title} in ${unitsOfCar(car.model)("length")}`, draw);
}

/** The table that is written or read at a place. */
export function tablePlots(file: FileView, place: Place): readonly string[] {
  const plot = tablePlot(file, place);
  return plot === undefined ? [] : [image(plot)];
}
