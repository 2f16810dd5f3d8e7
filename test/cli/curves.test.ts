import sax from "sax";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

describe("bellcrank curves", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  const curves = (...more: readonly string[]) =>
    shop.run("curves", "quill/quill.crank", "--element", "front.third", ...more);

  it("gives JSON that its schema describes, law first, and the same figures as CSV", () => {
    const { out, code } = curves("--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("curves", out)).toEqual([]);
    const found = JSON.parse(out);
    expect(found).toMatchObject({ schema: 1, car: "quill", setup: null, element: "front.third", kind: "spring" });
    const [law] = found.curves;
    expect(law).toMatchObject({ title: "force against compression", x: { unit: "mm" }, y: { unit: "N" } });
    const rows = curves("--format", "csv").out.trim().split("\n");
    expect(rows[0]).toBe("curve,line,mark,x,x unit,y,y unit");
    const [x, y] = law.points[1];
    expect(rows).toContain(`force against compression,,,${x},mm,${y},N`);
  });

  it("says in JSON why there is no curve", () => {
    shop.write(
      "loose.crank",
      'car loose "Loose" {\n  axle front {\n    track 1480 mm\n    spring third for heave {\n      ratio heave 0.8\n    }\n  }\n}\n',
    );
    const { out, code } = shop.run("curves", "loose.crank", "--element", "front.third", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("curves", out)).toEqual([]);
    expect(JSON.parse(out).curves[0].absent).toContain("it has no rate");
    expect(shop.run("curves", "loose.crank", "--element", "front.third").out).toContain("none: it has no rate");
  });

  it("gives one SVG image of all curves", () => {
    const { out } = curves("--format", "svg");
    const titles: string[] = [];
    const parser = sax.parser(true);
    parser.onopentag = ({ name }) => titles.push(name);
    parser.write(out).close();
    expect(titles.filter((name) => name === "desc")).toHaveLength(3);
    expect(out).not.toMatch(/NaN|Infinity/);
  });

  it("draws in the terminal with the marks below", () => {
    const { out } = curves();
    expect(out).toMatch(/force against compression\nforce, N over compression, mm\n/);
    expect(out).toMatch(/┤/);
    expect(out).toMatch(/begins to carry +-?\d/);
    expect(out).not.toMatch(/NaN|Infinity|undefined/);
  });

  it("takes a corner element with and without its side", () => {
    const side = shop.run("curves", "quill/quill.crank", "--element", "front.side", "--format", "csv");
    expect(side.code).toBe(0);
    const left = shop.run("curves", "quill/quill.crank", "--element", "front.left.side", "--format", "csv");
    expect(left.out).toBe(side.out);
  });

  it("asks for an element, and names those that there are", () => {
    expect(shop.run("curves", "quill/quill.crank")).toMatchObject({ code: 2 });
    const wrong = shop.run("curves", "quill/quill.crank", "--element", "front.fourth");
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('quill has no element "front.fourth"; it has front.left.corner-bar');
    expect(shop.run("curves", "--help").out).toContain("Example:");
  });
});
