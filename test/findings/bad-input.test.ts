/**
 * Bad input, system by system: the finding that it gets and the value at which that stands, and that all the rest of the
 * car is computed as if it were not there.
 */
import { describe, expect, it } from "vitest";
import type { ElementFigures } from "../../server/analyses/results.js";
import type { RuleContext } from "../../server/findings/context.js";
import { runRules } from "../../server/findings/run.js";
import { afterFix, fixesFor } from "../support/check-fixes.js";
import { sampleContext } from "../support/samples.js";

interface Bad {
  readonly what: string;
  /** The sample under samples/systems, its text and what stands there instead. */
  readonly sample: string;
  readonly from: string;
  readonly to: string;
  /** Rules with the text that they underline. */
  readonly found: readonly string[];
  /** Names of the elements that rest on it. */
  readonly own: readonly string[];
}

type Row = readonly [what: string, from: string, to: string, ...found: readonly string[]];

/** @param own the elements that rest on what is spoiled */
const inSample = (sample: string, own: readonly string[], rows: readonly Row[]): readonly Bad[] =>
  rows.map(([what, from, to, ...found]) => ({ what, sample: `systems/${sample}.crank`, own, from, to, found }));

const table: readonly Bad[] = [
  ...inSample(
    "coil",
    ["coil"],
    [
      ["wire of nothing", "wire 9.5 mm", "wire 0 mm", "range-violated at 0 mm"],
      ["negative wire", "wire 9.5 mm", "wire -9.5 mm", "range-violated at -9.5 mm"],
      ["coil diameter of nothing", "mean-diameter 46 mm", "mean-diameter 0 mm", "range-violated at 0 mm"],
      [
        "wire thicker than its coil",
        "mean-diameter 46 mm",
        "mean-diameter 9 mm",
        "implausible-value at 9 mm",
        "unbuildable at C-92",
      ],
      ["no turns", "active-turns 9,", "active-turns 0,", "range-violated at 0"],
      ["negative free length", "free-length 165 mm", "free-length -165 mm", "range-violated at -165 mm"],
      ["fewer turns than work", "active-turns 9,", "active-turns 9, total-turns 5,", "unbuildable at C-92"],
      [
        "bind length above the free one",
        "free-length 165 mm",
        "free-length 165 mm, bind-length 200 mm",
        "coil-bind at C-92",
      ],
      ["coil without modulus", "active-turns 9,", "active-turns 9, modulus 0 GPa,", "range-violated at 0 GPa"],
    ],
  ),
  ...inSample(
    "heave-together",
    ["third"],
    [
      ["no rate", "rate 55 N/mm", "rate 0 N/mm", "range-violated at 0 N/mm"],
      ["negative rate", "rate 55 N/mm", "rate -55 N/mm", "range-violated at -55 N/mm"],
      ["negative gap", "gap 2 mm", "gap -2 mm", "range-violated at -2 mm"],
      ["gap beyond the stroke", "gap 2 mm", "gap 60 mm", "gap-beyond-travel at gap 60 mm { step 0.5 mm }"],
      [
        "eyes that fall together",
        "spring third for heave {\n      rate 55 N/mm\n      gap 2 mm { step 0.5 mm }\n      between left.rocker.third and right.rocker.third",
        "spring third for heave {\n      rate 55 N/mm\n      between left.rocker.third and left.rocker.third",
        "unbuildable at third",
      ],
    ],
  ),
  ...inSample(
    "heave-apart",
    ["third"],
    [
      ["negative preload", "preload 400 N", "preload -400 N", "range-violated at -400 N"],
      ["gap and preload", "preload 400 N { step 20 N }", "preload 400 N\n      gap 2 mm", "unbuildable at gap 2 mm"],
    ],
  ),
  ...inSample(
    "double-acting",
    ["third"],
    [
      ["no knee", "knee 8 mm", "knee 0 mm", "range-violated at 0 mm"],
      [
        "hard below soft",
        "soft 40 N/mm, knee 8 mm, hard 110 N/mm",
        "soft 40 N/mm, knee 8 mm, hard 30 N/mm",
        "unbuildable at hard 30 N/mm",
      ],
      ["rows out of order", "4 mm: 165 N, 8 mm: 340 N", "8 mm: 340 N, 4 mm: 165 N", "table-order at 4 mm"],
    ],
  ),
  ...inSample(
    "torsion-bar",
    ["corner-bar"],
    [["bar of nothing", "diameter 11", "diameter 0", "range-violated at 0 mm"]],
  ),
  ...inSample(
    "stacks",
    ["coil"],
    [
      [
        "tender without rate",
        "tender { rate 160 N/mm, travel 11 mm }",
        "tender { rate 0 N/mm, travel 11 mm }",
        "range-violated at 0 N/mm",
      ],
      [
        "tender without travel",
        "tender { rate 160 N/mm, travel 11 mm }",
        "tender { rate 160 N/mm, travel -1 mm }",
        "range-violated at -1 mm",
      ],
    ],
  ),
  ...inSample(
    "stacks",
    // Where the coil stands depends on what the stop carries.
    ["third-stop", "coil"],
    [
      ["power law exponent 0", "exponent 2", "exponent 0", "range-violated at 0"],
      [
        "power law deflection 0",
        "deflection 10 mm, exponent 2",
        "deflection 0 mm, exponent 2",
        "range-violated at 0 mm",
      ],
      ["power law force negative", "force 2500 N", "force -2500 N", "range-violated at -2500 N"],
      [
        "stop gap beyond the stroke",
        "gap 12 mm",
        "gap 120 mm",
        "gap-beyond-travel at gap 120 mm",
        "implausible-value at 120 mm",
      ],
    ],
  ),
  ...inSample(
    "bump-stops",
    ["side-stop"],
    [
      [
        "negative packer",
        "packer 3 mm",
        "packer -3 mm",
        "range-violated at -3 mm",
        "override-without-target at packer",
      ],
      ["exponent below one", "exponent 2.2", "exponent 0.5", "range-violated at 0.5"],
    ],
  ),
  ...inSample(
    "bump-stops",
    ["heave-stop"],
    [["csv missing", '"foam.csv"', '"fom.csv"', 'file-not-found at "fom.csv"']],
  ),
  ...inSample(
    "heave-together",
    ["heave-damper"],
    [
      [
        "no damping",
        "bump { knee 50 mm/s, slow 2.8 N*s/mm, fast 1.2 N*s/mm }",
        "bump { knee 0 mm/s, slow 2.8 N*s/mm, fast 1.2 N*s/mm }",
        "range-violated at 0 mm/s",
      ],
      ["damping slow 0", "slow 2.8 N*s/mm, fast 1.2", "slow 0 N*s/mm, fast 1.2", "range-violated at 0 N*s/mm"],
      ["stroke upside down", "stroke -40 .. 40 mm", "stroke 40 .. -40 mm", "wrong-form at 40 .. -40 mm"],
    ],
  ),
  ...inSample(
    "double-acting",
    ["heave-damper"],
    [["damping negative", "damping 2.6 N*s/mm", "damping -2.6 N*s/mm", "range-violated at -2.6 N*s/mm"]],
  ),
  ...inSample(
    "side-damper",
    ["side"],
    [
      ["a damper force below nought", "25 mm/s: 100 N,", "25 mm/s: -100 N,", "unbuildable at V-48"],
      [
        "damper rows out of order",
        "25 mm/s: 100 N, 50 mm/s: 200 N",
        "50 mm/s: 200 N, 25 mm/s: 100 N",
        "table-order at 25 mm/s",
      ],
      [
        "damper rows twice",
        "25 mm/s: 100 N, 50 mm/s: 200 N",
        "25 mm/s: 100 N, 25 mm/s: 200 N",
        "table-order at 25 mm/s",
      ],
      [
        "length upside down",
        "gas-force 90 N\n    gas-rate 0.6 N/mm\n    length 370 .. 440 mm",
        "gas-force 90 N\n    gas-rate 0.6 N/mm\n    length 440 .. 370 mm",
        "wrong-form at 440 .. 370 mm",
      ],
      [
        "negative length",
        "gas-rate 0.6 N/mm\n    length 370 .. 440 mm",
        "gas-rate 0.6 N/mm\n    length -370 .. 440 mm",
        "range-violated at -370",
      ],
      [
        "gas force negative",
        "gas-force 90 N\n    gas-rate",
        "gas-force -90 N\n    gas-rate",
        "range-violated at -90 N",
      ],
      ["gas rate negative", "gas-rate 0.6 N/mm", "gas-rate -0.6 N/mm", "range-violated at -0.6 N/mm"],
      [
        "more clicks than there are",
        "clicks 5 of 16",
        "clicks 18 of 16",
        "unbuildable at front.side.bump.clicks 18 of 16",
      ],
      ["clicks of none", "clicks 5 of 16", "clicks 0 of 0", "unbuildable at front.side.bump.clicks 0 of 0"],
    ],
  ),
  ...inSample(
    "anti-roll-bar",
    ["bar"],
    [
      ["bore over diameter", "bore 9 mm", "bore 15 mm", "unbuildable at bore 15 mm"],
      ["tube of no length", "length 380 mm", "length 0 mm", "range-violated at 0 mm"],
      ["lever of no length", "end (0, 222, 296) mm", "end (70, 222, 296) mm", "range-violated at (70, 222, 296) mm"],
      ["lever end on axis", "end (0, 222, 296) mm", "end (70, 200, 296) mm", "unbuildable at bar"],
      ["lever without axis", "axis (0, 1, 0)", "axis (0, 0, 0)", "range-violated at (0, 0, 0)"],
      [
        "drop link too short",
        "drop-link rocker.bar { thread 1 mm/turn }",
        "drop-link rocker.bar { longer -99.5 mm }",
        "unbuildable at bar",
        "implausible-value at -99.5 mm",
        "unbuildable at front.left.bar.drop-link off",
      ],
      [
        "drop link far too short",
        "drop-link rocker.bar { thread 1 mm/turn }",
        "drop-link rocker.bar { longer -300 mm }",
        "unbuildable at bar",
        "implausible-value at -300 mm",
        "unbuildable at front.left.bar.drop-link off",
      ],
      [
        "drop link too long",
        "drop-link rocker.bar { thread 1 mm/turn }",
        "drop-link rocker.bar { longer 90 mm }",
        "unreachable-travel at -20 .. 25 mm",
        "implausible-value at 90 mm",
      ],
      ["blade section", "section 7 x 20 mm", "section 0 x 20 mm", "range-violated at 0"],
      ["blade length", "length 70 mm", "length -70 mm", "range-violated at -70 mm"],
      ["blade position", "position 3 of 5", "position 7 of 5", "unbuildable at position 7 of 5"],
      [
        "blade position 0",
        "position 3 of 5",
        "position 0 of 5",
        "range-violated at 0",
        "override-without-target at position",
      ],
      ["blade angle", "stiff 90 deg", "stiff 120 deg", "range-violated at 120 deg"],
    ],
  ),
  ...inSample(
    "link-springs",
    ["bar"],
    [
      ["link spring", "link-spring { rate 160 N/mm", "link-spring { rate 0 N/mm", "range-violated at 0 N/mm"],
      [
        "link spring travel",
        "travel 2.5 mm",
        "travel -2.5 mm",
        "range-violated at -2.5 mm",
        "override-without-target at travel",
      ],
    ],
  ),
  ...inSample(
    "tee-bar",
    ["tee"],
    [
      ["stem of no length", "head (0, 0, 300) mm", "head (-160, 0, 300) mm", "unbuildable at tee"],
      ["cross arm of no length", "end (0, 150, 300) mm", "end (0, 0, 300) mm", "unbuildable at tee"],
      [
        "tee link cannot reach",
        "{ thread 1 mm/turn }",
        "{ longer -90 mm }",
        "unbuildable at tee",
        "implausible-value at -90 mm",
      ],
      [
        "tee link no length",
        "{ thread 1 mm/turn }",
        "{ longer -98 mm }",
        "unbuildable at tee",
        "implausible-value at -98 mm",
      ],
    ],
  ),
  ...inSample(
    "tied-bars",
    ["tied-bars"],
    [["tie arm on the axis", "arm (-330, 190, 450) mm", "arm (-330, 190, 400) mm", "unbuildable at tied-bars"]],
  ),
  ...inSample(
    "gas-spring",
    ["third"],
    [
      ["no pressure", "pressure 15 bar, volume 40 ml", "pressure 0 bar, volume 40 ml", "range-violated at 0 bar"],
      ["no volume", "volume 40 ml", "volume 0 ml", "range-violated at 0 ml"],
      ["no piston", "area 707 mm^2", "area 0 mm^2", "range-violated at 0 mm^2"],
      ["exponent", "exponent 1.3", "exponent 0", "range-violated at 0"],
      ["exponent negative", "exponent 1.3", "exponent -1", "range-violated at -1"],
      ["gas compressed to nothing", "volume 40 ml", "volume 6 ml", "gas-exhausted at third"],
      ["area curve order", "0 mm: 707 mm^2, 10 mm: 640 mm^2", "10 mm: 640 mm^2, 0 mm: 707 mm^2", "table-order at 0 mm"],
      ["area curve negative", "35 mm: 280 mm^2", "35 mm: -280 mm^2", "unbuildable at G-collapse"],
      [
        "below absolute zero",
        "working-temperature 55 degC",
        "working-temperature -300 degC",
        "range-violated at -300 degC",
      ],
      ["gas curve order", "-32 mm: 600 N, -15 mm: 810 N", "-15 mm: 810 N, -32 mm: 600 N", "table-order at -32 mm"],
    ],
  ),
  ...inSample(
    "hydraulic-link",
    ["pitch-line"],
    [
      [
        "cylinder area",
        "area 500 mm^2 }\n    cylinder tail",
        "area 0 mm^2 }\n    cylinder tail",
        "range-violated at 0 mm^2",
      ],
      [
        "resistance",
        "resistance 60 bar*s/l, one-way",
        "resistance -60 bar*s/l, one-way",
        "range-violated at -60 bar*s/l",
      ],
      [
        "bulk modulus",
        "bulk-modulus 1.2 GPa, volume 120 ml }\n    line tail",
        "bulk-modulus 0 GPa, volume 120 ml }\n    line tail",
        "range-violated at 0 GPa",
      ],
      ["accumulator volume", "volume 60 ml", "volume 0 ml", "range-violated at 0 ml"],
      [
        "accumulator used up",
        "volume 60 ml",
        "volume 1 ml",
        "pressure-below-ambient at pressure 25 bar",
        "gas-exhausted at volume 1 ml",
        "implausible-value at 1 ml",
      ],
      ["accumulator exponent", "exponent 1.3", "exponent 0", "range-violated at 0"],
    ],
  ),
  ...inSample(
    "hydraulic-link",
    ["heave-line"],
    [
      ["line from itself", "line head to foot", "line head to head", "unbuildable at heave-line"],
      ["line to nowhere", "line head to foot", "line head to hand", "unknown-name at hand"],
    ],
  ),
  ...inSample(
    "inerters",
    ["side-inerter"],
    [
      ["no inertance", "inertance 8 kg", "inertance 0 kg", "range-violated at 0 kg"],
      ["inerter stroke", "stroke -30 .. 30 mm", "stroke 30 .. -30 mm", "wrong-form at 30 .. -30 mm"],
    ],
  ),
  ...inSample(
    "inerters",
    ["flywheel"],
    [["negative inertance", "inertance 0.03 kg*m^2", "inertance -0.03 kg*m^2", "range-violated at -0.03 kg*m^2"]],
  ),
  ...inSample(
    "coil",
    ["coil", "side"],
    [
      [
        "push rod no length",
        "outer (632, 128) mm, inner (226, 436) mm, thread",
        "outer (226, 436) mm, inner (226, 436) mm, thread",
        "range-violated at (226, 436) mm",
      ],
      [
        "rocker of no arm",
        "inner (226, 436) mm",
        "inner (190, 400) mm",
        "range-violated at (190, 400) mm",
        "unbuildable at rocker",
      ],
      [
        "wishbone no length",
        "lower-wishbone { inner (190, 103) mm",
        "lower-wishbone { inner (678, 108) mm",
        "range-violated at (678, 108) mm",
      ],
    ],
  ),
];

