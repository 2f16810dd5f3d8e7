/**
 * Corner weights of the car as it is trimmed, and what the scales ask for: loads, shares and cross weight (front right
 * with rear left over all, common practice), with the turns that bring the car to the wanted one.
 */
import type { Wheels } from "../elements/car-connection.js";
import type { CornerAdjusterData, WeighingData } from "../elements/weighing.js";
import { absent, isAbsent } from "./absent.js";
import { cornerAdjuster } from "./corner-adjusters.js";
import type { Absent, CarAnalysis } from "./results.js";
import { type CornerAdjuster, type ScalesFigures, scalesFigures, weigh, type Weighed } from "./scales.js";

export interface CornerWeights {
  /** At static trim, N, FL FR RL RR. */
  readonly loads: Wheels | Absent;
  readonly weighed: Weighed | Absent;
  readonly target: number;
  readonly within: number;
  /** Undefined where no readings are written. */
  readonly scales: ScalesFigures | undefined;
}

function loadsOf({ axles: { front, rear } }: CarAnalysis): Wheels | Absent {
  if (front === undefined || rear === undefined) return absent("the car has one axle only");
  const loads = [front.atRest.left, front.atRest.right, rear.atRest.left, rear.atRest.right].map(({ load }) => load);
  const [fl = 0, fr = 0, rl = 0, rr = 0] = loads;
  if (isAbsent(fl)) return fl;
  if (isAbsent(fr)) return fr;
  if (isAbsent(rl)) return rl;
  return isAbsent(rr) ? rr : [fl, fr, rl, rr];
}

function tyresOf({ axles: { front, rear } }: CarAnalysis): Wheels | undefined {
  const [fl, fr] = [front?.rates.tyreRate.left, front?.rates.tyreRate.right];
  const [rl, rr] = [rear?.rates.tyreRate.left, rear?.rates.tyreRate.right];
  return fl === undefined || fr === undefined || rl === undefined || rr === undefined ? undefined : [fl, fr, rl, rr];
}

function adjustersOf(
  { corners, mechanisms }: WeighingData,
  { axles }: CarAnalysis,
): readonly CornerAdjuster[] | Absent {
  const found: CornerAdjuster[] = [];
  for (const [wheel, data] of corners.entries()) {
    const adjuster = adjusterAt(
      data,
      wheel,
      wheel < 2 ? axles.front : axles.rear,
      mechanisms[wheel < 2 ? "front" : "rear"],
    );
    if (isAbsent(adjuster)) return adjuster;
    found.push(adjuster);
  }
  return found;
}

function adjusterAt(
  data: CornerAdjusterData | string,
  wheel: number,
  analysis: CarAnalysis["axles"]["front"],
  mechanism: WeighingData["mechanisms"]["front"],
): CornerAdjuster | Absent {
  if (typeof data === "string") return absent(data);
  return analysis === undefined
    ? absent("the car has one axle only")
    : cornerAdjuster(data, wheel, analysis, mechanism);
}

export function cornerWeights(data: WeighingData, analysis: CarAnalysis): CornerWeights {
  const loads = loadsOf(analysis);
  const { places, readings, target, within } = data;
  const weighed = isAbsent(loads)
    ? loads
    : typeof places === "string"
      ? absent(places)
      : weigh(loads, places.x, places.y);
  const scales =
    readings === undefined || typeof places === "string"
      ? undefined
      : scalesFigures({
          readings,
          target,
          stiffness: analysis.modal.wheels,
          tyres: tyresOf(analysis),
          ...places,
          corners: adjustersOf(data, analysis),
        });
  return { loads, weighed, target, within, scales };
}
