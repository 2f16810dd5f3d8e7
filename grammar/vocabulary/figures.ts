/**
 * The computed figures that `expect` can read, each with the shape of its path. Figures are
 * read, never set; override paths name properties.
 *
 * Invariant: one path means one figure. An element may not be named like a figure of its axle.
 */
import { axleModes, carModes } from "./modes.js";
import type { DimensionName } from "./word.js";

/** What the path says before the figure's own name. */
type FigureScope =
  | "car" // roll-stiffness-front
  | "axle" // front.heave-rate
  | "wheel" // front.left.wheel-load; without the side: the mean of both
  | "point" // nose.clearance
  | "element"; // front.roll-damper.rate, front.left.side.rate, or pitch-line.rate at car level

export interface FigureWord {
  readonly figure: string;
  readonly scope: FigureScope;
  /** Telescopic first where a torsional element has another. */
  readonly dimensions: readonly DimensionName[];
  /** True where it exists only under a load case. */
  readonly needsCase: boolean;
  /** With `<mode>` in the name: the modes that may stand there. */
  readonly modes?: readonly string[];
  readonly help: string;
}

export interface FigurePath {
  readonly figure: FigureWord;
  readonly axle: "front" | "rear" | undefined;
  readonly side: "left" | "right" | undefined;
  readonly element: string | undefined;
  readonly mode: string | undefined;
}

const entry = (
  figure: string,
  scope: FigureScope,
  dimensions: DimensionName | readonly DimensionName[],
  help: string,
  needsCase = false,
): FigureWord => ({
  figure,
  scope,
  dimensions: typeof dimensions === "string" ? [dimensions] : dimensions,
  needsCase,
  ...(figure.includes("<mode>") ? { modes: [...new Set<string>([...axleModes, ...carModes, "other-wheel"])] } : {}),
  help,
});

