import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";

describe("bellcrank format", () => {
  let shop: Workshop;
  beforeEach(() => {
    shop = openWorkshop();
  });
  afterEach(() => shop.remove());

  const read = (name: string): string => readFileSync(join(shop.folder, name), "utf8");

  it("leaves the sample as it is", () => {
    expect(shop.run("format", "--check", "quill")).toMatchObject({
      code: 0,
      out: "4 files, all in canonical layout\n",
    });
  });

  it("tells what would change without changing it, then changes it", () => {
    const before = read("quill/wet.crank");
    shop.write("quill/wet.crank", before.replace("  front.third.rate 45", "     front.third.rate    45"));
    const messy = read("quill/wet.crank");
    expect(shop.run("format", "--check", "quill")).toMatchObject({
      code: 1,
      out: expect.stringContaining("would change quill/wet.crank"),
    });
    expect(read("quill/wet.crank")).toBe(messy);
    expect(shop.run("format", "quill").code).toBe(0);
    expect(read("quill/wet.crank")).toBe(before);
  });

  it("never loses text that it cannot read", () => {
    shop.write("odd.crank", "car odd {\n  wheelbase ((( 25\n  mass 540 kg\n");
    shop.run("format", "odd.crank");
    for (const part of ["wheelbase", "(((", "25", "mass 540 kg"]) expect(read("odd.crank")).toContain(part);
  });
});
