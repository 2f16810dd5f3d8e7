/** What a hover says of stress, room, stages, the changeover of link springs and inertance. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { brokenSamples } from "../support/shared-car.js";

const base = "memory:///club/";
const sample = (path: string): string => readFileSync(new URL(`../../samples/${path}`, import.meta.url), "utf8");

function hover(files: Readonly<Record<string, string>>, name: string, at: string): string {
  const workspace = createWorkspace({
    read: (uri) => {
      const text = files[uri.slice(base.length)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
  const file = workspace.file(base + name);
  return hoverAt(file, file.text.indexOf(at) + 1)?.markdown ?? "";
}

const onCoils = (at: string): string => hover(brokenSamples, "coils.crank", at);
const quill = Object.fromEntries(["parts", "quill"].map((name) => [`${name}.crank`, sample(`quill/${name}.crank`)]));

describe("the card of an element", () => {
  it("holds the stress of a coil against what is usual, and says what is left to its solid length", () => {
    const card = onCoils("corner-coil for");
    expect(card).toMatch(/coil in shear: 137 MPa at rest, 442 MPa at most, of 1006 MPa that are usual \(65 % of/);
    expect(card).toMatch(/coil 15\d mm long at rest, 105 mm closed up: 33\.6 mm left at least over the travel/);
  });

  it("says what is left of a damper's stroke, from rest and over the travel", () => {
    expect(onCoils("side for corner")).toMatch(
      /stroke in bump 33 mm from rest \(14\.5 mm left over the travel\), in rebound 27 mm from rest \(9\.4\d? mm left/,
    );
  });

  it("says what the maker allows where that is stated", () => {
    const files = {
      "car.crank": (brokenSamples["coils.crank"] ?? "").replace("bore 10 mm", "bore 10 mm, allowable-stress 650 MPa"),
    };
    expect(hover(files, "car.crank", "bar for roll")).toContain("at most, of 650 MPa that its maker allows");
  });

  it("tells of a bar both its stresses, and when its link springs are used up", () => {
    const rear = hover(quill, "quill.crank", "anti-roll-bar bar for roll {\n      fit RB-15");
    expect(rear).toMatch(/torsion bar in shear: 0 MPa at rest, 247 MPa at most/);
    expect(rear).toMatch(/blade in bending: 0 MPa at rest, 769 MPa at most, of 900 MPa/);
    expect(rear).toMatch(
      /link springs used up at [\d.]+ deg of roll \([\d.]+ deg against the ground\), at [\d.]+ g; then the bar alone/,
    );
    expect(rear).toMatch(/a stage is used up at .* in roll, [\d.]+ mm at each wheel/);
  });

  it("tells of an inerter what it adds to the mass at the wheels", () => {
    const inerters = { "inerters.crank": sample("systems/inerters.crank") };
    expect(hover(inerters, "inerters.crank", "side-inerter for corner")).toMatch(
      /adds as mass at the wheels [\d.]+ kg in heave, [\d.]+ kg\S+2 in roll, [\d.]+ kg at its own wheel/,
    );
  });
});
