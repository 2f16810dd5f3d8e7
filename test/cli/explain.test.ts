/** `bellcrank explain`: chains, blocks, who changes a value, and what is odd to ask. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const lets = `use "quill/wet.crank"
let soft = 20 N/mm
let spring-rate = 2 * soft

setup dusk from quarrow-wet {
  front.third.rate spring-rate
  front.right.side.fit V-24
  front.ride-height by +1 mm
}
`;

const circle = `use "quill/quill.crank"
setup one from two { front.third.rate 50 N/mm }
setup two from one { front.third.rate 51 N/mm }
setup lost from nobody { front.third.rate 52 N/mm }
setup fine from quill { front.third.rate 53 N/mm }
`;

interface Told {
  readonly path: string;
  readonly value: string | null;
  readonly steps: readonly {
    readonly kind: string;
    readonly by: string;
    readonly value: string | null;
    readonly text: string;
    readonly place: { readonly file: string; readonly line: number; readonly column: number } | null;
  }[];
  readonly values: readonly { readonly path: string; readonly value: string; readonly by: string }[];
  readonly changedBy:
    | readonly { readonly setup: string; readonly now: string | null; readonly effect: string }[]
    | null;
}

describe("bellcrank explain", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("dusk.crank", lets);
    shop.write("circle.crank", circle);
  });
  afterAll(() => shop.remove());

  function told(...args: string[]): Told {
    const { out, code, err } = shop.run("explain", ...args, "--format", "json");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(problemsAgainst("explain", out)).toEqual([]);
    return JSON.parse(out) as Told;
  }
  const chain = ({ steps }: Told): readonly string[] =>
    steps.map(
      ({ by, value, place }) => `${by}: ${value ?? "-"}${place === null ? "" : ` (${place.file}:${place.line})`}`,
    );

  it("tells the lines of a value, the one in force first, where they are written", () => {
    const { out, code } = shop.run("explain", "quill/wet.crank", "front.third.rate");
    expect(code).toBe(0);
    expect(out.split("\n")).toEqual([
      "front.third.rate of quarrow-wet: 45 N/mm",
      "",
      "value    said by             line                      where",
      expect.stringMatching(/^45 N\/mm {2}set-up quarrow-wet {2}front\.third\.rate 45 N\/mm {2}quill\/wet\.crank:\d+$/),
      expect.stringMatching(/^55 N\/mm {2}car quill {11}rate 55 N\/mm {14}quill\/quill\.crank:\d+$/),
      "",
    ]);
    const line = Number(/quill\.crank:(\d+)/.exec(out)?.[1]);
    const source = shop.run("explain", "quill/wet.crank", "front.third.rate", "--format", "json").out;
    expect(source).toContain(`"line": ${line}`);
  });

  it("goes through a set-up of a set-up, sums and lets", () => {
    const rate = told("dusk.crank", "front.third.rate");
    expect(rate.value).toBe("40 N/mm");
    expect(chain(rate)).toEqual([
      "set-up dusk: 40 N/mm (dusk.crank:6)",
      "let spring-rate: - (dusk.crank:3)",
      "let soft: - (dusk.crank:2)",
      expect.stringMatching(/^set-up quarrow-wet: 45 N\/mm/),
      expect.stringMatching(/^car quill: 55 N\/mm/),
    ]);
    const height = told("dusk.crank", "front.ride-height");
    expect(height.steps.map(({ kind, value }) => `${kind} ${value ?? ""}`)).toEqual([
      "adjusted 35 mm",
      "adjusted 34 mm",
      "written 32 mm",
    ]);
  });

  it("tells both sides where they differ, and one side by its path", () => {
    const both = told("dusk.crank", "front.side.fit");
    const right = told("dusk.crank", "front.right.side.fit");
    expect(right.value).toBe("V-24");
    expect(right.steps.map(({ by }) => by)).toEqual(["set-up dusk", "set-up quarrow-wet", "car quill"]);
    expect(told("dusk.crank", "front.left.side.fit").value).toBe("V-18");
    expect([both.value, ...both.values.map(({ value }) => value)]).toContain("V-18");
  });

  it("lists a whole side: its own values, and those that both share", () => {
    const paths = told("dusk.crank", "front.right").values.map(({ path }) => path);
    expect(paths).toContain("front.right.side.fit");
    expect(paths).toContain("front.third.rate");
    expect(paths.some((path) => path.startsWith("front.left."))).toBe(false);
  });

  it("lists the values of a block, or all of them, and what a part brings", () => {
    const block = told("quill/wet.crank", "front.third");
    expect(block.value).toBeNull();
    expect(block.values[0]).toEqual({ path: "front.third.rate", value: "45 N/mm", by: "set-up quarrow-wet" });
    expect(block.values.every(({ path }) => path.startsWith("front.third"))).toBe(true);
    expect(told("quill/wet.crank").values.length).toBeGreaterThan(100);
    expect(told("quill/wet.crank", "front.corner-bar.fit").values).toEqual([
      { path: "front.corner-bar.torsion-bar.diameter", value: "10.5 mm", by: "part TB-105" },
      { path: "front.corner-bar.torsion-bar.length", value: "360 mm", by: "part TB-105" },
    ]);
  });

  it("leads from a part's figure to the shelf and to the lines that fit it", () => {
    const { steps } = told("quill/wet.crank", "front.corner-bar.torsion-bar.diameter");
    expect(steps.map(({ kind, by }) => `${kind} ${by}`)).toEqual([
      "part part TB-105",
      "fitted set-up quarrow-wet",
      "part part TB-110",
      "fitted car quill",
    ]);
    expect(steps[0]?.place?.file).toBe("quill/parts.crank");
  });

  it("tells what is taken out and what nobody wrote", () => {
    const gone = told("quill/wet.crank", "rear.roll-damper.fit");
    expect(gone.value).toBeNull();
    expect(gone.steps[0]).toMatchObject({ kind: "removed", text: "remove rear.roll-damper" });
    const gap = told("quill/wet.crank", "front.third.gap");
    expect(gap.steps).toMatchObject([{ kind: "default", by: "the language", place: null }]);
  });

  it("tells who changes it below a folder, with what that line does", () => {
    const { changedBy } = told("quill/quill.crank", "front.third.rate", "--changed-in", "quill");
    expect(changedBy?.map(({ setup, now }) => `${setup} ${now ?? ""}`)).toEqual([
      "quarrow-dry 60 N/mm",
      "quarrow-wet 45 N/mm",
    ]);
    expect(changedBy?.[1]?.effect).toMatch(/^front heave rate -\d/);
    expect(told("quill/quill.crank", "wheelbase", "--changed-in", "quill").changedBy).toEqual([]);
    expect(told("quill/quill.crank", "wheelbase").changedBy).toBeNull();
    const { out } = shop.run("explain", "quill/quill.crank", "front.third.rate", "--changed-in", ".");
    expect(out).toMatch(/Changed by\n[\s\S]*quarrow-wet {2,}55 N\/mm → 45 N\/mm/);
    expect(out).toContain("dusk.crank:6");
  });

  it("answers for the set-ups of a file that can be worked out, whatever stands beside them", () => {
    const { out, code, err } = shop.run("explain", "circle.crank", "front.third.rate", "--setup", "fine");
    // As with every command, since the file has errors.
    expect(code).toBe(1);
    expect(out).toContain("53 N/mm  set-up fine");
    expect(err).toMatch(/error/);
    expect(shop.run("explain", "circle.crank", "front.third.rate", "--setup", "one").code).toBe(2);
    expect(shop.run("explain", "circle.crank", "front.third.rate", "--setup", "lost").code).toBe(2);
  });

  it("says what could have been meant, and what is missing", () => {
    const wrong = shop.run("explain", "quill/wet.crank", "front.thrid.rate");
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/quarrow-wet has nothing at "front\.thrid\.rate"; did you mean front\.third\.rate/);
    expect(shop.run("explain", "quill/wet.crank", "front..rate").code).toBe(2);
    expect(shop.run("explain", "quill/wet.crank", " front.third.rate ").code).toBe(0);
    expect(shop.run("explain", "quill/wet.crank", "expect").err).toMatch(/an expectation is no value of the car/);
    expect(shop.run("explain", "quill/wet.crank", "x".repeat(5000)).code).toBe(2);
    expect(shop.run("explain", "missing.crank").code).toBe(2);
    expect(shop.run("explain", "quill/parts.crank").code).toBe(2);
    expect(shop.run("explain", "quill/quill.crank", "wheelbase", "--changed-in", "nowhere").code).toBe(2);
  });

  it("helps with examples", () => {
    const { out } = shop.run("explain", "--help");
    expect(out).toContain("Examples:");
    expect(shop.run("--help").out).toMatch(/explain .*Where a value comes from/s);
  });
});
