import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";

describe("bellcrank new", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("writes a car that checks clean and has figures", () => {
    const made = shop.run("new", "swift-2", "--title", "Swift 2", "--yes");
    expect(made.code).toBe(0);
    expect(made.out).toContain("wrote swift-2.crank");
    for (const name of ["swift-2.crank", "swift-2-parts.crank", "swift-2-first-run.crank"])
      expect(existsSync(join(shop.folder, name))).toBe(true);
    expect(shop.run("check", "swift-2.crank", "swift-2-first-run.crank", "--fail-on", "warning")).toMatchObject({
      code: 0,
    });
    expect(shop.run("format", "--check", "swift-2.crank")).toMatchObject({ code: 0 });
    const { axles } = JSON.parse(shop.run("rates", "swift-2.crank", "--format", "json").out);
    expect(axles.front.heaveRate.value).toBeGreaterThan(50);
  });

  it("takes flags, folders with blanks and letters beyond ASCII, and inches", () => {
    const flags = [
      "--corner",
      "planar",
      "--springs",
      "coil",
      "--front-rod",
      "pull-rod",
      "--no-heave",
      "--units",
      "inch",
    ];
    const { code } = shop.run("new", "T9", ...flags, "--yes", "--into", "my cars é/t9");
    expect(code).toBe(0);
    const text = readFileSync(join(shop.folder, "my cars é/t9/T9.crank"), "utf8");
    for (const words of ["linkage planar", "pull-rod on", " in", "acts in-compression"]) expect(text).toContain(words);
    expect(text).not.toContain("heave-damper");
    expect(shop.run("check", "my cars é/t9", "--fail-on", "warning").code).toBe(0);
  });

  it("asks nobody where there is no terminal, and never overwrites", () => {
    expect(shop.run("new")).toMatchObject({ code: 2, err: expect.stringContaining("say what the car is called") });
    expect(shop.run("new", "once").code).toBe(0);
    const before = readFileSync(join(shop.folder, "once.crank"), "utf8");
    shop.write("once.crank", "# mine\n");
    expect(shop.run("new", "once")).toMatchObject({ code: 2, err: expect.stringContaining("is there already") });
    expect(readFileSync(join(shop.folder, "once.crank"), "utf8")).toBe("# mine\n");
    expect(before).toContain("car once");
  });

  it("tells what may be said", () => {
    expect(shop.run("new", "2 cars", "--yes")).toMatchObject({ code: 2, err: expect.stringContaining("a name is") });
    expect(shop.run("new", "a", "--corner", "round")).toMatchObject({ code: 2 });
    shop.write("file", "");
    expect(shop.run("new", "a", "--yes", "--into", "file/below")).toMatchObject({
      code: 2,
      err: expect.stringContaining("cannot be written to"),
    });
  });
});
