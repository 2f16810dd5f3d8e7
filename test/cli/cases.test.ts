import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

describe("bellcrank cases", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives JSON that its schema describes", () => {
    const { out, code } = shop.run("cases", "quill/quill.crank", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("cases", out)).toEqual([]);
    const { cases } = JSON.parse(out);
    expect(cases.map(({ name }: { name: string }) => name)).toEqual(["top-speed", "hairpin", "braking"]);
    for (const { residual } of cases) expect(Math.abs(residual.value)).toBeLessThan(1e-6);
  });

  it("says the same figures in text, Markdown and CSV", () => {
    const { cases } = JSON.parse(shop.run("cases", "quill/quill.crank", "--format", "json").out);
    const share = cases[1].loadTransferFront.value as number;
    const shown = `${Number(share.toPrecision(4))} %`;
    const text = shop.run("cases", "quill/quill.crank").out;
    expect(text).toContain(shown);
    expect(text).toContain("competent person");
    expect(shop.run("cases", "quill/quill.crank", "--format", "markdown").out).toContain(shown);
    const csv = shop.run("cases", "quill/quill.crank", "--format", "csv").out;
    expect(csv).toContain(`hairpin,car,load transfer at the front,${Number(share.toPrecision(12))},%`);
  });

  it("takes a set-up's own cases", () => {
    const wet = JSON.parse(shop.run("cases", "quill/wet.crank", "--format", "json").out);
    expect(wet.setup).toBe("quarrow-wet");
    expect(wet.cases.at(1)?.lateral ?? wet.cases[0].lateral).toMatchObject({ unit: "g" });
    const hairpin = wet.cases.find(({ name }: { name: string }) => name === "hairpin");
    expect(hairpin.lateral.value).toBeCloseTo(1.05, 9);
  });

  it("tells a case without equilibrium, with its reason and how far it got", () => {
    shop.write(
      "low.crank",
      'use "quill/quill.crank"\n\nsetup low from quill {\n  case flat-out { speed 420 km/h }\n}\n',
    );
    const { out } = shop.run("cases", "low.crank", "--format", "json");
    expect(problemsAgainst("cases", out)).toEqual([]);
    const found = JSON.parse(out).cases.at(-1);
    expect(found).toMatchObject({ name: "flat-out", outcome: "no-equilibrium" });
    expect(found.reached).toBeGreaterThan(0);
    expect(shop.run("cases", "low.crank").out).toContain(found.reason);
  });

  it("is a usage error where there is no case", () => {
    shop.write("none.crank", "car bare {\n  wheelbase 2500 mm\n}\n");
    const { code, err } = shop.run("cases", "none.crank");
    expect(code).toBe(2);
    expect(err).toContain("bare has no load case");
  });
});

describe("bellcrank cases --sweep", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());
  const run = (...more: string[]) => shop.run("cases", "quill/quill.crank", "--sweep", ...more);

  it("gives curves over speed in every format", () => {
    const { out, code } = run("speed", "--to", "200km/h:4", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("case-sweep", out)).toEqual([]);
    const sweep = JSON.parse(out);
    expect(sweep.points.map(({ value }: { value: { value: number } }) => Math.round(value.value))).toEqual([
      0, 50, 100, 150, 200,
    ]);
    expect(run("speed", "--to", "200km/h:4").out).toContain("Speed sweep");
    const csv = run("speed", "--to", "200km/h:4", "--format", "csv").out.split("\n");
    expect(csv[0]).toMatch(/^speed \(km\/h\),branch,rideHeightFront \(mm\)/);
    expect(csv).toHaveLength(7);
  });

  it("goes on in lateral acceleration until a wheel lifts, at the speed of a case", () => {
    const { out } = run("lateral", "--at", "hairpin", "--format", "json");
    expect(problemsAgainst("case-sweep", out)).toEqual([]);
    const sweep = JSON.parse(out);
    expect(sweep.end.reason).toMatch(/wheel lifts$/);
    expect(sweep.points[0].figures.downforceFront.value).toBeGreaterThan(40);
    expect(run("lateral", "--format", "markdown").out).toContain("wheel lifts");
    expect(run("lateral", "--format", "markdown").out).not.toMatch(/\b0\.0000\d* N/);
  });

  it("knows wrong values", () => {
    expect(run("speed", "--to", "200kg").code).toBe(2);
    expect(run("speed", "--to", "200km/h:0").code).toBe(2);
    expect(run("speed", "--at", "nowhere").err).toContain("no case nowhere");
  });
});

describe("bellcrank rates --at", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives rates and motions at the positions of a case, near those at rest", () => {
    const { out } = shop.run("rates", "quill/quill.crank", "--at", "hairpin", "--format", "json");
    expect(problemsAgainst("rates-at", out)).toEqual([]);
    const at = JSON.parse(out);
    const rest = JSON.parse(shop.run("rates", "quill/quill.crank", "--format", "json").out);
    expect(at.at).toBe("hairpin");
    const ratio = at.rates[0].value.value / rest.axles.front.heaveRate.value;
    expect(ratio).toBeGreaterThan(0.8);
    expect(ratio).toBeLessThan(1.2);
    expect(ratio).not.toBe(1);
    expect(shop.run("rates", "quill/quill.crank", "--at", "hairpin").out).toContain("at the positions of hairpin");
    expect(shop.run("rates", "quill/quill.crank", "--at", "hairpin", "--format", "csv").out).toContain(
      "motion in heave",
    );
    expect(shop.run("rates", "quill/quill.crank", "--at", "hairpin", "--format", "markdown").out).toContain(
      "| heave rate",
    );
  });

  it("knows the wrong name", () => {
    const { code, err } = shop.run("rates", "quill/quill.crank", "--at", "nowhere");
    expect(code).toBe(2);
    expect(err).toContain("top-speed, hairpin, braking");
  });
});
