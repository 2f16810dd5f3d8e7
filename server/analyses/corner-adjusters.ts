/**
 * What a seat or a rod at one corner does at the wheels: the force for each metre that it raises the corner.
 *
 * A seat moved by u presses its element by k u, so the wheel feels k s' u; alone it would raise the corner by u/s'. A
 * rod made longer by l turns the rocker and with it all that hangs there: the change of Σ F ∂s/∂z, by central
 * differences with the wheels held; it counts as raising the corner by what that force is at its own wheel over the
 * wheel's stiffness.
 */
import { eachWheel, type Wheels } from "../elements/car-connection.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { CornerAdjusterData } from "../elements/weighing.js";
import { absent, isAbsent } from "./absent.js";
import { staticForce } from "./carrying.js";
import type { Absent, AxleAnalysis, Figure } from "./results.js";
import type { CornerAdjuster } from "./scales.js";
import { axlePositions, isBound } from "./states.js";

/** Rod lengths are varied by this, m: small against a rocker, large against the solver's rounding. */
const STEP = 1e-5;

/** Σ F ∂s/∂z of an axle's elements where it rests, N; undefined where it does not stand there. */
function elementLoads(mechanism: AxleMechanism): readonly [number, number] | undefined {
  const { motion } = axlePositions(mechanism).at(mechanism.staticTravel, mechanism.staticTravel);
  if (isBound(motion)) return undefined;
  let [left, right] = [0, 0];
  for (const element of mechanism.elements) {
    const d = element.connection?.deflection(motion);
    if (d === undefined || "kind" in d) continue;
    const force = staticForce(element, d.s);
    left += force * d.dL;
    right += force * d.dR;
  }
  return [left, right];
}

/** By how much each wheel's load from the elements changes for each metre of rod, N/m. */
function byRod(mechanism: AxleMechanism, analysis: AxleAnalysis, side: 0 | 1): readonly [number, number] | undefined {
  const { left = 0, right = 0 } = analysis.rates.rods ?? {};
  const set = (by: number) => mechanism.rods?.longer(left + (side === 0 ? by : 0), right + (side === 1 ? by : 0));
  const [longer, shorter] = [set(STEP), set(-STEP)];
  const [more, less] = [longer && elementLoads(longer), shorter && elementLoads(shorter)];
  if (more === undefined || less === undefined) return undefined;
  return [(more[0] - less[0]) / (2 * STEP), (more[1] - less[1]) / (2 * STEP)];
}

/** @param wheel 0 … 3, FL FR RL RR */
export function cornerAdjuster(
  data: CornerAdjusterData,
  wheel: number,
  analysis: AxleAnalysis,
  mechanism: () => AxleMechanism | undefined,
): CornerAdjuster | Absent {
  return data.kind === "seat" ? seat(data, wheel, analysis) : rod(data, wheel, analysis, mechanism());
}

const noThread = (path: string, where: string): Absent => absent(`${path} has no thread (${where})`);

const only = (wheel: number, force: number): Wheels => eachWheel((other) => (other === wheel ? force : 0));

function seat(
  { path, thread }: CornerAdjusterData,
  wheel: number,
  { elements }: AxleAnalysis,
): CornerAdjuster | Absent {
  const figures = elements.find((element) => element.path === path);
  if (figures === undefined) return absent(`${path} is not worked out`);
  const { rate, motionRatio, torsional } = figures;
  if (motionRatio === undefined) return absent(`${path} is not a corner element`);
  if (isAbsent(motionRatio)) return motionRatio;
  if (isAbsent(rate)) return rate;
  const perTurn: Figure = thread ?? noThread(path, "write one behind `ride-height`");
  return { path, force: only(wheel, rate * motionRatio * motionRatio), movement: motionRatio, torsional, perTurn };
}

function rod(
  { path, thread }: CornerAdjusterData,
  wheel: number,
  analysis: AxleAnalysis,
  mechanism: AxleMechanism | undefined,
): CornerAdjuster | Absent {
  const { stiffness } = analysis.rates;
  if (isAbsent(stiffness)) return stiffness;
  const side = wheel % 2 === 0 ? 0 : 1;
  const forces = mechanism && byRod(mechanism, analysis, side);
  if (forces === undefined) return absent(`what ${path} does at the wheels cannot be worked out`);
  const own = stiffness[side][side];
  const raised = forces[side] / own;
  if (!(own > 0) || !(Math.abs(raised) > 1e-9)) return absent(`${path} does not raise the car`);
  const first = wheel - side;
  return {
    path,
    force: eachWheel((other) =>
      other === first || other === first + 1 ? (forces[other === first ? 0 : 1] ?? 0) / raised : 0,
    ),
    movement: 1 / raised,
    torsional: false,
    perTurn: thread === undefined ? noThread(path, "write one in the rod's braces") : thread * raised,
  };
}
