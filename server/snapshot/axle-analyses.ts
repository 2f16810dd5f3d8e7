/** Analyses of axles, kept by their numbers: cars and set-ups that share an axle share its figures. */
import { analyseAxle, type GeometryFigures, geometryFigures } from "../analyses/analyse-axle.js";
import type { CarJoining } from "../analyses/analyse-car.js";
import { carCases } from "../analyses/equilibrium/car-cases.js";
import { type CaseSolver, caseSolver } from "../analyses/equilibrium/case-solver.js";
import type { CarCases } from "../analyses/equilibrium/results.js";
import { type CarKerbs, carKerbs } from "../analyses/kerb/car-kerbs.js";
import { type CarRide, carRide } from "../analyses/whole-car/car-ride.js";
import { joinedLoads, type JoinedLoads } from "../analyses/joined-loads.js";
import type { AxleAnalysis } from "../analyses/results.js";
import {
  assembleAxle,
  type AxleGeometry,
  axleGeometry,
  axleKey,
  geometryKey,
  joiningKey,
  lawsKey,
} from "../assemble/assemble.js";
import { assembleCarElements } from "../assemble/car-elements.js";
import { kerbsOf } from "../assemble/kerbs.js";
import { assembleLoadedCar, loadCaseOf, loadedCarKey } from "../assemble/loaded-car.js";
import { rideNumbersOf, roadOf } from "../assemble/ride.js";
import type { CarUnderLoad, LoadCase } from "../elements/loaded-car.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { BoundedCache } from "./bounded-cache.js";
import type { KeptAxles } from "./kept-seats.js";
import { SharedCache } from "./shared-cache.js";

/** Both axles, and what was there before the last number was typed; beyond those, what an open car or set-up holds. */
const recentAxles = 4;

interface Joined {
  readonly joining: CarJoining;
  readonly loads: JoinedLoads | undefined;
}

/** Likewise of a car and the set-up that is open beside it. What is kept for longer is copied twice by the collector. */
const mostMechanisms = 6;
const mostCars = 3;

/** Likewise of a car and the set-up beside it, and of an eye before and after it was moved. */
const mostGeometries = 6;

interface KeptGeometry {
  readonly parts: AxleGeometry;
  figures: GeometryFigures | undefined;
}

interface Keys {
  readonly geometry: string;
  readonly whole: string;
}

export class AxleAnalyses {
  readonly #loadedKeys = new WeakMap<CarModel, string>();
  readonly #loadCases = new WeakMap<CarModel, readonly LoadCase[]>();
  readonly #solvers = new BoundedCache<string, CaseSolver>(mostCars);
  readonly #keys = new WeakMap<CarModel, Map<AxleModel, Keys>>();
  /** An axle that was not typed into is the same object in the next version of its car. */
  readonly #ownKeys = new WeakMap<AxleModel, Keys>();
  readonly #geometries = new BoundedCache<string, KeptGeometry>(mostGeometries);
  readonly #texts = new WeakMap<AxleAnalysis, Map<string, readonly string[]>>();
  readonly #mechanisms = new SharedCache<string, AxleMechanism>(mostMechanisms);
  readonly #kept = new SharedCache<string, AxleAnalysis>(recentAxles);
  readonly #held = new WeakMap<CarModel, Set<AxleAnalysis | AxleMechanism>>();
  readonly #joined = new BoundedCache<string, Joined>(mostCars);
  readonly #cases = new BoundedCache<string, CarCases>(mostCars);
  readonly #rides = new BoundedCache<string, CarRide>(mostCars);

