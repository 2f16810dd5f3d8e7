/** Rounds without solving the car anew: more damping and stiffness between wheels and body against the car that has them. */
import { expect, it } from "vitest";
import { carDynamics } from "../../../server/analyses/whole-car/dynamics.js";
import { conditionsOf, type RoadCase, roadResponse } from "../../../server/analyses/whole-car/road.js";
import { travelsOnRoad } from "../../../server/analyses/whole-car/travels-on-road.js";
import { diagonal, zeros } from "../../../server/maths/rows.js";
import { expectClose } from "../../support/approx.js";
import { car7 } from "../../support/whole-car.js";

const road: RoadCase = { roughness: 16e-6, speed: 40, staticLoads: [1, 1, 1, 1], accuracy: 1e-6 };
/** Of a mean square at the few nodes of a first look; the rounds need a tenth of a per cent. */
const FIRST_LOOK = 5e-4;

it("gives the travels of the car that has them", () => {
  const travels = travelsOnRoad(car7, carDynamics(car7), conditionsOf(car7, road));
  const [stiffness, damping] = [diagonal([9e3, 4e3, 0, -3e3]), diagonal([-500, 200, 400, 0])];
  const squares = travels?.squares(stiffness, damping);
  const none = zeros(4, 4);
  const found = roadResponse({ ...car7, cross: { stiffness, damping, inertance: none } }, road);
  if (found.kind !== "road-response" || squares === undefined) throw new Error("no response");
  expect(car7.cross).toBeUndefined();
  for (const [i, { travel, travelSpeed }] of found.wheels.entries()) {
    expectClose(squares.travel[i]![i]!, travel ** 2, FIRST_LOOK);
    expectClose(squares.speed[i]![i]!, travelSpeed ** 2, FIRST_LOOK);
  }
});
