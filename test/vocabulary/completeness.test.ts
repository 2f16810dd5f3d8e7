/** Every word of the design's example programs, and of every form told in its rules, is known in its place. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { unknownIn } from "./known-words.js";

const folder = new URL("./fixtures/", import.meta.url);
const files = readdirSync(folder).sort();
const textOf = (name: string): string => readFileSync(new URL(name, folder), "utf8");

describe("the examples of the language", () => {
  it.each(files)("%s uses known words only", (name) => {
    expect(unknownIn(textOf(name), files.map(textOf))).toEqual([]);
  });

  it("are told when they are not known", () => {
    expect(unknownIn("car c {\n  wheelbas 2 m\n  mass 3 mm\n  brakes 5 %\n  axle { }\n}")).toEqual([
      "unknown in car: wheelbas",
      "wrong dimension for mass: mass 3 mm",
      "no form of brakes: brakes 5 %",
      "no form of axle: axle { }",
    ]);
  });
});
