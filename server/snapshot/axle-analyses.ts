/** Analyses of axles, kept by their numbers: cars and set-ups that share an axle share its figures. */
import { analyseAxle } from "../analyses/analyse-axle.js";
import type { CarJoining } from "../analyses/analyse-car.js";
import { carCases } from "../analyses/equilibrium/car-cases.js";
import type { CarCases } from "../analyses/equilibrium/results.js";
import { joinedLoads, type JoinedLoads } from "../analyses/joined-loads.js";
import type { AxleAnalysis } from "../analyses/results.js";
import { assembleAxle, axleKey, joiningKey } from "../assemble/assemble.js";
import { assembleCarElements } from "../assemble/car-elements.js";
import { assembleLoadedCar, loadCaseOf, loadedCarKey } from "../assemble/loaded-car.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { BoundedCache } from "./bounded-cache.js";

/** Both axles of a hundred set-ups: more than anybody edits at a time. */
const mostAxles = 200;

interface Joined {
  readonly joining: CarJoining;
  readonly loads: JoinedLoads | undefined;
}

export class AxleAnalyses {
  readonly #kept = new BoundedCache<string, AxleAnalysis>(mostAxles);
  readonly #joined = new BoundedCache<string, Joined>(mostAxles / 2);
  readonly #cases = new BoundedCache<string, CarCases>(mostAxles / 2);

  /** An axle carries what the elements between the axles leave to it. */
  of(axle: AxleModel, car: CarModel): AxleAnalysis {
    const joined = this.#joinedIn(car)?.loads?.[axle.name];
    const key = axleKey(axle, car);
    return this.#kept.get(joined === undefined ? key : `${key}joined ${JSON.stringify(joined)}`, () =>
      analyseAxle({ ...assembleAxle(axle, car), joined }),
    );
  }

  /** The elements that join the axles; few cars have any. */
  joining(car: CarModel): CarJoining | undefined {
    return this.#joinedIn(car)?.joining;
  }

  /** A case is solved anew only where a number that it rests on has changed. */
  cases(car: CarModel): CarCases {
    const cases = car.cases.map(loadCaseOf);
    return this.#cases.get(loadedCarKey(car, cases), () => carCases(() => assembleLoadedCar(car), cases));
  }

  #joinedIn(car: CarModel): Joined | undefined {
    if (car.elements.length === 0) return undefined;
    return this.#joined.get(joiningKey(car), () => {
      const joining = assembleCarElements(car);
      return { joining, loads: joinedLoads(joining) };
    });
  }
}
