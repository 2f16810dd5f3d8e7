/** The car that the broken samples and the rule tests build on. */
import { readFileSync } from "node:fs";
import { contextOf, type Files } from "./context.js";

export const sharedCar: Files = {
  "shared.crank": readFileSync(new URL("../../samples/broken/shared.crank", import.meta.url), "utf8"),
};

/** A set-up of that car with these lines. */
export const setupWith = (...lines: readonly string[]): string =>
  `use "shared.crank"\n\nsetup wet from wren {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;

export const contextOfSetup = (...lines: readonly string[]) =>
  contextOf({ ...sharedCar, "wet.crank": setupWith(...lines) }, "wet.crank");
