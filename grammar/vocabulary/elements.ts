/** The elements themselves, how they are joined to the car, and the parts that are fitted to them. */
import { carModes, axleModes } from "./modes.js";
import { attachment, body, choice, declares, keyword, modes, point, quantity, refersTo, text } from "./slots.js";
import { seen } from "./sources.js";
import type { Concept, Form, Word, WordGroup } from "./word.js";

const element = (word: string, where: readonly Concept[], example: string, help: string): Word => ({
  word,
  in: where,
  takes: [[declares("element"), keyword("for"), modes]],
  opens: word,
  block: "required",
  role: "element",
  times: "named",
  example,
  help,
});

const everywhere: readonly Concept[] = ["axle", "car"];

const kinds: readonly Word[] = [
  element(
    "spring",
    everywhere,
    "spring third for heave {\n  rate 120 N/mm\n  between left.rocker.third and right.rocker.third\n}",
    "A spring: coil, torsion bar, or any rate or curve. The claim after `for` is held against its computed motion.",
  ),
  element(
    "damper",
    everywhere,
    "damper side for corner {\n  fit V-14\n  between rocker.side and chassis (10, 40, 360) mm\n}",
    "A damper: force against the speed of its deflection, told separately for bump and rebound.",
  ),
  element(
    "inerter",
    everywhere,
    "inerter side-inerter for corner {\n  inertance 60 kg\n  between rocker.side and chassis (10, 40, 360) mm\n}",
    "An inerter: force in proportion to the acceleration between its two ends.",
  ),
  element(
    "bump-stop",
    ["axle"],
    "bump-stop side-stop for corner {\n  gap 12 mm\n  rate 300 N/mm\n  between rocker.side and chassis (10, 40, 360) mm\n}",
    "A stop that is met after its gap is used up; by curve, rate or power law.",
  ),
  element(
    "anti-roll-bar",
    ["axle"],
    "anti-roll-bar bar for roll {\n  torsion-bar { diameter 24 mm, bore 18 mm, length 420 mm }\n" +
      "  lever { pivot (-40, 210, 420) mm, axis (0, 1, 0), end (30, 210, 420) mm }\n  drop-link rocker.bar\n}",
    "A bar that twists when the sides move differently: torsion tube, a lever on each end, drop links to the rockers.",
  ),
  element(
    "gas-spring",
    everywhere,
    "gas-spring third-gas for heave {\n  pressure 20 bar\n  volume 80 ml\n  area 314 mm^2\n" +
      "  between left.rocker.third and right.rocker.third\n}",
    "A gas spring, polytropic on the volume that its rod sweeps.",
  ),
  element(
    "hydraulic-link",
    everywhere,
    "hydraulic-link pitch-line for pitch {\n" +
      "  cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }\n" +
      "  cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }\n" +
      "  line nose to tail crossed\n  accumulator { pressure 20 bar, volume 80 ml }\n}",
    "Cylinders joined by lines, between the axles or the sides of one axle, so that oil couples their motion.",
  ),
  element(
    "actuator",
    everywhere,
    "actuator platform for heave {\n  between left.rocker.third and right.rocker.third\n  hold { top-speed: 4 mm }\n}",
    "Holds a length, or gives a force, case by case, on cars that are allowed one.",
  ),
];

const telescopic: readonly Concept[] = ["spring", "damper", "inerter", "bump-stop", "gas-spring", "actuator"];
const torsional: readonly Concept[] = ["spring", "damper", "inerter"];

const everyMode = choice(...new Set<string>([...axleModes, ...carModes]));
const fromCsv = [keyword("from"), keyword("csv"), text("path")];
const ratioForms: readonly (readonly [Form, Concept | undefined])[] = [
  [[everyMode, quantity("number")], undefined],
  [[quantity("number")], undefined],
  [[everyMode, quantity("angle-per-length")], undefined],
  [[quantity("angle-per-length")], undefined],
  [[everyMode], "ratio-table"],
  [[], "ratio-table"],
  [[everyMode, keyword("curve"), ...fromCsv], undefined],
  [[keyword("curve"), ...fromCsv], undefined],
];

const connections: readonly Word[] = [
  {
    word: "between",
    in: [...telescopic, "cylinder"],
    takes: [[attachment, keyword("and"), attachment]],
    role: "connection",
    times: "one",
    needed: true,
    unless: ["twists", "ratio"],
    example: "between rocker.side and chassis (10, 40, 360) mm",
    help:
      "The two ends of a telescopic element. An end is an eye (`rocker.side`, or `left.rocker.third` across the car), a point " +
      "on a body (`chassis`, `lower-wishbone`, `upper-wishbone` or `upright`, with coordinates) or the end of a bar's lever " +
      "(`bar.lever.end`). Deflection is positive in compression. Chassis points of an element across the car are never mirrored.",
  },
  {
    word: "twists",
    in: torsional,
    takes: [[body, keyword("against"), body]],
    role: "connection",
    times: "one",
    example: "twists rocker against chassis",
    help:
      "A torsional element on the rocker's axis: `rocker against chassis` on each side, or `left.rocker against right.rocker`. " +
      "Positive twist is as the left wheel's bump makes it.",
  },
  {
    word: "tie",
    in: ["spring"],
    takes: [[]],
    opens: "tie",
    block: "required",
    role: "connection",
    times: "one",
    example: "tie { arm (10, 195, 520) mm }",
    help:
      "Joins the free ends of the two rockers' torsion bars: each end carries a small lever, and a rigid link joins the two, so " +
      "that the bars react on each other and not on the chassis.",
  },
  {
    word: "arm",
    in: ["tie"],
    takes: [[point]],
    role: "property",
    times: "one",
    needed: true,
    starter: "(10, 195, 520) mm",
    help: "End of the small lever on the left bar; the one on the right mirrors it.",
  },
  {
    word: "ratio",
    in: [...telescopic, "anti-roll-bar"],
    takes: ratioForms.map(([form]) => form),
    opensByForm: ratioForms.map(([, concept]) => concept),
    block: "required",
    role: "connection",
    times: "many",
    starter: "heave 0.85",
    usual: seen(-3, 3),
    example: "ratio heave 0.85",
    help:
      "Motion ratio in place of geometry: deflection of the element for each unit of wheel travel, with both wheels moved in " +
      "the named mode; without a mode, of a corner element's own wheel. One number (torsional: `deg/mm`), a table of travel " +
      'against deflection, or a measured one: `ratio heave curve from csv "measured.csv"`.',
  },
  {
    word: "fit",
    in: ["spring", "damper", "inerter", "bump-stop", "anti-roll-bar", "gas-spring"],
    takes: [[refersTo("part")]],
    role: "structure",
    times: "one",
    example: "fit TB-195",
    help:
      "Puts a part of the catalogue in place of the element's own block of that kind. Lines below it may still override the " +
      "part's figures.",
  },
];

export const elementGroup: WordGroup = {
  title: "Elements and connections",
  help:
    "Every element says which mode it is for; its connection says how it is moved. The checker computes the motion from the " +
    "connection and holds it against the claim.",
  concepts: [
    {
      concept: "ratio-table",
      help: "Rows of wheel travel (bump positive) against the element's deflection (compression positive).",
      rows: [
        { key: quantity("length"), value: quantity("length") },
        { key: quantity("length"), value: quantity("angle") },
      ],
    },
    { concept: "tie", help: "The lever on the free end of a tied torsion bar." },
  ],
  words: [...kinds, ...connections],
};