export const figures: readonly FigureWord[] = [
  entry("heave-rate", "axle", "rate", "Stiffness of the axle in heave, both wheels together, tyres left out."),
  entry("roll-stiffness", "axle", "torsional-rate", "Stiffness of the axle in roll, tyres left out."),
  entry("wheel-rate", "axle", "rate", "Stiffness at one wheel with the other one held, tyre left out."),
  entry("heave-ride-rate", "axle", "rate", "Heave rate with the tyres in series."),
  entry("roll-ride-stiffness", "axle", "torsional-rate", "Roll stiffness with the tyres in series."),
  entry("wheel-ride-rate", "axle", "rate", "Single-wheel rate with the tyres in series."),
  entry("heave-frequency", "axle", "frequency", "Undamped heave frequency of the axle's sprung mass on its ride rate."),
  entry("heave-damping", "axle", "damping", "Damping of the axle in heave at low speed, both wheels together."),
  entry("roll-damping", "axle", "torsional-damping", "Damping of the axle in roll at low speed."),
  entry("ride-height", "axle", "length", "Height of the plane z = 0 above the ground at the axle line."),
  entry("contact", "axle", "share", "RMS change of the tyre loads on the written road, over their static load."),
  entry("platform", "axle", "length", "RMS change of the ride height on the written road."),
  entry(
    "corner-frequency",
    "wheel",
    "frequency",
    "Undamped frequency of the body's share over a wheel that stands still.",
  ),
  entry("corner-damping-ratio", "wheel", "number", "Damping over critical of that motion, dampers at low speed."),
  entry("wheel-hop-frequency", "wheel", "frequency", "Undamped frequency of a wheel on its tyre, with the body still."),
  entry("wheel-hop-damping-ratio", "wheel", "number", "Damping over critical of that motion, dampers at low speed."),
  entry("wheel-load", "wheel", "force", "Vertical load between tyre and ground."),
  entry("wheel-travel", "wheel", "length", "Wheel travel from design ride height, bump positive."),
  entry("camber", "wheel", "angle", "Camber against the body, positive with the top outboard."),
  entry("toe", "wheel", "angle", "Toe-in of the wheel."),
  entry(
    "motion-ratio",
    "element",
    ["number", "angle-per-length"],
    "Deflection per travel of its own wheel; corner elements only.",
  ),
  entry(
    "<mode>-sensitivity",
    "element",
    ["number", "angle-per-length"],
    "Deflection per unit of wheel travel in the mode, at static trim.",
  ),
  entry("<mode>-leak", "element", "share", "First-order leak into a mode that the element is not for."),
  entry(
    "<mode>-finite-leak",
    "element",
    "share",
    "Leak into the mode over the whole travel, straight-line part and bend together.",
  ),
  entry(
    "<mode>-rate-leak",
    "element",
    "share",
    "Share of the mode's stiffness or damping that the element adds or takes away unclaimed.",
  ),
  entry(
    "rate",
    "element",
    ["rate", "torsional-rate", "damping", "torsional-damping"],
    "The element's own rate at static trim; of a damper, its low-speed damping.",
  ),
  entry("load", "element", ["force", "moment"], "Force or moment that the element carries."),
  entry("pressure", "element", "pressure", "Pressure of the gas or oil in the element, as a gauge reads it."),
  entry("deflection", "element", ["length", "angle"], "Deflection from design position, compression positive."),
  entry("clearance", "point", "length", "Height of a clearance-point above the road.", true),
  entry("heave-frequency", "car", "frequency", "Undamped frequency of the body in heave alone, wheels still."),
  entry("heave-damping-ratio", "car", "number", "Damping over critical in heave alone, dampers at low speed."),
  entry("roll-frequency", "car", "frequency", "Undamped frequency of the body in roll alone, wheels still."),
  entry("roll-damping-ratio", "car", "number", "Damping over critical in roll alone, dampers at low speed."),
  entry("pitch-frequency", "car", "frequency", "Undamped frequency of the body in pitch alone, wheels still."),
  entry("pitch-damping-ratio", "car", "number", "Damping over critical in pitch alone, dampers at low speed."),
  entry("roll-stiffness-front", "car", "share", "Front axle's share of the roll stiffness."),
  entry(
    "cross-weight",
    "car",
    "share",
    "Share of the weight on the front right and the rear left wheel together, at rest.",
  ),
  entry("load-transfer-front", "car", "share", "Front axle's share of the lateral load transfer.", true),
  entry("downforce-front", "car", "share", "Front axle's share of the downforce.", true),
  entry("roll-angle", "car", "angle", "Roll of the body; positive lifts the left side.", true),
  entry("roll-gradient", "car", "angle-per-acceleration", "Roll angle per lateral acceleration.", true),
  entry("pitch-angle", "car", "angle", "Pitch of the body; positive is nose down.", true),
];

interface Ending {
  readonly figure: FigureWord;
  readonly mode: string | undefined;
}

const endings = new Map<string, Ending[]>();
for (const figure of figures) {
  for (const mode of figure.modes ?? [undefined]) {
    const name = mode === undefined ? figure.figure : figure.figure.replace("<mode>", mode);
    endings.set(name, [...(endings.get(name) ?? []), { figure, mode }]);
  }
}

/** Every last segment that a figure's path can have. */
export const figureNames: readonly string[] = [...endings.keys()];

/** What a dotted path after `expect` reads; undefined where no figure has that shape. Whether the element exists is not asked. */
export function figureAt(path: string | readonly string[]): FigurePath | undefined {
  const segments = typeof path === "string" ? path.split(".") : path;
  const name = segments.at(-1);
  const rest = segments.slice(0, -1);
  const axle = rest[0] === "front" || rest[0] === "rear" ? rest[0] : undefined;
  if (axle !== undefined) rest.shift();
  const side = rest[0] === "left" || rest[0] === "right" ? rest[0] : undefined;
  if (side !== undefined) rest.shift();
  const element = rest.shift();
  if (name === undefined || rest.length > 0 || (side !== undefined && axle === undefined)) return undefined;
  const scopes = scopesOf(axle, side, element);
  const found = endings.get(name)?.find(({ figure }) => scopes.includes(figure.scope));
  return found === undefined ? undefined : { ...found, axle, side, element };
}

function scopesOf(axle: unknown, side: unknown, element: unknown): readonly FigureScope[] {
  if (element !== undefined) return axle === undefined ? ["element", "point"] : ["element"];
  if (axle === undefined) return ["car"];
  return side === undefined ? ["axle", "wheel"] : ["wheel"];
}
