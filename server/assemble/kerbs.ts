/** The kerbs that are written for a car. */
import type { KerbAsked } from "../elements/kerb-asked.js";
import type { CarModel } from "../model/car.js";
import { numberOf, statementOf, wordOf } from "./reading.js";

export const kerbsOf = (car: CarModel): readonly KerbAsked[] =>
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
