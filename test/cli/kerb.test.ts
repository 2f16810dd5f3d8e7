import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const FILE = "over-kerbs.crank";

/** The sample car over a low wave on both sides, a high kerb in a turn, and two that cannot be passed. */
const TEXT = `use "quill/quill.crank"

setup over-kerbs from quill {
  kerb wave { height 5 mm, length 4000 mm, shape versed-sine, speed 60 km/h }
  kerb chicane { height 45 mm, length 500 mm, wheels left, case hairpin, speed 80 km/h, after 0.4 s }
  kerb slow { height 40 mm, length 500 mm }
}

setup higher from over-kerbs { chicane.height 60 mm }
`;
const LOST = TEXT.replace("kerb slow {", "kerb nowhere { height 40 mm, length 500 mm, case nowhere }\n  kerb slow {");

describe("bellcrank kerb", () => {
  let shop: Workshop;
  const json = (...more: string[]) => told(FILE, 0, more);
  const told = (file: string, expected: number, more: readonly string[]) => {
    const { out, code } = shop.run("kerb", file, ...more, "--format", "json");
    expect(code).toBe(expected);
    expect(problemsAgainst("kerb", out)).toEqual([]);
    return JSON.parse(out);
  };
  const valueOf = (
    kerb: { figures: { of: string; figure: string; value: { value: number } }[] },
    of: string,
    figure: string,
  ) => kerb.figures.find((one) => one.of === of && one.figure === figure)!.value.value;

  beforeAll(() => {
    shop = openWorkshop();
    shop.write(FILE, TEXT);
  });
  afterAll(() => shop.remove());

  it("tells peaks, and why a kerb cannot be passed", () => {
    const { kerbs, cautions } = json("--setup", "over-kerbs");
    expect(cautions).toContain("competent person");
    const [wave, chicane, slow] = kerbs;
    expect(slow.absent).toContain("no speed");
    // A wave far longer than the car is stiff: both sides alike, no wheel in the air.
    expect(valueOf(wave, "front left", "most tyre load")).toBeCloseTo(
      valueOf(wave, "front right", "most tyre load"),
      0,
    );
    expect(valueOf(wave, "front left", "time off the ground")).toBe(0);
    const before = valueOf(chicane, "front left", "tyre load before");
    expect(valueOf(chicane, "front left", "most tyre load")).toBeGreaterThan(2 * before);
    expect(valueOf(chicane, "front left", "time off the ground")).toBeGreaterThan(0.01);
    expect(valueOf(chicane, "front left", "most bump travel")).toBeGreaterThan(5);
  });

  it("tells a case that is not there, and ends as a file with an error does", () => {
    shop.write("lost.crank", LOST);
    const { kerbs } = told("lost.crank", 1, ["--setup", "over-kerbs", "--kerb", "nowhere"]);
    expect(kerbs[0].absent).toContain("no case nowhere");
  });

  it("takes what a set-up overrides: a higher kerb strikes harder", () => {
    const [one, higher] = ["over-kerbs", "higher"].map((setup) => json("--setup", setup, "--kerb", "chicane").kerbs[0]);
    expect(valueOf(higher, "front left", "most tyre load")).toBeGreaterThan(
      1.1 * valueOf(one, "front left", "most tyre load"),
    );
  });

  it("gives the course over time as CSV, the rear behind the front by the wheelbase", () => {
    const { out } = shop.run("kerb", FILE, "--setup", "over-kerbs", "--kerb", "wave", "--format", "csv");
    const [head, ...rows] = out
      .trim()
      .split("\n")
      .map((line) => line.split(","));
    const column = (name: string) => rows.map((row) => Number(row[head!.indexOf(name)]));
    const time = column("time s");
    const highest = (name: string) => time[column(name).indexOf(Math.max(...column(name)))]!;
    const lag = highest("road RL mm") - highest("road FL mm");
    expect(rows.length).toBeGreaterThan(500);
    // 60 km/h, and a wheelbase between 2.2 and 3.5 m.
    expect(lag).toBeGreaterThan(2.2 / (60 / 3.6));
    expect(lag).toBeLessThan(3.5 / (60 / 3.6));
    expect(time.every((t, i) => i === 0 || t > time[i - 1]!)).toBe(true);
  });

  it("says the cautions where loads are handed over as text, and what it does not know", () => {
    const { out } = shop.run("kerb", FILE, "--setup", "over-kerbs", "--kerb", "chicane");
    expect(out).toContain("Calculated figures are an aid");
    expect(out).toContain("in hairpin at 80 km/h");
    expect(shop.run("kerb", FILE, "--setup", "over-kerbs", "--kerb", "none")).toMatchObject({ code: 2 });
    expect(shop.run("kerb", "quill/quill.crank")).toMatchObject({ code: 2 });
    expect(shop.run("kerb", "--help").out).toContain("Example:");
  });
});
