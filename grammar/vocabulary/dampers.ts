/** Laws of dampers and inerters: tables, knee, measured curves, gas force, inertance. */
import { positive, seen } from "./sources.js";
import { keyword, oneOf, quantity, text } from "./slots.js";
import type { Word, WordGroup } from "./word.js";

const direction = (word: "bump" | "rebound", motion: string): Word => ({
  word,
  in: ["damper", "valving-part"],
  takes: [[]],
  opens: "damper-side",
  block: "required",
  needed: true,
  unless: ["damping", "curve", "fit"],
  role: "law",
  times: "one",
  example: `${word} { 50 mm/s: 320 N, 100 mm/s: 470 N }`,
  help:
    `Force while the damper is ${motion}, against its speed: rows (both entered positive, the origin is understood), or ` +
    "`knee` with `slow` and `fast`, or a measured curve.",
});

const damper: readonly Word[] = [
  {
    word: "damping",
    in: ["damper", "valving-part"],
    takes: oneOf("damping", "torsional-damping"),
    role: "law",
    times: "one",
    starter: "5 N*s/mm",
    usual: seen(100, 100_000),
    limits: positive,
    help: "One linear damping for both directions: force per speed of the damper's own deflection.",
  },
  direction("bump", "shortened (or twisted as bump does)"),
  direction("rebound", "lengthened (or twisted as rebound does)"),
  {
    word: "curve",
    in: ["damper", "damper-side", "valving-part"],
    takes: [[keyword("from"), keyword("csv"), text("path")]],
    role: "law",
    times: "one",
    example: 'curve from csv "bench.csv"',
    help:
      "Measured force against speed, from a CSV file with units in its header. In a damper, negative speeds are rebound; in " +
      "`bump` or `rebound` all are entered positive.",
  },
  {
    word: "knee",
    in: ["damper-side"],
    takes: oneOf("damper-speed", "angular-speed"),
    role: "law",
    times: "one",
    starter: "50 mm/s",
    usual: seen(0.005, 0.5),
    limits: positive,
    help: "Speed at which the valve opens: below it the slope is `slow`, above it `fast`.",
  },
  {
    word: "slow",
    in: ["damper-side"],
    takes: oneOf("damping", "torsional-damping"),
    role: "law",
    times: "one",
    starter: "6 N*s/mm",
    usual: seen(100, 100_000),
    limits: positive,
    help: "Slope from nought to the knee.",
  },
  {
    word: "fast",
    in: ["damper-side"],
    takes: oneOf("damping", "torsional-damping"),
    role: "law",
    times: "one",
    starter: "1.5 N*s/mm",
    usual: seen(0, 50_000),
    limits: { atLeast: 0 },
    help: "Slope beyond the knee.",
  },
  {
    word: "clicks",
    in: ["damper-side"],
    takes: [[quantity("count"), keyword("of"), quantity("count")], [quantity("count")]],
    role: "property",
    times: "one",
    fallback: "no clicker",
    starter: "6 of 18",
    limits: { atLeast: 0 },
    help: "Where the adjuster stands, counted from fully closed. The table is the valving at this position.",
  },
  {
    word: "gas-force",
    in: ["damper", "valving-part"],
    takes: oneOf("force"),
    role: "law",
    times: "one",
    fallback: "0 N",
    starter: "120 N",
    usual: seen(0, 1500),
    limits: { atLeast: 0 },
    help: "Force with which the damper's own gas pushes it apart, taken as constant.",
  },
];

const inerter: Word = {
  word: "inertance",
  in: ["inerter", "inerter-part"],
  takes: oneOf("mass", "inertia"),
  role: "law",
  times: "one",
  needed: true,
  unless: ["fit"],
  starter: "60 kg",
  usual: seen(1, 500),
  limits: positive,
  help: "Force per acceleration of its own deflection, in kg (torsional: moment per angular acceleration, in kg*m^2).",
};

export const damperGroup: WordGroup = {
  title: "Damper and inerter laws",
  help: "Speeds and forces are the element's own, not the wheel's. Rebound forces are entered positive.",
  concepts: [
    { concept: "damper", help: "Connection and law of a damper." },
    {
      concept: "damper-side",
      help: "Rows of speed against force in one direction; the curve starts at the origin and is interpolated monotonically.",
      rows: [
        { key: quantity("damper-speed"), value: quantity("force") },
        { key: quantity("angular-speed"), value: quantity("moment") },
      ],
    },
    { concept: "inerter", help: "Connection and inertance of an inerter." },
  ],
  words: [...damper, inerter],
};
