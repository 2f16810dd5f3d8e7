/** Small plots in hovers: the curves of an element, and a table with its points, as images that stand in the text. */
import type { FileView } from "../snapshot/workspace.js";
import { curveSheet, type SheetCurve } from "./curve-sheet.js";
import { plotOf } from "./curve-plot.js";
import { drawPlot, type Plot, svgOf } from "./drawings/plot.js";
import { dataAddress } from "./drawings/svg.js";
import type { Place } from "./place.js";
import type { ElementSubject } from "./subject.js";
import { tablePlot } from "./table-plot.js";

/** A bracket or a backslash in the words would end them early. */
const alternative = (text: string): string => text.replace(/[[\]\\`]/g, "").replaceAll("\n", " ");

function image(plot: Plot): string {
  const svg = svgOf([drawPlot(plot)], plot.description);
  return `![${alternative(plot.description)}](${dataAddress(svg)})`;
}

const isThere = ({ reason, points }: SheetCurve): boolean => reason === undefined && points.length > 1;

/** Its law, and what it gives at the wheels in its first mode. */
export function elementPlots(element: ElementSubject): readonly string[] {
  const sheet = curveSheet(element);
  if (sheet === undefined) return [];
  const law = sheet.curves.find((curve) => curve.kind === "law" && isThere(curve));
  const wheels = sheet.curves.find((curve) => curve.kind === "at-wheels" && isThere(curve));
  const images = [law, wheels].flatMap((curve) => (curve === undefined ? [] : [image(plotOf(sheet.path, curve))]));
  return images.length === 0 ? [] : [images.join("\n")];
}

/** The table that is written or read at a place. */
export function tablePlots(file: FileView, place: Place): readonly string[] {
  const plot = tablePlot(file, place);
  return plot === undefined ? [] : [image(plot)];
}
