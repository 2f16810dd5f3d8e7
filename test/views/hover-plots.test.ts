/** Plots in hovers: of an element, of rows, of a CSV file; none for who does not draw images. */
import sax from "sax";
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { samples } from "../support/samples.js";
import { carText, cornerSpring } from "../support/written-car.js";

const root = "memory:///club/";

function hover(files: Readonly<Record<string, string>>, name: string, marker: string, images = true): string {
  const workspace = createWorkspace({
    read: (uri) => {
      const text = files[uri.slice(root.length)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
  const offset = (files[name] ?? "").indexOf(marker);
  if (offset < 0) throw new Error(`${name} does not say ${marker}`);
  return hoverAt(workspace.file(root + name), offset + 1, images)?.markdown ?? "";
}

/** The images of a hover: what they say, and their drawing. */
function imagesOf(markdown: string): readonly { readonly words: string; readonly svg: string }[] {
  const found = markdown.matchAll(/!\[([^\]]*)\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/g);
  return [...found].map(([, words = "", svg = ""]) => ({ words, svg: Buffer.from(svg, "base64").toString("ascii") }));
}

const dots = (svg: string): number => svg.split('fill="#3a82c8"').length - 1;

const heaveSpring = `${cornerSpring}
    spring third for heave {
      rate 55 N/mm
      gap 2 mm
      between left.rocker.third and right.rocker.third
    }`;

describe("the hover on an element", () => {
  const car = { "car.crank": carText({ elements: heaveSpring }) };

  it("has its force over the deflection and its rate at the axle over the travel, in words too", () => {
    const [law, wheels, ...more] = imagesOf(hover(car, "car.crank", "spring third"));
    expect(more).toEqual([]);
    expect(law?.words).toMatch(
      /^front\.third, force against compression: from .* N at .* mm to .*; begins to carry 0 N at 2 mm/,
    );
    expect(wheels?.words).toMatch(/rate at the axle against wheel travel in heave: from .*N\/mm at -30 mm/);
    for (const image of [law, wheels])
      expect(() =>
        sax
          .parser(true)
          .write(image?.svg ?? "<")
          .close(),
      ).not.toThrow();
    expect(law?.svg).toContain(">force, N<");
  });

  it("has one on an override too", () => {
    const setup = `use "car.crank"\n\nsetup stiff from tried {\n  front.third.rate 80 N/mm\n}\n`;
    expect(imagesOf(hover({ ...car, "stiff.crank": setup }, "stiff.crank", "front.third.rate"))).toHaveLength(2);
  });

  it("shows a damper's force over its speed", () => {
    const [law] = imagesOf(hover(samples, "systems/side-damper.crank", "damper side for corner"));
    expect(law?.words).toMatch(/force against speed: from -\d+ N at -250 mm\/s to \d+ N at 250 mm\/s; table ends/);
    expect(law?.svg).toContain("with its gas at rest");
  });

  it("tells a corner pair once where both sides are alike, and each by itself where they are not", () => {
    const corner = { "car.crank": carText({ elements: cornerSpring }) };
    const alike = hover(corner, "car.crank", "spring side");
    expect(alike.match(/own rate/g)).toHaveLength(1);
    expect(alike).toMatch(/^\*\*front\.side\*\*, both sides alike · spring for corner/);
    expect(imagesOf(alike).map(({ words }) => words.split(",")[1])).toEqual([" both sides", " both sides"]);
    const stiffer = `use "car.crank"\n\nsetup apart from tried {\n  front.left.side.rate 80 N/mm\n  front.side.acts in-compression\n}\n`;
    const apart = hover({ ...corner, "apart.crank": stiffer }, "apart.crank", "front.side.acts");
    expect(apart.match(/own rate/g)).toHaveLength(2);
    expect(imagesOf(apart).map(({ words }) => words.split(".")[1])).toEqual(["left", "left", "right", "right"]);
  });

  it("is of the car alone, whatever set-ups the file derives from it", () => {
    const both = `${car["car.crank"]}\nsetup stiff from tried {\n  front.third.rate 80 N/mm\n}\n`;
    expect(hover({ "car.crank": both }, "car.crank", "spring third").match(/own rate/g)).toHaveLength(1);
  });

  it("has none where images are not drawn, and what it says is the same", () => {
    const plain = hover(car, "car.crank", "spring third", false);
    expect(plain).not.toContain("data:");
    expect(hover(car, "car.crank", "spring third").replaceAll(/!\[[^\]]*\]\([^)]*\)\n*/g, "")).toContain(
      plain.split("---")[0]?.trim(),
    );
  });

  it("has none where there is no curve to draw", () => {
    const bare = { "car.crank": "car bare {\n  axle front {\n    spring s for heave {\n    }\n  }\n}\n" };
    expect(imagesOf(hover(bare, "car.crank", "spring s"))).toEqual([]);
  });
});

describe("the hover on a table", () => {
  it("draws rows with their points, on the shelf as in a car", () => {
    const files = { "parts.crank": samples["quill/parts.crank"] ?? "" };
    const [plot, ...more] = imagesOf(hover(files, "parts.crank", "bump {"));
    expect(more).toEqual([]);
    expect(plot?.words).toMatch(/^bump: a curve through \d+ N at \d+ mm\/s, /);
    expect(plot?.svg).toMatch(/>force, N<.*>speed, mm\/s<.*> ?\d points</s);
  });

  it("draws a CSV file, each side of a damper from the origin", () => {
    const file = samples["systems/bench.csv"] ?? "";
    const count = file.split("\n").filter((row) => /^-?\d/.test(row)).length;
    const [plot] = imagesOf(hover(samples, "systems/side-damper.crank", 'curve from csv "bench.csv"'));
    expect(plot?.svg).toContain(`>${count} points<`);
    expect(dots(plot?.svg ?? "")).toBe(count + 1);
  });

  it("draws a table of motion and one of areas through their points alone", () => {
    const areas = imagesOf(hover(samples, "systems/gas-spring.crank", "area-curve {"));
    expect(areas[0]?.words).toMatch(/^area-curve: a curve through 707 mm\^2 at 0 mm, 640 mm\^2 at 10 mm/);
    const car = carText({
      elements: `spring third for heave {\n rate 50 N/mm\n ratio heave { -20 mm: -14 mm, 0 mm: 0 mm, 20 mm: 16 mm }\n }`,
      linkage: "",
    });
    expect(imagesOf(hover({ "car.crank": car }, "car.crank", "ratio heave"))[0]?.svg).toContain(">deflection, mm<");
  });

  it.each([
    ["a key that has to be worked out", "{ 10 mm: 20 N, (5 + 6) mm: 40 N }"],
    ["keys that fall", "{ 10 mm: 20 N, 5 mm: 40 N }"],
    ["one row", "{ 10 mm: 20 N }"],
    ["a unit that does not exist", "{ 10 mm: 20 N, 20 furlong: 40 N }"],
    ["a file that is not there", 'from csv "gone.csv"'],
    ["a file outside", 'from csv "../../../gone.csv"'],
  ])("draws nothing of %s", (_, written) => {
    const car = carText({ elements: `bump-stop stop for heave {\n curve ${written}\n }` });
    expect(imagesOf(hover({ "car.crank": car }, "car.crank", "curve"))).toEqual([]);
  });
});