const foundIn = (context: RuleContext): readonly string[] =>
  runRules(context).map(({ rule, span }) => `${rule} at ${context.text.slice(span.start, span.end)}`);

const elementsIn = (context: RuleContext): ReadonlyMap<string, ElementFigures> => {
  const { axles, elements } = context.cars[0]?.analysis ?? { axles: {}, elements: [] };
  const all = [axles.front, axles.rear].flatMap((axle) => axle?.elements ?? []);
  return new Map([...all, ...elements].map((element) => [element.path, element]));
};

/** Every number in it, with the path to it, that is not one. */
function strays(value: unknown, path = ""): readonly string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => strays(inner, `${path}.${key}`));
}

const healthy = new Map<string, ReadonlyMap<string, ElementFigures>>();

function healthyOf(sample: string): ReadonlyMap<string, ElementFigures> {
  const known = healthy.get(sample) ?? elementsIn(sampleContext(sample));
  healthy.set(sample, known);
  return known;
}

describe("bad input", () => {
  it.each(table)("$what in $sample stands at its value", ({ sample, from, to, found }) => {
    const context = sampleContext(sample, [from, to]);
    expect(found).not.toEqual([]);
    expect(foundIn(context)).toEqual(found);
  });

  it.each(table)("$what in $sample leaves the rest computed", ({ sample, from, to, own }) => {
    const context = sampleContext(sample, [from, to]);
    const elements = elementsIn(context);
    for (const [path, figures] of healthyOf(sample)) {
      if (own.some((name) => path.split(".").includes(name))) continue;
      const here = elements.get(path);
      expect([path, here?.sensitivity, here?.rate]).toEqual([path, figures.sensitivity, figures.rate]);
    }
    for (const { analysis, cases } of context.cars) {
      expect(strays(analysis)).toEqual([]);
      expect(cases.names.flatMap((name) => strays(cases.at(name)))).toEqual([]);
    }
  });
});

