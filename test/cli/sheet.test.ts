import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openRepository, type TestRepository } from "../support/git-repository.js";
import { openWorkshop, runCli, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const WET = "quill/wet.crank";

interface Item {
  readonly key: string;
  readonly value: string;
  readonly was?: string;
  readonly new?: true;
  readonly how?: string;
}

describe("bellcrank sheet", () => {
  let shop: Workshop;
  const sheetOf = (...args: string[]) => {
    const { out, err } = shop.run("sheet", ...args, "--format", "json");
    if (out === "") throw new Error(err);
    expect(problemsAgainst("sheet", out)).toEqual([]);
    return JSON.parse(out);
  };
  const item = (sheet: { items: readonly Item[] }, key: string) => sheet.items.find((one) => one.key === key);

  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("tells parts and settings, and marks what the set-up changes of what it derives from", () => {
    const sheet = sheetOf(WET);
    expect(sheet).toMatchObject({ setup: "quarrow-wet", from: ["quill"], findings: { errors: 0 } });
    expect(sheet.notes[0]).toContain("Standing water");
    expect(item(sheet, "front.corner-bar.fit")).toMatchObject({ value: "TB-105", was: "TB-110" });
    expect(item(sheet, "front.bar.blade.position")).toMatchObject({ value: "2 of 5", was: "3 of 5" });
    expect(item(sheet, "front.left.ride-height")).toMatchObject({ value: "34 mm", was: "32 mm" });
    expect(item(sheet, "front.heave-damper.fit")).toEqual({
      key: "front.heave-damper.fit",
      name: "part",
      value: "V-30",
    });
    expect(sheet.last).toMatchObject({ name: "quill", gone: [{ key: "rear.roll-damper.fit", value: "R-16" }] });
    // What the masses alone say: m g of each axle over two wheels.
    expect(item(sheet, "corner-weight.front.left")?.value).toBe("118.8 kg");
    expect(item(sheet, "corner-weight.rear.right")?.value).toBe("151.2 kg");
    expect(sheet.cautions).toContain("competent person");
  });

  it("tells clicks, rods, packers and seats of a car in inches, a line for both sides where they are alike", () => {
    const sheet = sheetOf("tern/primrose.crank");
    expect(item(sheet, "front.side.bump.clicks")).toMatchObject({ value: "12 of 20", was: "9 of 20" });
    expect(item(sheet, "front.stop.packer")).toMatchObject({ value: "0.1 in" });
    expect(item(sheet, "front.left.camber")).toMatchObject({ value: "-1.1 deg", was: "-1.5 deg" });
    expect(item(sheet, "front.push-rod.longer")?.value).toBe("as drawn");
    const text =
      'use "tern.crank"\n\nsetup odd from tern {\n  front.left.side.bump.clicks 4 of 20\n  front.push-rod by +1 turn\n}\n';
    shop.write("tern/odd.crank", text);
    const odd = sheetOf("tern/odd.crank");
    expect(item(odd, "front.left.side.bump.clicks")?.value).toBe("4 of 20");
    expect(item(odd, "front.right.side.bump.clicks")?.value).toBe("9 of 20");
    expect(item(odd, "front.push-rod.longer")?.value).toBe("0.05 in longer (1 turn)");
  });

  it("is held against another set-up, or against a sheet that was kept", () => {
    const since = sheetOf(WET, "--since", "quill/dry.crank");
    expect(item(since, "front.third.rate")).toMatchObject({ value: "45 N/mm", was: "60 N/mm" });
    expect(shop.run("sheet", "quill/dry.crank", "--format", "json", "--output", "kept.json").code).toBe(0);
    const kept = sheetOf(WET, "--last", "kept.json");
    expect(kept.last.name).toBe("quarrow-dry");
    expect(kept.items).toEqual(since.items);
    // A sheet against itself has nothing to say.
    const same = sheetOf("quill/dry.crank", "--last", "kept.json");
    expect(same.items.filter((one: Item) => one.was !== undefined || one.new === true)).toEqual([]);
  });

  it("says the same in Markdown and HTML", () => {
    const { items } = sheetOf(WET) as { items: readonly Item[] };
    for (const format of ["markdown", "html"]) {
      const { out, code } = shop.run("sheet", WET, "--format", format);
      expect(code).toBe(0);
      expect(out).toContain("competent person");
      for (const { value } of items) expect(out.replaceAll("\\*", "*")).toContain(value);
      for (const blank of ["R-16", "Standing water", "front.heave-rate"]) expect(out).toContain(blank);
    }
    expect(shop.run("sheet", WET).out).toMatch(/<span class="measured"><\/span>/);
  });

  it("warns on the sheet where the file has errors, and ends accordingly", () => {
    shop.write(
      "quill/broken.crank",
      'use "quill.crank"\n\nsetup broken from quill {\n  front.thirdd.rate 45 N/mm\n}\n',
    );
    const { code, out, err } = shop.run("sheet", "quill/broken.crank");
    expect(code).toBe(1);
    expect(out).toContain("The file has 1 error");
    expect(err).toContain("see bellcrank check");
  });

  it("says which figures are not there, and why", () => {
    const car = readFileSync("samples/quill/quill.crank", "utf8").replace(/^ {2}mass 540 kg.*$/m, "");
    shop.write("quill/weightless.crank", car);
    const { missing, items } = sheetOf("quill/weightless.crank");
    expect(missing).toEqual([
      "No corner weights: the car has no mass, so the load at rest is not known.",
      "No seats at the front: the car has no mass, so the load at rest is not known.",
      "No seats at the rear: the car has no mass, so the load at rest is not known.",
    ]);
    expect(items.some(({ key }: Item) => key.startsWith("corner-weight"))).toBe(false);
    for (const format of ["html", "markdown"]) {
      const { out } = shop.run("sheet", "quill/weightless.crank", "--format", format);
      expect(out).toContain("No corner weights: the car has no mass, so");
      expect(out).toContain("The file has 1 error");
    }
    expect(sheetOf(WET).missing).toEqual([]);
  });

  it("escapes what a car may be called", () => {
    shop.write("odd.crank", 'car odd "A <b>bold</b> & \\"quoted\\" car" {\n  mass 500 kg\n}\n');
    const { out } = shop.run("sheet", "odd.crank");
    expect(out).not.toContain("<b>bold");
    expect(out).toContain("&lt;b&gt;bold&lt;/b&gt;");
  });

  it("tells what cannot be read or written", () => {
    shop.write("no.json", "{");
    shop.write("other.json", '{ "schema": 1 }');
    for (const [args, words] of [
      [["nothing.crank"], "no such file"],
      [[WET, "--since", "nothing.crank"], "no such file"],
      [[WET, "--last", "nothing.json"], "no such file"],
      [[WET, "--last", "no.json"], "is not JSON"],
      [[WET, "--last", "other.json"], "no setup sheet"],
      [[WET, "--setup", "dry"], 'no set-up "dry"'],
      [[WET, "--output", "missing/folder/sheet.html"], "cannot be written"],
      [[WET, "--since", "quill/dry.crank", "--last", "no.json"], "cannot be used with"],
    ] as const) {
      const { code, err } = shop.run("sheet", ...args);
      expect(code).toBe(2);
      expect(err).toContain(words);
    }
    const none = openWorkshop({ BELLCRANK_CHROMIUM: "/nowhere/chromium" });
    try {
      const { code, err } = none.run("sheet", WET, "--pdf", "sheet.pdf");
      expect(code).toBe(2);
      expect(err).toContain("BELLCRANK_CHROMIUM");
      expect(existsSync(join(none.folder, "sheet.pdf"))).toBe(false);
    } finally {
      none.remove();
    }
  });

  describe("in a repository", () => {
    let repository: TestRepository;
    beforeAll(() => {
      repository = openRepository();
      for (const name of ["parts", "quill", "wet"])
        repository.write(`cars/${name}.crank`, readFileSync(`samples/quill/${name}.crank`));
    });
    afterAll(() => repository.remove());

    it("names the commit, says where the file differs from it, and is held against a revision", () => {
      const path = join(repository.folder, "cars/wet.crank");
      expect(sheetOf(path).commit).toBeNull();
      const commit = repository.commit("Rain").slice(0, 8);
      expect(sheetOf(path).commit).toBe(commit);
      const parts = join(repository.folder, "cars/parts.crank");
      const text = readFileSync(parts, "utf8");
      repository.write("cars/parts.crank", `${text}\n# counted again\n`);
      expect(sheetOf(path).commit).toBe(`${commit}, with changes that are not committed`);
      repository.write("cars/parts.crank", text);
      repository.write("cars/wet.crank", readFileSync(path, "utf8").replace("45 N/mm", "48 N/mm"));
      const { out, err } = runCli(
        repository.folder,
        "sheet",
        path,
        "--since",
        "HEAD:cars/wet.crank",
        "--format",
        "json",
      );
      expect(err).toBe("");
      expect(item(JSON.parse(out), "front.third.rate")).toMatchObject({ value: "48 N/mm", was: "45 N/mm" });
      expect(runCli(repository.folder, "sheet", path, "--since", "v9:cars/wet.crank")).toMatchObject({ code: 2 });
    });
  });
});
