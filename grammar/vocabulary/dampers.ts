/** Laws of dampers and inerters: tables, knee, measured curves, clickers, gas force, stroke, inertance. */
import { positive, seen } from "./sources.js";
import { keyword, oneOf, quantity, range, text } from "./slots.js";
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

const setting = (word: "closed" | "open", where: string): Word => ({
  word,
  in: ["damper-side"],
  takes: [[]],
  opens: "damper-setting",
  block: "required",
  role: "law",
  times: "one",
  example: `${word} { 50 mm/s: 320 N, 100 mm/s: 470 N }`,
  help: `The valving with the adjuster ${where}, for those who have one. \`clicks\` says where between both it stands.`,
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
    in: ["damper", "damper-side", "damper-setting", "valving-part"],
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
    in: ["damper-side", "damper-setting"],
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
    in: ["damper-side", "damper-setting"],
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
    in: ["damper-side", "damper-setting"],
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
    help:
      "Where the adjuster stands, counted from fully closed. Between `closed` and `open` it blends the two; with `per-click` it " +
      "stiffens or softens the table; with neither the table is the valving at this position.",
  },
  setting("closed", "at click 0"),
  setting("open", "at the last click"),
  {
    word: "per-click",
    in: ["damper-side"],
    takes: oneOf("share"),
    role: "property",
    times: "one",
    fallback: "a click changes nothing that is known",
    starter: "4 %",
    usual: seen(0.001, 0.2),
    limits: positive,
    help: "How much of the table's force one click towards closed adds (and one towards open takes off).",
  },
  {
    word: "measured-at",
    in: ["damper-side"],
    takes: oneOf("count"),
    role: "property",
    times: "one",
    fallback: "not known; `per-click` needs it",
    starter: "9",
    limits: { atLeast: 0 },
    help: "Clicks from fully closed at which the table was measured.",
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
    help: "Force with which the damper's own gas pushes it apart at design position.",
  },
  {
    word: "gas-rate",
    in: ["damper", "valving-part"],
    takes: oneOf("rate"),
    role: "law",
    times: "one",
    fallback: "0 N/mm, a constant gas force",
    starter: "1 N/mm",
    usual: seen(0, 20_000),
    limits: { atLeast: 0 },
    help: "How much the gas force grows as the rod is pushed in. It never falls below nought.",
  },
];

const room: readonly Word[] = [
  {
    word: "stroke",
    in: ["damper", "inerter"],
    takes: [[range("length")], [range("angle")]],
    role: "property",
    times: "one",
    fallback: "not judged",
    starter: "-30 .. 25 mm",
    usual: seen(-0.2, 0.2),
    help: "How far it can be moved from design position, from rebound to bump (compression positive), before it meets its own ends.",
  },
  {
    word: "length",
    in: ["damper", "valving-part", "inerter", "inerter-part"],
    takes: [[range("length")]],
    role: "property",
    times: "one",
    fallback: "not judged",
    starter: "240 .. 300 mm",
    usual: seen(0.05, 0.8),
    limits: positive,
    help: "Shortest and longest length between its two eyes, as its maker states it: the stroke follows from where it is fitted.",
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
    {
      concept: "damper-setting",
      help: "Rows of speed against force with the adjuster at one of its ends, as in `bump` and `rebound`.",
      rows: [
        { key: quantity("damper-speed"), value: quantity("force") },
        { key: quantity("angular-speed"), value: quantity("moment") },
      ],
    },
    { concept: "inerter", help: "Connection and inertance of an inerter." },
  ],
  words: [...damper, ...room, inerter],
};
