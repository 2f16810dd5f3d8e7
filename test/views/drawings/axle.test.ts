/** Drawn axles: well-formed for every sample, inside their frame, mirrored, and with every element told by number. */
import { describe, expect, it } from "vitest";
import { axleDrawing, type AxleView } from "../../../server/views/drawings/axle.js";
import { type AxleShape, axleShape } from "../../../server/views/drawings/axle-shape.js";
import { elementsOf, type SvgElement } from "../../support/svg-elements.js";
import { sampleCar, sampleContext, sampleNames } from "../../support/samples.js";

const VIEWS: readonly AxleView[] = ["behind", "left", "above"];

const shapes = sampleNames.flatMap((name) =>
  sampleContext(name).cars.flatMap(({ model }) =>
    (["front", "rear"] as const).flatMap((axle) => {
      const written = model.axles[axle];
      return written === undefined
        ? []
        : [[`${name} ${model.setup ?? model.name} ${axle}`, axleShape(written)] as const];
    }),
  ),
);

const quill = (axle: "front" | "rear"): AxleShape => {
  const written = sampleCar("quill/quill.crank").model.axles[axle];
  if (written === undefined) throw new Error("the sample has both axles");
  return axleShape(written);
};

/** Places of everything that has one, px. */
function placesIn(elements: readonly SvgElement[]): readonly (readonly [number, number])[] {
  const pair = ({ attributes }: SvgElement, x: string, y: string): readonly (readonly [number, number])[] =>
    attributes[x] === undefined ? [] : [[Number(attributes[x]), Number(attributes[y])]];
  return elements.flatMap((element) => [
    ...pair(element, "x1", "y1"),
    ...pair(element, "x2", "y2"),
    ...pair(element, "cx", "cy"),
    ...[...(element.attributes["d"] ?? "").matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    ),
  ]);
}

describe("a drawn axle", () => {
  it("has every sample to draw", () => {
    expect(shapes.length).toBeGreaterThan(30);
  });

  it.each(shapes)("%s is well-formed and inside its frame", (_, shape) => {
    const svg = axleDrawing(shape, { views: VIEWS, before: quill("front") });
    if (svg === undefined) {
      expect(shape.links.length + shape.wheels.length + shape.elements.length).toBe(0);
      return;
    }
    const elements = elementsOf(svg);
    const [, , width = 0, height = 0] = (elements[0]?.attributes["viewBox"] ?? "").split(" ").map(Number);
    const own = placesIn(elementsOf(axleDrawing(shape, { views: VIEWS }) ?? ""));
    expect(own.length).toBeGreaterThan(0);
    for (const [x, y] of own) {
      expect(x).toBeGreaterThanOrEqual(-1);
      expect(x).toBeLessThanOrEqual(width + 1);
      expect(y).toBeGreaterThanOrEqual(-1);
      expect(y).toBeLessThanOrEqual(height + 1);
    }
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it("names every element once, and says what has no place", () => {
    const svg = axleDrawing(quill("front")) ?? "";
    for (const name of ["corner-bar", "side", "third, heave-damper", "roll-damper", "bar"]) expect(svg).toContain(name);
    const rear = sampleCar("tern/tern.crank").model.axles.rear;
    const shape = rear && axleShape(rear);
    expect(shape?.unplaced).toEqual(expect.arrayContaining(["rear.left.coil", "rear.bar"]));
    expect(shape && axleDrawing(shape)).toContain("not drawn, by ratio: coil, side, stop, bar");
  });

  it("is the mirror image of itself where the car is", () => {
    const { links, wheels, rockers } = quill("rear");
    const mirrored = (y: number): number => -y;
    const ys = links.flatMap(({ from, to }) => [from[1], to[1]]).concat(wheels.map(({ centre }) => centre[1]));
    expect(ys.map(mirrored).sort((a, b) => a - b)).toEqual([...ys].sort((a, b) => a - b));
    expect(rockers).toHaveLength(2);
  });

  it("leans a wheel inwards at the top where its camber is negative", () => {
    const [left, right] = elementsOf(axleDrawing(quill("front")) ?? "").filter(({ name }) => name === "rect");
    // The left one stands on the left of the paper, so that its top goes to the right: clockwise.
    expect(left?.attributes["transform"]).toMatch(/^rotate\(2\.00 /);
    expect(right?.attributes["transform"]).toMatch(/^rotate\(-2\.00 /);
    expect(Number(left?.attributes["x"])).toBeLessThan(Number(right?.attributes["x"]));
  });

  it("marks what it is asked to, by filling the tag", () => {
    const filled = (svg: string | undefined): number =>
      elementsOf(svg ?? "").filter(({ name, attributes }) => name === "circle" && attributes["fill"] === "#1a1a1a")
        .length;
    expect(filled(axleDrawing(quill("front")))).toBe(0);
    expect(filled(axleDrawing(quill("front"), { marked: new Set(["front.third"]) }))).toBe(1);
  });

  it("of a car with odd names stays well-formed", () => {
    const shape = quill("front");
    const odd = {
      ...shape,
      elements: shape.elements.map((one) => ({ ...one, path: `front.<&"'\u0001é ${one.path}` })),
    };
    expect(() => elementsOf(axleDrawing(odd) ?? "")).not.toThrow();
  });
});
