/** What the axes of an element's curves are, in which units of the author, and how what happens on them is called. */
import type { LawCurve, MarkKind, ModeCurves } from "../analyses/curve-data.js";
import type { ElementCurves } from "../analyses/curve-data.js";
import type { PlotAxis } from "./drawings/plot.js";
import type { ShowUnit } from "./units-of-car.js";

type Whole = Pick<ElementCurves, "torsional" | "measure">;

export const MARK_WORDS: Readonly<Record<MarkKind, string>> = {
  static: "at rest",
  carries: "begins to carry",
  "no-load": "no load",
  stage: "stage used up",
  knee: "knee",
  "table-end": "table ends",
  bind: "coil bound",
  "stroke-end": "stroke ends",
  stress: "stress limit",
  "gas-end": "gas used up",
  "travel-end": "travel ends",
  "link-binds": "link binds",
};

/** Of an element's own motion: by what it is moved. */
function own({ torsional, measure }: Whole): "volume" | "torsional" | "telescopic" {
  return measure ?? (torsional ? "torsional" : "telescopic");
}

export function deflectionAxis(whole: Whole, unit: ShowUnit): PlotAxis {
  switch (own(whole)) {
    case "volume":
      return { name: "oil pushed out", unit: unit("volume") };
    case "torsional":
      return { name: "twist", unit: unit("angle") };
    case "telescopic":
      return { name: "compression", unit: unit("length") };
  }
}

function speedAxis(whole: Whole, unit: ShowUnit): PlotAxis {
  const name = "speed, bump positive";
  switch (own(whole)) {
    case "volume":
      return { name: "flow, out positive", unit: `${unit("volume")}/s` };
    case "torsional":
      return { name, unit: unit("angular-speed") };
    case "telescopic":
      return { name, unit: unit("damper-speed") };
  }
}

export function forceAxis(whole: Whole, unit: ShowUnit): PlotAxis {
  switch (own(whole)) {
    case "volume":
      return { name: "pressure", unit: unit("pressure") };
    case "torsional":
      return { name: "moment", unit: unit("moment") };
    case "telescopic":
      return { name: "force", unit: unit("force") };
  }
}

export const againstAxis = ({ against }: LawCurve, whole: Whole, unit: ShowUnit): PlotAxis =>
  against === "speed" ? speedAxis(whole, unit) : deflectionAxis(whole, unit);

export function travelAxis({ mode }: ModeCurves, unit: ShowUnit): PlotAxis {
  return { name: mode === "corner" ? "wheel travel" : `wheel travel in ${mode}`, unit: unit("length") };
}

export function motionAxis(whole: Whole, unit: ShowUnit): PlotAxis {
  switch (own(whole)) {
    case "volume":
      return { name: "oil per wheel travel", unit: unit("piston-area") };
    case "torsional":
      return { name: "twist per wheel travel", unit: unit("angle-per-length") };
    case "telescopic":
      return { name: "compression per wheel travel", unit: "" };
  }
}

const GIVEN = {
  rate: ["rate", "torsional-rate"],
  damping: ["damping", "torsional-damping"],
  mass: ["mass", "inertia"],
} as const;

/** `whose`: at the wheel, at the axle or at the car. */
export function atWheelsAxis({ gives, turns, mode }: ModeCurves, unit: ShowUnit, whose: "axle" | "car"): PlotAxis {
  const what = { rate: "rate", damping: "damping at low speed", mass: "inertance" }[gives];
  const place = mode === "corner" ? "wheel" : whose;
  return { name: `${what} at the ${place}`, unit: unit(GIVEN[gives][turns ? 1 : 0]) };
}
