/** The kerbs that are written for a car. */
import type { CarModel } from "../model/car.js";
import { numberOf, statementOf, wordOf } from "./reading.js";

interface WrittenKerb {
  readonly name: string;
  readonly height: number | undefined;
  readonly length: number | undefined;
  readonly shape: string | undefined;
  readonly contact: number | undefined;
  readonly wheels: string | undefined;
  readonly axles: string | undefined;
  readonly speed: number | undefined;
  readonly case: string | undefined;
  readonly after: number | undefined;
}

export const kerbsOf = (car: CarModel): readonly WrittenKerb[] =>
  car.block.statements.flatMap(({ word, name, block }) => {
    if (word !== "kerb" || name === undefined || block === undefined) return [];
    const at = statementOf(block, "case")?.values.find((value) => value.kind === "path");
    return {
      name: name.text,
      height: numberOf(block, "height"),
      length: numberOf(block, "length"),
      shape: wordOf(block, "shape"),
      contact: numberOf(block, "contact"),
      wheels: wordOf(block, "wheels"),
      axles: wordOf(block, "axles"),
      speed: numberOf(block, "speed"),
      case: at?.kind === "path" ? at.segments.join(".") : undefined,
      after: numberOf(block, "after"),
    };
  });
