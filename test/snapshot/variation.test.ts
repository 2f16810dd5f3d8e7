import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { quillParts, quillText } from "../support/quill.js";

const wet = `use "quill.crank"

setup wet from quill {
  front.third.rate 45 N/mm
  front.ride-height by +2 mm
}
`;
const files: Readonly<Record<string, string>> = {
  ...quillParts,
  "quill.crank": quillText,
  "a+b.crank": quillText,
  "wet.crank": wet,
};

const opened = (name: string) =>
  createWorkspace({
    read: (uri) => {
      const text = files[uri.slice("memory:///club/".length)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  }).file(`memory:///club/${name}`);

const heaveRate = (varied: ReturnType<ReturnType<typeof opened>["vary"]>) =>
  varied.car?.analysis.axles.front?.rates.heaveRate;

describe("a set-up that stands in no file", () => {
  it("is what the same lines in a file would be", () => {
    const varied = opened("quill.crank").vary("quill", ["front.third.rate 45 N/mm", "front.ride-height by +2 mm"]);
    expect(varied.complaints).toEqual([]);
    const written = opened("wet.crank").cars[0];
    expect(heaveRate(varied)).toBe(written?.analysis.axles.front?.rates.heaveRate);
    expect(varied.car?.model.axles.front?.drawnRideHeight?.value).toBe(0.032);
  });

  it("adds to a set-up what that says already, parts and `by` included", () => {
    const varied = opened("wet.crank").vary("wet", ["front.ride-height by +1 mm", "front.corner-bar.fit TB-105"]);
    expect(varied.complaints).toEqual([]);
    expect(varied.car?.model.axles.front?.rideHeight?.value).toBeCloseTo(0.035, 12);
    expect(varied.car?.model.axles.front?.elements[0]?.part?.name).toBe("TB-105");
    expect(varied.car?.model.axles.front?.elements.find(({ name }) => name === "third")).toBeDefined();
  });

  it("is read in the file itself where the host spells its name in a way that `use` would not", () => {
    const varied = opened("a+b.crank").vary("quill", ["front.third.rate 45 N/mm"]);
    expect(varied.complaints).toEqual([]);
    expect(heaveRate(varied)).toBe(heaveRate(opened("quill.crank").vary("quill", ["front.third.rate 45 N/mm"])));
  });

  it("tells what is wrong with the lines, in the words of the checks", () => {
    const of = (line: string) => opened("quill.crank").vary("quill", [line]).complaints.join("\n");
    expect(of("front.thrid.rate 45 N/mm")).toContain("third");
    expect(of("front.third.rate 45 mm")).toContain("mm");
    expect(of("front.third.rate -45 N/mm")).not.toBe("");
    expect(of("front.third.rate 55 N/mm")).toBe("");
    expect(of("front.third.rate }")).not.toBe("");
  });

  it("leaves the file as it is", () => {
    const file = opened("quill.crank");
    const before = file.cars[0]?.analysis.axles.front?.rates.heaveRate;
    file.vary("quill", ["front.third.rate 45 N/mm"]);
    expect(file.cars.map(({ model }) => model.name)).toEqual(["quill"]);
    expect(file.cars[0]?.analysis.axles.front?.rates.heaveRate).toBe(before);
  });
});
