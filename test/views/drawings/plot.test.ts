/** Plots: well-formed whatever is drawn, told apart without colour, and visible on light and dark. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { legendRows } from "../../../server/views/drawings/legend.js";
import { colours, lineStyles, PAPER, type SignName, signs } from "../../../server/views/drawings/palette.js";
import { drawPlot, type Plot, svgOf } from "../../../server/views/drawings/plot.js";
import { scaleOf } from "../../../server/views/drawings/scale.js";
import { dataAddress } from "../../../server/views/drawings/svg.js";
import { elementsOf } from "../../support/svg-elements.js";

const plot: Plot = {
  description: "front.third, force against compression",
  x: { name: "compression", unit: "mm" },
  y: { name: "force", unit: "N", fromZero: true },
  lines: [
    {
      style: "main",
      points: [
        { x: -10, y: 0 },
        { x: 2, y: 0 },
        { x: 20, y: 990 },
      ],
    },
    {
      style: "dashed",
      label: "with its gas at rest",
      points: [
        { x: -10, y: 90 },
        { x: 20, y: 1080 },
      ],
    },
  ],
  marks: [
    { sign: "triangle", label: "begins to carry at 2 mm", points: [{ x: 2, y: 0 }] },
    { sign: "dot", label: "at rest at 0 mm", points: [{ x: 0, y: 0 }] },
  ],
};

const drawn = (one: Plot): string => svgOf([drawPlot(one)], one.description);

describe("a plot", () => {
  it("is this drawing", () => {
    expect(drawn(plot).replaceAll("><", ">\n<")).toMatchSnapshot();
  });

  it("has its axes, units, lines, marks and words", () => {
    const svg = drawn(plot);
    expect(svg).toMatch(/>force, N<.*>compression, mm</s);
    expect(svg).toMatch(/>begins to carry at 2 mm<.*>at rest at 0 mm</s);
    const elements = elementsOf(svg);
    expect(elements[0]).toMatchObject({ name: "svg", attributes: { role: "img" } });
    expect(elements.map(({ name }) => name)).toEqual(expect.arrayContaining(["title", "desc"]));
    expect(elements.filter(({ attributes }) => attributes["stroke-dasharray"] === "6 3")).toHaveLength(2);
  });

  it("is well-formed and finite for any points, names and units", () => {
    const value = fc.oneof(fc.double(), fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constant(0));
    const points = fc.array(fc.record({ x: value, y: value }), { maxLength: 6 });
    const text = fc.string({ unit: "binary", maxLength: 20 });
    const any = fc.record({
      description: text,
      x: fc.record({ name: text, unit: text }),
      y: fc.record({ name: text, unit: text, fromZero: fc.boolean() }),
      lines: fc.array(fc.record({ points, style: fc.constantFrom("main" as const, "dotted" as const) }), {
        maxLength: 2,
      }),
      marks: fc.array(
        fc.record({ points, label: text, sign: fc.constantFrom(...(Object.keys(signs) as SignName[])) }),
        { maxLength: 3 },
      ),
    });
    fc.assert(
      fc.property(any, (one) => {
        const svg = drawn(one);
        for (const { attributes } of elementsOf(svg)) {
          expect(Object.values(attributes).join(" ")).not.toMatch(/NaN|Infinity|undefined/);
        }
        expect(svg).toMatch(/^[\x20-\x7e]*$/);
      }),
    );
  });

  it("goes into an address that says the same", () => {
    const address = dataAddress(drawn(plot));
    expect(address).toMatch(/^data:image\/svg\+xml;base64,[A-Za-z0-9+/=]+$/);
    expect(Buffer.from(address.split(",")[1] ?? "", "base64").toString()).toBe(drawn(plot));
  });

  it("stands below another one in one image", () => {
    const [one, two] = [drawPlot(plot), drawPlot({ ...plot, marks: [] })];
    const [root] = elementsOf(svgOf([one, two], "both"));
    expect(Number(root?.attributes["height"])).toBeCloseTo(one.height + two.height, 6);
    expect(elementsOf(svgOf([], "none"))[0]?.attributes["width"]).toBe("1");
  });
});

describe("an axis", () => {
  it("has round ticks that hold every value, and a width for a single one", () => {
    const { from, to, ticks, text } = scaleOf([-23.4, 18.2], 5, false);
    expect([from, to]).toEqual([-30, 20]);
    expect(ticks.map(text)).toEqual(["-30", "-20", "-10", "0", "10", "20"]);
    for (const alone of [0, 7, -1e-9]) {
      const scale = scaleOf([alone], 5, false);
      expect(scale.from).toBeLessThan(scale.to);
      expect(scale.from <= alone && alone <= scale.to).toBe(true);
    }
  });

  it("draws what is nearly level as nearly level", () => {
    const { from, to } = scaleOf([0.5934, 0.5978], 4, false);
    expect(to - from).toBeGreaterThanOrEqual(0.059);
  });
});

describe("the palette", () => {
  /** Relative luminance and contrast of two colours. Source: WCAG 2.2, definitions. */
  const luminance = (colour: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((start) => {
      const share = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a: string, b: string): number => {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
  };

  it("lies on a ground of its own, all of it, so that the editor's theme does not matter", () => {
    const [, width, height] = /^<svg [^>]*width="([\d.]+)" height="([\d.]+)"/.exec(drawn(plot)) ?? [];
    expect(drawn(plot)).toContain(`<rect width="${width}" height="${height}" rx="3" fill="${PAPER}"/>`);
  });

  it.each(Object.entries(colours))("%s stands off its ground by 3 to 1, which WCAG asks of graphics", (_, colour) => {
    expect(contrast(colour, PAPER)).toBeGreaterThanOrEqual(3);
  });

  it("has all of its text stand off by 4.5 to 1, which WCAG asks of small text", () => {
    const fills = [...drawn(plot).matchAll(/<text [^>]*fill="(#[\da-f]{6})"/g)].map(([, fill = ""]) => fill);
    expect(fills.length).toBeGreaterThan(10);
    for (const fill of fills) expect(contrast(fill, PAPER)).toBeGreaterThanOrEqual(4.5);
  });

  it("tells lines apart by their dashes and marks by their shapes, whatever the colour", () => {
    const dashes = Object.values(lineStyles).map((style) => style.dashes ?? "none");
    expect(new Set(dashes).size).toBe(dashes.length);
    const shapes = Object.values(signs).map(({ shape }) => shape);
    expect(new Set(shapes).size).toBe(shapes.length);
  });
});

describe("a legend", () => {
  it("puts as much in a row as fits, and never loses an entry", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 60 })), (labels) => {
        const entries = labels.map((label) => ({ label }));
        const rows = legendRows(entries, 300, 6);
        expect(rows.flat()).toEqual(entries);
        for (const row of rows) {
          const width = row.reduce((sum, { label }) => sum + 28 + 6 * label.length, -12);
          expect(row.length === 1 || width <= 300).toBe(true);
        }
      }),
    );
  });
});
