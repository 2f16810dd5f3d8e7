/** Laws of stops by power law, gas springs, hydraulic links and actuators. */
import { notNegative, positive, seen } from "./sources.js";
import { choice, declares, keyword, oneOf, quantity, refersTo } from "./slots.js";
import type { Concept, DimensionName, Limits, UsualRange, Word, WordGroup } from "./word.js";

interface Value {
  readonly dimension: DimensionName;
  readonly starter: string;
  readonly usual: UsualRange;
  readonly limits?: Limits;
  readonly fallback?: string;
  readonly unless?: { readonly unless: readonly string[] };
}

const unlessFitted = { unless: ["fit", "curve"] };
const gasConcepts: readonly Concept[] = ["gas-spring", "gas-spring-part", "accumulator"];

/** A law's property: needed where nothing is said to hold without it. */
const value = (word: string, where: readonly Concept[], how: Value, help: string): Word => ({
  word,
  in: where,
  takes: oneOf(how.dimension),
  role: "law",
  times: "one",
  starter: how.starter,
  usual: how.usual,
  limits: how.limits ?? positive,
  ...(how.fallback === undefined ? { needed: true, ...how.unless } : { fallback: how.fallback }),
  help,
});

const stop: readonly Word[] = [
  {
    word: "power-law",
    in: ["bump-stop", "bump-stop-part"],
    takes: [[]],
    opens: "power-law",
    block: "required",
    role: "law",
    times: "one",
    example: "power-law { force 1500 N, deflection 12 mm, exponent 2.5 }",
    help: "Force grows as a power of the deflection after contact: F = force · (s / deflection) ^ exponent.",
  },
  value(
    "force",
    ["power-law"],
    { dimension: "force", starter: "1500 N", usual: seen(50, 30_000) },
    "Force at the stated deflection.",
  ),
  value(
    "deflection",
    ["power-law"],
    { dimension: "length", starter: "12 mm", usual: seen(0.001, 0.06) },
    "Deflection after contact at which the stop gives that force.",
  ),
  value(
    "exponent",
    ["power-law"],
    { dimension: "number", starter: "2.5", usual: seen(1, 6), limits: { atLeast: 1 } },
    "1 is a straight line; foam stops are between 2 and 4.",
  ),
  value(
    "packer",
    ["bump-stop"],
    { dimension: "length", starter: "2 mm", usual: seen(0, 0.04), limits: notNegative, fallback: "0 mm" },
    "Thickness of the packers under the stop; it is taken off the gap.",
  ),
];

const gas: readonly Word[] = [
  value(
    "pressure",
    gasConcepts,
    { dimension: "pressure", starter: "20 bar", usual: seen(1e5, 1.2e7), unless: unlessFitted },
    "Charge pressure at design position, as the gauge reads it (above atmosphere). A gas spring pushes with it from design on; " +
      "behind a gap the push builds up over a contact of 20 kN/mm.",
  ),
  value(
    "volume",
    gasConcepts,
    { dimension: "volume", starter: "80 ml", usual: seen(2e-6, 2e-3), unless: unlessFitted },
    "Gas volume at design position.",
  ),
  value(
    "exponent",
    gasConcepts,
    { dimension: "number", starter: "1.3", usual: seen(1, 1.7), limits: { atLeast: 1, atMost: 3 }, fallback: "1.3" },
    "Polytropic exponent: 1 slow (isothermal), 1.4 fast (adiabatic).",
  ),
  value(
    "area",
    ["gas-spring", "gas-spring-part", "cylinder"],
    {
      dimension: "piston-area",
      starter: "314 mm^2",
      usual: seen(2e-5, 1e-2),
      unless: { unless: [...unlessFitted.unless, "area-curve"] },
    },
    "Area that the pressure acts on: of the rod, or of the piston.",
  ),
  {
    word: "area-curve",
    in: ["gas-spring", "gas-spring-part"],
    takes: [[]],
    opens: "area-curve",
    block: "required",
    role: "law",
    times: "one",
    fallback: "the area is the same all along",
    example: "area-curve { 0 mm: 314 mm^2, 20 mm: 200 mm^2 }",
    help:
      "Area that the pressure acts on where it changes with the deflection (a bellows, a stepped or tapered piston). One that " +
      "falls faster than the pressure rises makes the spring collapse: its rate is negative there, which is legal for gas.",
  },
  {
    word: "curve",
    in: ["gas-spring", "gas-spring-part"],
    takes: [[]],
    opens: "gas-curve",
    block: "required",
    role: "law",
    times: "one",
    fallback: "worked out from the charge",
    example: "curve { 0 mm: 1200 N, 10 mm: 1500 N, 20 mm: 1100 N }",
    help:
      "Force as measured against deflection from design; it goes before the one that follows from the charge. It may fall: a " +
      "spring that collapses past a load is legal.",
  },
  value(
    "charge-temperature",
    gasConcepts,
    { dimension: "temperature", starter: "20 degC", usual: seen(253.15, 323.15), fallback: "20 degC" },
    "Temperature of the gas when its charge pressure was read.",
  ),
  value(
    "working-temperature",
    gasConcepts,
    { dimension: "temperature", starter: "60 degC", usual: seen(253.15, 423.15), fallback: "the charge temperature" },
    "Temperature of the gas as the car runs: the charge's absolute pressure goes with it, its volume at design being the same.",
  ),
];

