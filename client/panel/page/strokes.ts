/**
 * How far an element is worked in a pose, and by which motion: what each motion does alone, and what is left because they
 * act together. The parts sum up to the whole by construction.
 */
import type { PanelCar, PanelElement } from "../../../server/lsp/protocol-panel.js";
import { distance } from "./geometry.js";
import { type AxleName, AT_REST, type Motion, only, type Pose, travelOf } from "./pose.js";
import { armsOf, endPoint, type PosedAxle } from "./scene.js";
import { gridWeights, numberAt, weightsOn } from "./tables.js";

export type PartOf = Exclude<Motion, "steer"> | "rest";

export interface Stroke {
  /** SI, from the place at rest; undefined where the links do not reach. */
  readonly whole: number | undefined;
  readonly parts: readonly { readonly of: PartOf; readonly by: number }[];
}

const PARTS: readonly Exclude<PartOf, "rest">[] = ["heave", "pitch", "roll", "single"];
/** Below this share of a hundredth of a millimetre nothing is drawn. */
const NOTHING = 1e-6;

/** Deflection from design at a pose. */
export function deflectionAt(
  element: PanelElement,
  car: PanelCar,
  axle: AxleName | undefined,
  pose: Pose,
  singleAxle: AxleName,
): number | undefined {
  const { deflection } = element;
  const data = car.axles.find(({ name }) => name === axle);
  if (deflection === undefined) return undefined;
  if (deflection.kind === "linear") return linearly(deflection, car, pose, singleAxle);
  if (data === undefined) return undefined;
  const arms = armsOf(car, data, singleAxle);
  const travel = (side: "left" | "right"): number => travelOf(pose, { axle: data.name, side }, arms);
  if (deflection.kind === "own") {
    const side = element.side ?? "left";
    return numberAt(deflection.values, weightsOn(data[side].travels, travel(side)));
  }
  const weights = gridWeights(data.left.travels, data.right.travels, travel("left"), travel("right"));
  return numberAt(deflection.values, weights);
}

type Linear = Extract<PanelElement["deflection"], { kind: "linear" }>;

/** The four wheels' travels as patterns of unit amplitude at every wheel. */
function linearly(by: Linear, car: PanelCar, pose: Pose, singleAxle: AxleName): number {
  const wheels = car.axles.flatMap((axle) => {
    const arms = armsOf(car, axle, singleAxle);
    return (["left", "right"] as const).map((side) => ({
      end: axle.name === "front" ? 1 : -1,
      hand: side === "left" ? -1 : 1,
      travel: travelOf(pose, { axle: axle.name, side }, arms),
    }));
  });
  const pattern = (sign: (wheel: (typeof wheels)[number]) => number): number =>
    wheels.reduce((all, wheel) => all + sign(wheel) * wheel.travel, 0) / Math.max(1, wheels.length);
  return (
    by.heave * pattern(() => 1) +
    by.pitch * pattern(({ end }) => end) +
    by.roll * pattern(({ hand }) => hand) +
    by.warp * pattern(({ end, hand }) => end * hand)
  );
}

export function strokeOf(
  element: PanelElement,
  car: PanelCar,
  axle: AxleName | undefined,
  pose: Pose,
  singleAxle: AxleName,
): Stroke {
  const at = (of: Pose): number | undefined => deflectionAt(element, car, axle, of, singleAxle);
  const rest = at(AT_REST);
  const now = at(pose);
  if (rest === undefined || now === undefined) return { whole: undefined, parts: [] };
  const parts = PARTS.flatMap((of) => {
    if (pose[of] === 0) return [];
    const alone = at(only(pose, of));
    return alone === undefined ? [] : [{ of, by: alone - rest }];
  });
  const left = now - rest - parts.reduce((all, { by }) => all + by, 0);
  const all: Stroke["parts"] = [...parts, { of: "rest", by: left }];
  return { whole: now - rest, parts: all.filter(({ by }) => Math.abs(by) > NOTHING) };
}

/** How far its ends have moved, mean of both, m: a cross element is carried along by its rockers without being worked. */
export function carriedOf(
  { drawn: [drawn] }: PanelElement,
  now: readonly PosedAxle[],
  rest: readonly PosedAxle[],
): number | undefined {
  if (drawn?.kind !== "between") return undefined;
  const moves = [drawn.from, drawn.to].map((end) => {
    const [at, from] = [endPoint(end, now), endPoint(end, rest)];
    return at === undefined || from === undefined ? undefined : distance(at, from);
  });
  const [a, b] = moves;
  return a === undefined || b === undefined ? undefined : (a + b) / 2;
}
