/** What a rule may look at: one file, its cars and set-ups, and their figures. */
import type { Parsed } from "../../grammar/index.js";
import type { CarCases } from "../analyses/equilibrium/results.js";
import type { CarKerbs } from "../analyses/kerb/car-kerbs.js";
import type { CarRide } from "../analyses/whole-car/car-ride.js";
import type { AxleAnalysis, CarAnalysis, ElementFigures } from "../analyses/results.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleModel, CarModel, ElementModel } from "../model/car.js";
import type { AxleName } from "../model/origin.js";
import type { ModelProblem } from "../model/problem.js";

export interface CheckedElement {
  readonly model: ElementModel;
  readonly figures: ElementFigures;
  /** Undefined for one between the axles. */
  readonly axle: AxleModel | undefined;
}

export interface CheckedCar {
  readonly model: CarModel;
  /** Computed on first use and shared by all rules. */
  readonly analysis: CarAnalysis;
  /** Each element with its figures, put together once for all rules. */
  readonly elements: readonly CheckedElement[];
  /** Its load cases, each put into equilibrium when it is first asked for. */
  readonly cases: CarCases;
  /** Modes and road response about its cases, likewise. */
  readonly ride: CarRide;
  /** Passes over its kerbs, likewise. */
  readonly kerbs: CarKerbs;
  /** The same for the car or set-up that it derives from: a finding that stands there is not repeated. */
  readonly base: CheckedCar | undefined;
  /** An axle as it is written, built once while its numbers are the same; undefined where there is none. */
  mechanism(axle: AxleName): AxleMechanism | undefined;
  /** Texts that follow from the figures of an axle alone, made once while these are the same; `name` tells them apart. */
  keptWith(figures: AxleAnalysis, name: string, make: () => readonly string[]): readonly string[];
}

/** A set-up that stands in no file: what a few more lines would make of a car or set-up. */
export interface Varied {
  /** Undefined where it could not be built. */
  readonly car: CheckedCar | undefined;
  /** Where its own lines stand: origins inside it are of this `uri`. */
  readonly uri: string;
  /** What is wrong with the lines, in the words of the checks; empty where nothing is. */
  readonly complaints: readonly string[];
}

export interface RuleContext {
  readonly uri: string;
  readonly text: string;
  readonly parsed: Parsed;
  readonly problems: readonly ModelProblem[];
  /** Cars and set-ups that are declared in this file. */
  readonly cars: readonly CheckedCar[];
  /** Every file that this one rests on, itself included. */
  readonly uses: readonly string[];
  parsedOf(uri: string): Parsed | undefined;
  /** Text of another file that this one rests on (for edits and excerpts). */
  textOf(uri: string): string | undefined;
  /** The same checks on changed text: for fixes that must prove themselves. Never touches the workspace. */
  retry(
    edits: readonly { readonly uri: string; readonly start: number; readonly end: number; readonly newText: string }[],
  ): RuleContext;
  /**
   * The set-up `setup … from OF { LINES }` as the language reads it, with every rule that it has for overrides.
   *
   * @param of name of a car or set-up of this file
   */
  vary(of: string, lines: readonly string[]): Varied;
}
