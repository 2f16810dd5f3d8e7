import { spawn } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const grid = ["--vary", "front.third.rate=40..80N/mm:13", "--vary", "front.corner-bar.fit=TB-105,TB-110,TB-115,TB-120"];
const figures = ["--figure", "front.heave-rate", "--figure", "load-transfer-front at hairpin"];

describe("bellcrank sweep", () => {
  let shop: Workshop;
  let whole = "";
  beforeAll(() => {
    shop = openWorkshop();
    whole = sweep(...grid, ...figures).out;
  }, 60_000);
  afterAll(() => shop.remove());
  const sweep = (...more: string[]) => shop.run("sweep", "quill/quill.crank", ...more);
  const written = (name: string) => readFileSync(join(shop.folder, name), "utf8");

  it("makes one row a set-up, the last property going fastest", () => {
    const lines = whole.split("\n");
    expect(lines[0]).toBe(
      "front.third.rate (N/mm),front.corner-bar.fit,front.heave-rate (N/mm),load-transfer-front at hairpin (%)",
    );
    expect(lines.length).toBe(1 + 52 + 1);
    expect(lines[1]).toMatch(/^40,TB-105,/);
    expect(lines[2]).toMatch(/^40,TB-110,/);
    expect(lines.at(-2)).toMatch(/^80,TB-120,/);
  });

  it("says what a set-up with these lines says", () => {
    shop.write(
      "quill/one.crank",
      'use "quill.crank"\n\nsetup one from quill {\n  front.third.rate 80 N/mm\n  front.corner-bar.fit TB-120\n}\n',
    );
    const rates = JSON.parse(shop.run("rates", "quill/one.crank", "--format", "json").out);
    const cells = whole.trimEnd().split("\n").at(-1)?.split(",") ?? [];
    expect(Number(cells[2])).toBeCloseTo(rates.axles.front.heaveRate.value, 8);
  });

  it("is the same on one core and on more, in pieces and whole", () => {
    expect(sweep(...grid, ...figures, "--jobs", "1").out).toBe(whole);
    expect(sweep(...grid, ...figures, "--jobs", "3").out).toBe(whole);
    const shards = [1, 2, 3].map((i) => sweep(...grid, ...figures, "--shard", `${i}/3`).out.split("\n"));
    const [head = ""] = shards[0] ?? [];
    expect(shards.every(([first]) => first === head)).toBe(true);
    expect(`${head}\n${shards.map((lines) => lines.slice(1).join("\n")).join("")}`).toBe(whole);
  }, 60_000);

  it("goes on where it was cut off, in the middle of a line or of the head", () => {
    for (const length of [0, 20, whole.indexOf("\n") + 1, whole.length - 200, whole.length]) {
      shop.write("cut.csv", whole.slice(0, length));
      expect(sweep(...grid, ...figures, "--out", "cut.csv").code).toBe(0);
      expect(written("cut.csv")).toBe(whole);
    }
  }, 60_000);

  it("goes on after it was killed", async () => {
    const args = ["--vary", "front.third.rate=40..80N/mm:900", ...figures, "--out", "killed.csv"];
    const child = spawn(process.execPath, [resolve("dist/cli.js"), "sweep", "quill/quill.crank", ...args], {
      cwd: shop.folder,
    });
    const ended = new Promise((done) => child.once("exit", done));
    const size = () => statSync(join(shop.folder, "killed.csv"), { throwIfNoEntry: false })?.size ?? 0;
    while (size() < 1000) await pause(5);
    child.kill("SIGKILL");
    await ended;
    const before = written("killed.csv");
    expect(before.split("\n").length).toBeLessThan(900);
    expect(sweep(...args).code).toBe(0);
    const after = written("killed.csv");
    expect(after.startsWith(before.slice(0, before.lastIndexOf("\n") + 1))).toBe(true);
    expect(after).toBe(sweep(...args.slice(0, -2)).out);
  }, 90_000);

  it("leaves a file alone that another sweep made, or that the car has left behind", () => {
    const other = whole.replace("40,TB-110", "41,TB-110");
    shop.write("other.csv", other);
    const { code, err } = sweep(...grid, ...figures, "--out", "other.csv");
    expect(code).toBe(2);
    expect(err).toContain("line 3 is not of this sweep");
    expect(written("other.csv")).toBe(other);
    const before = `${whole.split("\n").slice(0, 2).join("\n")}\n`.replace(/,[\d.]+\n$/, ",99\n");
    shop.write("old.csv", before);
    expect(sweep(...grid, ...figures, "--out", "old.csv").err).toContain("when the car was another");
  }, 60_000);

  it("gives JSON lines that their schema describes, with a reason for what is not there", () => {
    const { out } = sweep("--vary", "front.third.rate=-40..80N/mm:4", ...figures, "--format", "jsonl");
    const lines = out.trimEnd().split("\n");
    for (const line of lines) expect(problemsAgainst("sweep", line)).toEqual([]);
    expect(lines.length).toBe(5);
    expect(JSON.parse(lines[1] ?? "").figures["front.heave-rate"].absent).toContain("above 0");
    expect(JSON.parse(lines[4] ?? "").figures["front.heave-rate"]).toBeGreaterThan(100);
  });

  it("takes the expectations of the car where no figure is named, and nothing goes to standard error", () => {
    const { out, err, code } = sweep("--vary", "front.third.rate=55N/mm");
    expect(code).toBe(0);
    expect(err).toBe("");
    expect(out.split("\n")[0]).toContain("front.ride-height at top-speed (mm)");
  });

  it.each([
    ["an unknown path", ["--vary", "front.thrid.rate=40..80N/mm:3"], "third"],
    ["a unit of something else", ["--vary", "front.third.rate=40..80mm:3"], "mm"],
    ["no unit", ["--vary", "front.third.rate=40..80:3"], "unit"],
    ["an empty range", ["--vary", "front.third.rate=40..40N/mm:3"], "empty"],
    ["one value of a range", ["--vary", "front.third.rate=40..80N/mm:1"], "from 2"],
    ["no count", ["--vary", "front.third.rate=40..80N/mm"], "how many"],
    ["no values", ["--vary", "front.third.rate"], "between which values"],
    ["an unknown part", ["--vary", "front.corner-bar.fit=TB-9,TB-8"], "TB-9"],
    ["the same path twice", ["--vary", "front.third.rate=1N/mm", "--vary", "front.third.rate=2N/mm"], "twice"],
    ["an unknown figure", ["--vary", "front.third.rate=40N/mm", "--figure", "front.heaverate"], "heaverate"],
    ["an unknown case", ["--vary", "front.third.rate=40N/mm", "--figure", "roll-angle at nowhere"], "nowhere"],
    ["a shard that is none", ["--vary", "front.third.rate=40N/mm", "--shard", "3/2"], "--shard"],
    ["no cores", ["--vary", "front.third.rate=40N/mm", "--jobs", "0"], "--jobs"],
    [
      "more set-ups than can be",
      ["--vary", "front.third.rate=1..2N/mm:99999", "--vary", "rear.third.rate=1..2N/mm:99999"],
      "too many",
    ],
  ])("is a usage error with %s", (_, args, said) => {
    const { code, err, out } = sweep(...args);
    expect(out).toBe("");
    expect(err).toContain(said);
    expect(code).toBe(2);
  });
});
