/** The broken samples and the files that they and the rule tests build on. */
import { readdirSync, readFileSync } from "node:fs";
import { contextOf, type Files } from "./context.js";

const folder = new URL("../../samples/broken/", import.meta.url);

/** Everything under samples/broken, by name. Bytes that are no UTF-8 come as an editor shows them. */
export const brokenSamples: Files = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder)).toString("utf8")]),
);

export const sharedCar: Files = Object.fromEntries(
  ["shared.crank", "shared-parts.crank"].map((name) => [name, brokenSamples[name] ?? ""]),
);

/** A set-up of that car with these lines. */
export const setupWith = (...lines: readonly string[]): string =>
  `use "shared.crank"\n\nsetup wet from wren {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;

export const contextOfSetup = (...lines: readonly string[]) =>
  contextOf({ ...sharedCar, "wet.crank": setupWith(...lines) }, "wet.crank");
