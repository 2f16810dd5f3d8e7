/** An expectation beside the figure that it is about: value, what is wanted, met or missed, margin. */
import type { Statement } from "../../grammar/index.js";
import type { CheckedCar } from "../findings/context.js";
import { expectationsOf } from "./expectations.js";

export function expectationCard(car: CheckedCar, statement: Statement, uri: string): string | undefined {
  const found = expectationsOf(car).find(({ origin }) => origin.uri === uri && origin.start === statement.start);
  if (found === undefined) return undefined;
  const { asked, verdict, actual, wanted, margin, message } = found;
  if (actual === undefined) return message;
  return `**${asked}** is ${actual} · ${verdict} · margin ${margin} · wanted ${wanted}`;
}
