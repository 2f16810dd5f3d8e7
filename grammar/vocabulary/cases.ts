/** Words of load cases, expectations and the limits of the checks. */
import { aShare, degrees, gravities, lessThanQuarterTurn, notNegative, seen } from "./sources.js";
import { declares, figure, keyword, oneOf, quantity, refersTo } from "./slots.js";
import type { Form, Word, WordGroup } from "./word.js";

const at = [keyword("at"), refersTo("case")];
const any = quantity("any");
const wants: readonly Form[] = [
  [keyword("between"), any, keyword("and"), any],
  [keyword("above"), any],
  [keyword("below"), any],
  [any, keyword("within"), any],
];

const cases: readonly Word[] = [
  {
    word: "case",
    in: ["car", "setup"],
    takes: [[declares("case")]],
    opens: "case",
    block: "required",
    role: "case",
    times: "named",
    example: "case hairpin { speed 70 km/h, lateral 1.55 g }",
    help:
      "A steady moment on the track in which the car is put into equilibrium. Cases are inherited; in a set-up the same name " +
      "replaces the case as a whole.",
  },
  {
    word: "speed",
    in: ["case"],
    takes: oneOf("speed"),
    role: "property",
    times: "one",
    fallback: "0 km/h",
    starter: "120 km/h",
    usual: seen(0, 120),
    limits: notNegative,
    help: "Forward speed; it sets downforce and drag.",
  },
  {
    word: "lateral",
    in: ["case"],
    takes: oneOf("acceleration"),
    role: "property",
    times: "one",
    fallback: "0 g",
    starter: "1.4 g",
    usual: seen(gravities(-6), gravities(6)),
    help: "Acceleration to the left: positive in a left turn, when the right wheels gain load.",
  },
  {
    word: "longitudinal",
    in: ["case"],
    takes: oneOf("acceleration"),
    role: "property",
    times: "one",
    fallback: "0 g",
    starter: "-1.4 g",
    usual: seen(gravities(-7), gravities(4)),
    help: "Acceleration forwards: negative under braking.",
  },
  {
    word: "vertical",
    in: ["case"],
    takes: oneOf("acceleration"),
    role: "property",
    times: "one",
    fallback: "0 g",
    starter: "-0.3 g",
    usual: seen(gravities(-1), gravities(3)),
    help:
      "Acceleration square to the road and upwards: positive in a dip, where the car is pressed into the road, negative over " +
      "a crest.",
  },
  {
    word: "banking",
    in: ["case"],
    takes: oneOf("angle"),
    role: "property",
    times: "one",
    fallback: "0 deg",
    starter: "6 deg",
    usual: seen(degrees(-20), degrees(36)),
    limits: lessThanQuarterTurn,
    help:
      "Slope of the road across the car, positive with its left side lower, as a left turn is banked. `lateral` stays the level " +
      "acceleration (speed squared over radius).",
  },
  {
    word: "gradient",
    in: ["case"],
    takes: oneOf("share", "angle"),
    role: "property",
    times: "one",
    fallback: "0 %",
    starter: "10 %",
    usual: seen(-0.3, 0.3),
    limits: { above: -1.5, below: 1.5 },
    help: "Slope of the road along the car, uphill positive: the rise for each length along the level in %, or an angle.",
  },
  {
    word: "steer",
    in: ["case"],
    takes: oneOf("length", "angle", "turns"),
    role: "property",
    times: "one",
    fallback: "0 mm",
    starter: "8 mm",
    usual: seen(-0.06, 0.06),
    help:
      "How far the front wheels are steered, positive to the left: travel of the steering rack, or the steering wheel's angle or " +
      "turns where the front axle says its `rack`. Toe, camber and the lift of the body by caster follow.",
  },
];

const expectations: readonly Word[] = [
  {
    word: "expect",
    in: ["car", "setup"],
    takes: [...wants.map((want): Form => [figure, ...want]), ...wants.map((want): Form => [figure, ...at, ...want])],
    role: "expectation",
    times: "many",
    example: "expect front.heave-rate between 150 and 190 N/mm",
    help:
      "A computed figure and what it has to be: `between A and B`, `above A`, `below B`, or `A within T`. `at CASE` names the " +
      "load case; without it the figure is taken at static trim. The same figure at the same case replaces what is inherited.",
  },
];

const limit = (word: "information" | "warning", starter: string): Word => ({
  word,
  in: ["leak-limits"],
  takes: oneOf("share"),
  role: "property",
  times: "one",
  fallback: starter,
  starter,
  usual: seen(0, 0.5),
  limits: aShare,
  help: `A leak above this gives ${word === "warning" ? "a warning" : "an information"}.`,
});

const checks: readonly Word[] = [
  {
    word: "checks",
    in: ["car", "setup"],
    takes: [[]],
    opens: "checks",
    block: "required",
    role: "structure",
    times: "one",
    fallback: "leak { information 2 %, warning 5 % }",
    example: "checks {\n  leak { information 2 %, warning 5 % }\n}",
    help: "Where the checks of this car begin to speak.",
  },
  {
    word: "leak",
    in: ["checks"],
    takes: [[]],
    opens: "leak-limits",
    block: "required",
    role: "property",
    times: "one",
    fallback: "information 2 %, warning 5 %",
    example: "leak { information 2 %, warning 5 % }",
    help: "How far an element may move in a mode that it is not for, against its motion in its own.",
  },
  limit("information", "2 %"),
  limit("warning", "5 %"),
];

export const caseGroup: WordGroup = {
  title: "Cases, expectations, checks",
  help: "What the car is asked to do, and what the figures have to be.",
  concepts: [
    { concept: "case", help: "Speed and accelerations of a load case, and how the road lies." },
    { concept: "checks", help: "Limits of the checks." },
    { concept: "leak-limits", help: "Limits of the coupling check." },
  ],
  words: [...cases, ...expectations, ...checks],
};