  /** An axle carries what the elements between the axles leave to it. One on kept seats has its loads from there. */
  of(axle: AxleModel, car: CarModel, kept?: KeptAxles): AxleAnalysis {
    const mechanism = kept?.[axle.name];
    if (mechanism !== undefined) return analyseAxle(mechanism);
    const joined = this.#joinedIn(car)?.loads?.[axle.name];
    const key = this.#keyOf(axle, car);
    const figures = this.#kept.get(joined === undefined ? key : `${key}joined ${JSON.stringify(joined)}`, () =>
      this.#analyse({ ...this.mechanism(axle, car), joined }, this.#geometry(axle, car)),
    );
    this.#hold(figures, car);
    return figures;
  }

  /** As long as there is the car: what it shows of an axle is a copy with the axle's share of the whole. */
  #hold(figures: AxleAnalysis | AxleMechanism, car: CarModel): void {
    const held = this.#held.get(car);
    if (held === undefined) this.#held.set(car, new Set([figures]));
    else held.add(figures);
  }

  /** As it is written, for those who look at an axle more closely than its figures do. */
  mechanism(axle: AxleModel, car: CarModel): AxleMechanism {
    const mechanism = this.#mechanisms.get(this.#keyOf(axle, car), () =>
      assembleAxle(axle, car, this.#geometry(axle, car).parts),
    );
    this.#hold(mechanism, car);
    return mechanism;
  }

  /** A rate that is typed leaves the points as they are, and whatever follows from them alone. */
  #geometry(axle: AxleModel, car: CarModel): KeptGeometry {
    return this.#geometries.get(this.#keysOf(axle, car).geometry, () => ({
      parts: axleGeometry(axle),
      figures: undefined,
    }));
  }

  #analyse(mechanism: AxleMechanism, geometry: KeptGeometry): AxleAnalysis {
    return analyseAxle(mechanism, (geometry.figures ??= geometryFigures(mechanism)));
  }

  /** They go when the figures go. */
  keptWith(figures: AxleAnalysis, name: string, make: () => readonly string[]): readonly string[] {
    let texts = this.#texts.get(figures);
    if (texts === undefined) this.#texts.set(figures, (texts = new Map()));
    let made = texts.get(name);
    if (made === undefined) texts.set(name, (made = make()));
    return made;
  }

  /** Made once a car: they are as long as all of the axle's numbers. */
  #keysOf(axle: AxleModel, car: CarModel): Keys {
    let keys = this.#keys.get(car);
    if (keys === undefined) this.#keys.set(car, (keys = new Map()));
    let made = keys.get(axle);
    if (made === undefined) {
      const { geometry, whole } = this.#ownKeysOf(axle);
      keys.set(axle, (made = { geometry, whole: axleKey(axle, car, whole) }));
    }
    return made;
  }

  /** Without the masses of a car. */
  #ownKeysOf(axle: AxleModel): Keys {
    let keys = this.#ownKeys.get(axle);
    if (keys === undefined) {
      const geometry = geometryKey(axle);
      this.#ownKeys.set(axle, (keys = { geometry, whole: `${geometry}${lawsKey(axle)}` }));
    }
    return keys;
  }

  readonly #keyOf = (axle: AxleModel, car: CarModel): string => this.#keysOf(axle, car).whole;

  /** The elements that join the axles; few cars have any. */
  joining(car: CarModel): CarJoining | undefined {
    return this.#joinedIn(car)?.joining;
  }

  /** A case is solved anew only where a number that it rests on has changed; of a car on kept seats, each time. */
  cases(car: CarModel, kept?: KeptAxles): CarCases {
    const cases = this.#casesOf(car);
    const loaded = this.#loaded(car, kept);
    if (kept !== undefined) return carCases(loaded, cases);
    const key = this.#loadedKey(car, cases);
    return this.#cases.get(key, () => carCases(loaded, cases, this.#solver(key, loaded)));
  }

  /** Modes and road response, likewise. */
  ride(car: CarModel, kept?: KeptAxles): CarRide {
    const cases = this.#casesOf(car);
    const numbers = { ...rideNumbersOf(car), road: roadOf(car) };
    const loaded = this.#loaded(car, kept);
    if (kept !== undefined) return carRide(loaded, cases, numbers);
    const key = this.#loadedKey(car, cases);
    return this.#rides.get(`${JSON.stringify(numbers)}${key}`, () =>
      carRide(loaded, cases, numbers, this.#solver(key, loaded)),
    );
  }

  /** Passes over kerbs: nothing is kept but the equilibria that they begin in. */
  kerbs(car: CarModel, kept?: KeptAxles): CarKerbs {
    const cases = this.#casesOf(car);
    const loaded = this.#loaded(car, kept);
    const solver = kept === undefined ? this.#solver(this.#loadedKey(car, cases), loaded) : caseSolver(loaded);
    return carKerbs(kerbsOf(car), cases, rideNumbersOf(car), solver);
  }

  #loaded(car: CarModel, kept: KeptAxles | undefined): () => CarUnderLoad {
    return () => assembleLoadedCar(car, (axle) => kept?.[axle.name] ?? this.mechanism(axle, car));
  }

  #casesOf(car: CarModel): readonly LoadCase[] {
    let cases = this.#loadCases.get(car);
    if (cases === undefined) this.#loadCases.set(car, (cases = car.cases.map(loadCaseOf)));
    return cases;
  }

  #loadedKey(car: CarModel, cases: readonly LoadCase[]): string {
    let key = this.#loadedKeys.get(car);
    if (key === undefined) this.#loadedKeys.set(car, (key = loadedCarKey(car, cases, this.#keyOf)));
    return key;
  }

  /** One for all who ask about the same car under load. */
  #solver(key: string, loaded: () => CarUnderLoad): CaseSolver {
    return this.#solvers.get(key, () => caseSolver(loaded));
  }

  #joinedIn(car: CarModel): Joined | undefined {
    if (car.elements.length === 0) return undefined;
    return this.#joined.get(joiningKey(car, this.#keyOf), () => {
      const joining = assembleCarElements(car);
      return { joining, loads: joinedLoads(joining) };
    });
  }
}