describe("a bar that has blades from the shelf and nothing to twist", () => {
  const SHELF = "catalogue {\n  blade B-7 { section 7 x 20 mm, length 70 mm }\n}\n\ncar anti-roll-bar";
  const TUBE = "torsion-bar { diameter 14 mm, bore 9 mm, length 380 mm }";
  const BLADE = "blade { position 3 of 5, soft 0 deg, stiff 90 deg, section 7 x 20 mm, length 70 mm }";
  const sample = "systems/anti-roll-bar.crank";
  const fitted = (part: string): RuleContext =>
    sampleContext(
      sample,
      ["car anti-roll-bar", SHELF],
      [`${TUBE}\n      lever`, `fit ${part}\n      lever`],
      [BLADE, "blade { position 3 of 5 }"],
    );

  it("is told to lack its tube, and the fix gives it one", () => {
    const context = fitted("B-7");
    expect(foundIn(context)).toEqual(["missing-property at anti-roll-bar bar"]);
    expect(runRules(context)[0]?.message).toContain('has no "torsion-bar"');
    const [fix] = fixesFor(context, "missing-property");
    expect(fix?.title).toContain("torsion-bar");
    const after = afterFix(context, "missing-property").context;
    expect(foundIn(after)).not.toContain("missing-property at anti-roll-bar bar");
    expect(elementsIn(context).get("front.bar")?.rate).toMatchObject({ kind: "absent" });
    expect(elementsIn(after).get("front.bar")?.rate).toBeGreaterThan(0);
  });

  it("is not told so where the part is not known, which is told by itself", () => {
    expect(foundIn(fitted("B-9"))).not.toContain("missing-property at anti-roll-bar bar");
  });
});