const hydraulics: readonly Word[] = [
  {
    word: "cylinder",
    in: ["hydraulic-link"],
    takes: [[declares("cylinder")]],
    opens: "cylinder",
    block: "required",
    role: "connection",
    times: "named",
    example: "cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }",
    help: "A cylinder of the link: its two ends and its piston area. Compression pushes oil out of its working side.",
  },
  value(
    "annulus-area",
    ["cylinder"],
    {
      dimension: "piston-area",
      starter: "200 mm^2",
      usual: seen(1e-5, 1e-2),
      fallback: "as large as the piston: the rod goes through both ends",
    },
    "Area of the far side, where a rod takes some of the piston's; what a crossed line is joined to.",
  ),
  value(
    "pressure",
    ["hydraulic-link"],
    {
      dimension: "pressure",
      starter: "10 bar",
      usual: seen(1e4, 1.2e7),
      limits: notNegative,
      fallback: "that of the accumulator; 0 bar without one",
    },
    "Pressure of the oil at design position, as the gauge reads it, of a link without an accumulator.",
  ),
  {
    word: "line",
    in: ["hydraulic-link"],
    takes: [
      [refersTo("cylinder"), keyword("to"), refersTo("cylinder"), choice("crossed", "parallel")],
      [refersTo("cylinder"), keyword("to"), refersTo("cylinder")],
    ],
    opens: "line",
    block: "optional",
    role: "connection",
    times: "many",
    example: "line nose to tail crossed",
    help:
      "Joins two cylinders. `parallel` (the rule without a word): working side to working side, so one is pushed out by the " +
      "other; `crossed`: working side to the other's far side, so both move the same way. Lines that meet at a side of a " +
      "cylinder enclose one volume of oil.",
  },
  value(
    "resistance",
    ["line"],
    {
      dimension: "flow-resistance",
      starter: "40 bar*s/l",
      usual: seen(0, 1e12),
      limits: notNegative,
      fallback: "0 bar*s/l",
    },
    "Pressure lost for each volume that flows in a second through the whole line; half of it on either side of the accumulator.",
  ),
  {
    word: "one-way",
    in: ["line"],
    takes: [[refersTo("cylinder")]],
    role: "law",
    times: "one",
    fallback: "oil flows freely both ways",
    example: "one-way nose",
    help: "A valve that lets oil pass the resistance freely when it flows out of the named cylinder.",
  },
  value(
    "bulk-modulus",
    ["line"],
    { dimension: "modulus", starter: "1.4 GPa", usual: seen(2e8, 3e9), fallback: "oil taken as incompressible" },
    "Stiffness of the oil with its hoses, pressure per relative change of volume.",
  ),
  value(
    "volume",
    ["line"],
    { dimension: "volume", starter: "60 ml", usual: seen(1e-6, 5e-3), fallback: "oil taken as incompressible" },
    "Oil that is enclosed between the cylinders.",
  ),
  {
    word: "accumulator",
    in: ["hydraulic-link"],
    takes: [[]],
    opens: "accumulator",
    block: "required",
    role: "law",
    times: "one",
    fallback: "none: oil goes from cylinder to cylinder only",
    example: "accumulator { pressure 20 bar, volume 80 ml, exponent 1.3 }",
    help: "A gas volume on the line, which makes the link springy. Lines that enclose several volumes of oil have one such on each.",
  },
];

const actuator: Word = {
  word: "hold",
  in: ["actuator"],
  takes: [[], [quantity("length")], [quantity("force")]],
  opensByForm: ["hold-table", undefined, undefined],
  block: "required",
  role: "law",
  times: "one",
  needed: true,
  example: "hold { top-speed: 4 mm, braking: -2 mm }",
  help:
    "What the actuator keeps, case by case: a change of its length from design (extension positive), or a force (pushing " +
    "apart positive). In cases without a row it keeps its design length.",
};

export const fluidGroup: WordGroup = {
  title: "Stops, gas, hydraulics, actuators",
  help: "Laws of the remaining elements.",
  concepts: [
    { concept: "bump-stop", help: "Connection and law of a stop." },
    { concept: "power-law", help: "A stop by one point of its curve and an exponent." },
    { concept: "gas-spring", help: "Connection, charge and rod of a gas spring." },
    {
      concept: "area-curve",
      help: "Rows of deflection from design (compression positive) against area; beyond its ends the area stays as it is there.",
      rows: [{ key: quantity("length"), value: quantity("piston-area") }],
    },
    {
      concept: "gas-curve",
      help: "Rows of deflection from design (compression positive) against force.",
      rows: [{ key: quantity("length"), value: quantity("force") }],
    },
    { concept: "hydraulic-link", help: "Cylinders, the lines between them, and an accumulator." },
    { concept: "cylinder", help: "Ends and piston area of a cylinder." },
    { concept: "line", help: "Resistance, valve and oil of a line." },
    { concept: "accumulator", help: "Gas charge on the line." },
    { concept: "actuator", help: "Connection and settings of an actuator." },
    {
      concept: "hold-table",
      help: "Rows of load case against length or force.",
      rows: [
        { key: refersTo("case"), value: quantity("length") },
        { key: refersTo("case"), value: quantity("force") },
      ],
    },
  ],
  words: [...stop, ...gas, ...hydraulics, actuator],
};
