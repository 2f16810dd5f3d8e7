/** Load cases for a machine. The form is described by `schema/cases.json` of the package. */
import type { CheckedCar } from "../../findings/context.js";
import { elementDimensions } from "../../views/case-rows.js";
import { caseResults, whyNone } from "../../views/cases-page.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { json, quantity } from "./json.js";

type Result = ReturnType<typeof caseResults>[number];
type Solved = Extract<Result, { kind: "equilibrium" }>;

export function casesJson(car: CheckedCar): string {
  const unit = unitsOfCar(car.model);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    cases: caseResults(car).map((result) => caseJson(result, unit)),
  });
}

function caseJson(result: Result, unit: ShowUnit): object {
  const { name } = result;
  if (result.kind === "absent") return { name, outcome: "absent", reason: result.reason };
  if (result.kind === "no-equilibrium") {
    const { why, residual, iterations, reached, element } = result;
    return {
      name,
      outcome: "no-equilibrium",
      kind: why.kind,
      reason: whyNone(result),
      element: element ?? null,
      reached,
      iterations,
      residual: quantity(residual, "N"),
    };
  }
  return solvedJson(result, unit);
}

function solvedJson(found: Solved, unit: ShowUnit): object {
  const { asked, air, front, rear } = found;
  const length = unit("length");
  const angle = unit("angle");
  const force = unit("force");
  return {
    name: found.name,
    outcome: "equilibrium",
    iterations: found.iterations,
    residual: quantity(found.residual, "N"),
    speed: quantity(asked.speed, unit("speed")),
    lateral: quantity(asked.lateral, "g"),
    longitudinal: quantity(asked.longitudinal, "g"),
    vertical: quantity(asked.vertical, "g"),
    banking: quantity(asked.banking, angle),
    gradient: quantity(asked.gradient, angle),
    steer: asked.turns === 0 ? quantity(asked.steer, length) : quantity(asked.turns, "turn"),
    rideHeight: { front: quantity(front.rideHeight, length), rear: quantity(rear.rideHeight, length) },
    clearances: found.clearances.map(({ name, height }) => ({ name, height: quantity(height, length) })),
    roll: quantity(found.roll, angle),
    pitch: quantity(found.pitch, angle),
    rollGradient: quantity(found.rollGradient, unit("angle-per-acceleration")),
    loadTransferFront: quantity(found.loadTransferFront, "%"),
    rollStiffnessFront: quantity(found.rollStiffnessFront, "%"),
    downforceFront: quantity(found.downforceFront, "%"),
    air: {
      density: quantity(air.density, unit("density")),
      front: quantity(air.front, force),
      rear: quantity(air.rear, force),
      drag: quantity(air.drag, force),
      tableLeft: air.outside,
    },
    wheels: found.wheels.map((wheel) => wheelJson(wheel, unit)),
    elements: found.elements.map((element) => elementJson(element, unit)),
  };
}

function wheelJson(wheel: Solved["wheels"][number], unit: ShowUnit): object {
  const [length, angle, force] = [unit("length"), unit("angle"), unit("force")];
  return {
    axle: wheel.axle,
    side: wheel.side,
    load: quantity(wheel.load, force),
    lifted: wheel.isLifted,
    travel: quantity(wheel.travel, length),
    travelLeft: { bump: quantity(wheel.left.bump, length), rebound: quantity(wheel.left.rebound, length) },
    lateral: quantity(wheel.lateral, force),
    longitudinal: quantity(wheel.longitudinal, force),
    camber: quantity(wheel.camber, angle),
    camberToRoad: quantity(wheel.camberToRoad, angle),
    toe: quantity(wheel.toe, angle),
  };
}

function elementJson(element: Solved["elements"][number], unit: ShowUnit): object {
  const { force, deflection } = elementDimensions(element);
  const { stroke, stop } = element;
  const travel = unit(deflection);
  return {
    path: element.path,
    kind: element.kind,
    force: quantity(element.force, unit(force)),
    deflection: quantity(element.deflection, travel),
    strokeLeft:
      stroke === undefined ? null : { bump: quantity(stroke.bump, travel), rebound: quantity(stroke.rebound, travel) },
    stop: stop === undefined ? null : { reached: stop.isReached, left: quantity(stop.left, travel) },
    stresses: element.stresses.map(({ part, stress }) => ({ part, stress: quantity(stress, unit("stress")) })),
  };
}
