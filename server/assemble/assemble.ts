/**
 * Turns the resolved car into mechanisms: corners, connections and laws. The one place where the
 * model meets the linkage and the elements.
 *
 * Invariant: never throws; what cannot be built is left out with a plain reason, and the rest works.
 */
import { differencesOf, type Standing } from "../elements/corner-loads.js";
import { sweptVolume } from "../elements/connections/cylinders.js";
import type { Connection } from "../elements/element.js";
import type { CarMasses } from "../elements/masses.js";
import type { AssemblyProblem, AxleMechanism, Sides } from "../elements/mechanism.js";
import type { AxleModel, CarModel, CornerModel, ElementModel, WheelModel } from "../model/car.js";
import { type Built, builtElement, builtLink } from "./built-element.js";
import { type AxleGeometry, axleGeometry } from "./axle-geometry.js";
import { type AxleParts, cylindersOf, isUnconnected } from "./connections.js";
import { type BuiltCorner, cornerGeometry, steeredCorners } from "./corner.js";
import { circuitOf } from "./hydraulic.js";
import { lawOf } from "./laws.js";
import { massesOfCar, restingOf } from "./masses.js";
import { strengthOf } from "./strength.js";

export type { AxleMechanism } from "../elements/mechanism.js";
export { axleKey, geometryKey, joiningKey, lawsKey } from "./axle-key.js";
export { type AxleGeometry, axleGeometry, builtCorners } from "./axle-geometry.js";

function buildElement(model: ElementModel, parts: AxleParts, geometry: AxleGeometry): Built<Connection> {
  const { connection: written } = model;
  if (written?.kind === "cylinders") {
    const joined = cylindersOf(written, parts);
    return builtLink(model, isUnconnected(joined) ? joined : circuitOf(written, model.block, joined), sweptVolume);
  }
  const made = geometry.connectionOf(model);
  const tied = written?.kind === "twists" && written.tie !== undefined && written.against.body === "rocker";
  const connection = isUnconnected(made) ? undefined : made;
  const built = builtElement(model, made, lawOf(model, { connection, tied }));
  if (connection === undefined) return built;
  const strength = strengthOf(model, connection);
  return { ...built, elements: built.elements.map((element) => ({ ...element, strength })) };
}

const wheelData = (wheel: WheelModel) => ({
  unsprungMass: wheel.unsprungMass?.value,
  tyreRate: wheel.tyreRate?.value,
});

/** Points are given at the car's own ride height; a set-up's other one moves both wheels against the body. */
function staticTravel({ rideHeight, drawnRideHeight }: AxleModel): number {
  return rideHeight === undefined || drawnRideHeight === undefined ? 0 : drawnRideHeight.value - rideHeight.value;
}

function linkageProblems(corners: Sides<BuiltCorner>): readonly AssemblyProblem[] {
  const sides = corners.left === corners.right ? (["left"] as const) : (["left", "right"] as const);
  return sides.flatMap((side) => {
    const { missing, degenerate } = corners[side];
    return degenerate && missing !== undefined ? [{ kind: "linkage" as const, side, reason: missing }] : [];
  });
}

/** What a line beside the car's own words lacks; those are told by name where the load is asked for. */
function missingLine(car: CarModel, { total, frontShare }: CarMasses): string | undefined {
  if (car.mass === undefined || car.massFront === undefined) return undefined;
  const reason = [total, frontShare].find((known) => typeof known === "string");
  return reason === undefined ? undefined : `${reason}, so the load at rest is not known`;
}

function leftMoreOf({ name }: AxleModel, standing: Standing): number | string {
  const more = differencesOf(standing);
  return typeof more === "string" ? more : more[name];
}

/** Both sides have a rod, or trim has nothing to set. */
function rodsOf(axle: AxleModel, car: CarModel): AxleMechanism["rods"] {
  const { left, right } = axle.corner;
  const kind = "rod" in left && "rod" in right && right.rod !== undefined ? left.rod?.kind : undefined;
  if (kind === undefined) return undefined;
  return {
    kind,
    longer(byLeft, byRight) {
      const corner = { left: withLongerRod(left, byLeft), right: withLongerRod(right, byRight) };
      const made = assembleAxle({ ...axle, corner }, car);
      return made.cornerMissing.left === undefined && made.cornerMissing.right === undefined ? made : undefined;
    },
  };
}

function withLongerRod(corner: CornerModel, by: number): CornerModel {
  if (!("rod" in corner) || corner.rod === undefined) return corner;
  const { rod } = corner;
  const longer = { ...(rod.longer ?? rod.outer), value: (rod.longer?.value ?? 0) + by, unit: rod.longer?.unit ?? "mm" };
  return { ...corner, rod: { ...rod, longer } } as CornerModel;
}

/**
 * The mechanism of one axle, with the masses of the car that its trim and frequencies need.
 *
 * @param geometry of this axle, or of one with the same `geometryKey`, where it is at hand
 */
export function assembleAxle(
  axle: AxleModel,
  car: CarModel,
  geometry: AxleGeometry = axleGeometry(axle),
): AxleMechanism {
  const { corners } = geometry;
  const parts = { axle, corners };
  const built = axle.elements.map((model) => buildElement(model, parts, geometry));
  const masses = massesOfCar(car);
  const { total, frontShare } = masses;
  return {
    rods: rodsOf(axle, car),
    steered:
      axle.name === "front"
        ? (rack) => steeredCorners(cornerGeometry(axle, "left"), cornerGeometry(axle, "right"), rack)
        : undefined,
    name: axle.name,
    track: axle.track?.value,
    rideHeight: axle.rideHeight?.value,
    staticTravel: staticTravel(axle),
    travel: { from: axle.travel.from, to: axle.travel.to },
    corners: { left: corners.left.corner, right: corners.right.corner },
    cornerMissing: { left: corners.left.missing, right: corners.right.missing },
    elements: built.flatMap(({ elements }) => elements),
    wheels: { left: wheelData(axle.wheel.left), right: wheelData(axle.wheel.right) },
    trim: { by: axle.trim.by, element: axle.trim.element },
    carMass: typeof total === "number" ? total : undefined,
    massFront: typeof frontShare === "number" ? frontShare : undefined,
    massMissing: missingLine(car, masses),
    leftMore: leftMoreOf(axle, restingOf(car, masses)),
    problems: [...linkageProblems(corners), ...built.flatMap(({ problems }) => problems)],
  };
}
