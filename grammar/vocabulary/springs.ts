/** Force laws of springs: rate, coil, torsion bar, curve, two directions, stages in series, preload and gap. */
import { positive, seen } from "./sources.js";
import { choice, keyword, oneOf, quantity, text } from "./slots.js";
import type { Concept, Word, WordGroup } from "./word.js";

const law = (word: string, where: readonly Concept[], rest: Omit<Word, "word" | "in" | "role" | "times">): Word => ({
  word,
  in: where,
  role: "law",
  times: "one",
  ...rest,
});

const stated: readonly Word[] = [
  law("rate", ["spring", "bump-stop", "bump-stop-part"], {
    takes: oneOf("rate", "torsional-rate"),
    needed: true,
    unless: ["coil", "torsion-bar", "curve", "power-law", "squat", "fit"],
    starter: "120 N/mm",
    usual: seen(3_000, 2_000_000),
    limits: positive,
    help:
      "Stiffness of the element itself, force per deflection (torsional: moment per angle). A stated rate goes before one that " +
      "follows from dimensions.",
  }),
  law("preload", ["spring", "bump-stop"], {
    takes: oneOf("force", "moment"),
    opensByForm: ["force-adjuster", "moment-adjuster"],
    block: "optional",
    fallback: "none; the trim element carries what the trim asks",
    starter: "200 N",
    usual: seen(0, 8000),
    limits: { atLeast: 0 },
    help: "Force (or moment) that the element carries at design position.",
  }),
  law("gap", ["spring", "bump-stop", "gas-spring"], {
    takes: oneOf("length", "angle"),
    opensByForm: ["length-adjuster", "angle-adjuster"],
    block: "optional",
    fallback: "none; it is engaged at design position",
    starter: "2 mm",
    usual: seen(0, 0.06),
    limits: { atLeast: 0 },
    help: "Deflection from design position until the element begins to carry, in the element's own travel.",
  }),
  law("acts", ["spring"], {
    takes: [[choice("in-compression", "in-tension", "both-ways")]],
    fallback: "both-ways; in-compression where a gap is stated",
    starter: "in-compression",
    help: "The directions in which the element carries. `in-compression` and `in-tension` let go beyond their free position.",
  }),
  law("curve", ["spring", "bump-stop", "bump-stop-part"], {
    takes: [[], [keyword("from"), keyword("csv"), text("path")]],
    opensByForm: ["spring-curve", undefined],
    block: "required",
    example: "curve { 0 mm: 0 N, 10 mm: 900 N, 20 mm: 2400 N }",
    help:
      "Force against deflection, by rows or from a CSV file with units in its header. Interpolated monotonically, continued " +
      "straight beyond its ends, and said when that happens.",
  }),
];

const direction = (word: "squat" | "rise", motion: string, other: string): Word =>
  law(word, ["spring"], {
    takes: [[]],
    opens: "spring-side",
    block: "required",
    example: `${word} { soft 40 N/mm, knee 6 mm, hard 110 N/mm }`,
    help:
      `What a spring that works both ways answers while it is ${motion} from where it is free: one \`rate\`, or \`soft\` up to ` +
      `\`knee\` and \`hard\` beyond it, or rows or a measured curve (all entered positive). Goes with \`${other}\`.`,
  });

const bothWays: readonly Word[] = [
  direction("squat", "shortened (or twisted as bump does)", "rise"),
  direction("rise", "lengthened (or twisted as rebound does)", "squat"),
  law("rate", ["spring-side"], {
    takes: oneOf("rate", "torsional-rate"),
    starter: "80 N/mm",
    usual: seen(3_000, 2_000_000),
    limits: positive,
    help: "One stiffness for this direction.",
  }),
  law("soft", ["spring-side"], {
    takes: oneOf("rate", "torsional-rate"),
    starter: "40 N/mm",
    usual: seen(1_000, 1_000_000),
    limits: positive,
    help: "Stiffness from where it is free up to the knee: both stages in line.",
  }),
  law("knee", ["spring-side"], {
    takes: oneOf("length", "angle"),
    starter: "6 mm",
    usual: seen(0.0005, 0.08),
    limits: positive,
    help: "Deflection of the whole spring at which the soft stage is used up.",
  }),
  law("hard", ["spring-side"], {
    takes: oneOf("rate", "torsional-rate"),
    starter: "110 N/mm",
    usual: seen(3_000, 2_000_000),
    limits: positive,
    help: "Stiffness beyond the knee; not below the soft one, since a stage that is used up can only leave a stiffer rest.",
  }),
  law("curve", ["spring-side"], {
    takes: [[keyword("from"), keyword("csv"), text("path")]],
    example: 'curve from csv "squat.csv"',
    help: "Measured force against deflection in this direction, both entered positive, from a CSV file with units in its header.",
  }),
];

/** Of everything that can be overstressed. */
const allowable = (where: readonly Concept[], usual: string, kind: string): Word =>
  law("allowable-stress", where, {
    takes: oneOf("stress"),
    fallback: usual,
    starter: "900 MPa",
    usual: seen(200e6, 1600e6),
    limits: positive,
    help: `The ${kind} stress that its maker allows. Above it \`over-stress\` warns.`,
  });

const coil: readonly Word[] = [
  law("coil", ["spring"], {
    takes: [[]],
    opens: "coil",
    block: "required",
    example: "coil { wire 9.5 mm, mean-diameter 62 mm, active-turns 6.5 }",
    help: "A helical spring worked out from its wire: k = G d⁴ / (8 D³ n), with its stress and where its coils close up.",
  }),
  law("wire", ["coil", "coil-part"], {
    takes: oneOf("length"),
    needed: true,
    unless: ["rate"],
    starter: "9.5 mm",
    usual: seen(0.003, 0.02),
    limits: positive,
    help: "Diameter d of the wire.",
  }),
  law("mean-diameter", ["coil", "coil-part"], {
    takes: oneOf("length"),
    needed: true,
    unless: ["rate"],
    starter: "62 mm",
    usual: seen(0.02, 0.15),
    limits: positive,
    help: "Mean diameter D of the coil: outer diameter less one wire. Larger than the wire's own diameter.",
  }),
  law("active-turns", ["coil", "coil-part"], {
    takes: oneOf("number"),
    needed: true,
    unless: ["rate"],
    starter: "6.5",
    usual: seen(2, 20),
    limits: positive,
    help: "Turns n that deflect; closed ends are left out.",
  }),
  law("total-turns", ["coil", "coil-part"], {
    takes: oneOf("number"),
    fallback: "active turns and two closed ends",
    starter: "8.5",
    usual: seen(3, 22),
    limits: positive,
    help: "All turns, closed ends included: the coils close up at about this many wires.",
  }),
  law("free-length", ["coil", "coil-part"], {
    takes: oneOf("length"),
    fallback: "closing up is not judged",
    starter: "150 mm",
    usual: seen(0.03, 0.5),
    limits: positive,
    help: "Length without load.",
  }),
  law("bind-length", ["coil", "coil-part"], {
    takes: oneOf("length"),
    fallback: "total turns times the wire's diameter",
    starter: "85 mm",
    usual: seen(0.01, 0.3),
    limits: positive,
    help: "Length at which the coils touch.",
  }),
  law("rate", ["coil", "coil-part"], {
    takes: oneOf("rate"),
    fallback: "worked out from the wire",
    starter: "120 N/mm",
    usual: seen(3_000, 2_000_000),
    limits: positive,
    help: "Rate as its maker states it; it goes before the one that follows from the wire.",
  }),
  law("modulus", ["coil", "coil-part", "torsion-bar", "torsion-bar-part"], {
    takes: oneOf("modulus"),
    fallback: "79.3 GPa, spring steel",
    starter: "79.3 GPa",
    usual: seen(25e9, 90e9),
    limits: positive,
    help: "Shear modulus G of the material.",
  }),
  allowable(["coil", "coil-part"], "65 % of the strength of chrome-silicon wire of that size", "shear"),
];

const barBlock = {
  takes: [[]],
  opens: "torsion-bar",
  block: "required",
  example: "torsion-bar { diameter 19.5 mm, length 290 mm }",
  help: "A bar or tube in torsion: k = G J / L with J = π (d⁴ − b⁴) / 32, and its shear stress.",
} as const;

const torsionBar: readonly Word[] = [
  law("torsion-bar", ["spring"], { ...barBlock }),
  law("torsion-bar", ["anti-roll-bar"], { ...barBlock, needed: true, unless: ["rate", "fit"] }),
  law("diameter", ["torsion-bar", "torsion-bar-part"], {
    takes: oneOf("length"),
    needed: true,
    unless: ["rate"],
    starter: "19.5 mm",
    usual: seen(0.006, 0.06),
    limits: positive,
    help: "Outer diameter d of the working part.",
  }),
  law("bore", ["torsion-bar", "torsion-bar-part"], {
    takes: oneOf("length"),
    fallback: "0 mm, a solid bar",
    starter: "0 mm",
    usual: seen(0, 0.058),
    limits: { atLeast: 0 },
    help: "Inner diameter b of a tube; smaller than the outer one.",
  }),
  law("length", ["torsion-bar", "torsion-bar-part"], {
    takes: oneOf("length"),
    needed: true,
    unless: ["rate"],
    starter: "290 mm",
    usual: seen(0.05, 1.6),
    limits: positive,
    help: "Length L that twists, between the splines or lever roots.",
  }),
  law("rate", ["torsion-bar", "torsion-bar-part", "anti-roll-bar"], {
    takes: oneOf("torsional-rate"),
    fallback: "worked out from the dimensions",
    starter: "50 N*m/deg",
    usual: seen(50, 60_000),
    limits: positive,
    help: "Torsional rate as measured, end against end; it goes before the one that follows from the dimensions.",
  }),
  allowable(
    ["torsion-bar", "torsion-bar-part"],
    "1020 MPa for a bar that is twisted one way only (pre-set), 700 MPa for one that is twisted both ways",
    "shear",
  ),
];

const series: readonly Word[] = [
  law("tender", ["spring"], {
    takes: [[]],
    opens: "tender",
    block: "required",
    example: "tender { rate 20 N/mm, travel 15 mm }",
    help:
      "A second spring in line with this one (a tender, or the softer of a stacked pair): both deflect until its travel is used " +
      "up, then this spring goes on alone.",
  }),
  law("link-spring", ["anti-roll-bar"], {
    takes: [[]],
    opens: "link-spring",
    block: "required",
    example: "link-spring { rate 90 N/mm, travel 3 mm }",
    help: "A spring in each drop link, in line with the bar: soft until its travel is used up, then the bar alone.",
  }),
  law("rate", ["tender", "link-spring", "link-spring-part"], {
    takes: oneOf("rate"),
    needed: true,
    starter: "90 N/mm",
    usual: seen(1_000, 1_000_000),
    limits: positive,
    help: "Rate of this stage by itself.",
  }),
  law("travel", ["tender", "link-spring", "link-spring-part"], {
    takes: oneOf("length"),
    needed: true,
    starter: "3 mm",
    usual: seen(0.0005, 0.08),
    limits: positive,
    help: "Deflection, from free, at which the stage is solid.",
  }),
];

const adjuster = (concept: Concept, dimension: "force" | "moment", starter: string): Word => ({
  word: "step",
  in: [concept],
  takes: oneOf(dimension),
  role: "property",
  times: "one",
  fallback: "adjusted freely",
  starter,
  limits: positive,
  help: "The smallest change that the adjuster can make. Comparison, solver and setup sheet count in it.",
});

export const springGroup: WordGroup = {
  title: "Spring laws",
  help: "What a spring, a stop or a bar answers to its deflection. Laws compose: what is written together acts together.",
  concepts: [
    { concept: "spring", help: "Connection and law of a spring." },
    { concept: "coil", help: "A helical spring by its wire, or by its stated rate." },
    { concept: "torsion-bar", help: "A torsion bar or tube by its dimensions, or by its stated rate." },
    { concept: "tender", help: "A stage in line, and where it is used up." },
    {
      concept: "spring-side",
      help: "Rows of deflection against force in one direction, from nought upwards, or rates with a knee between them.",
      rows: [
        { key: quantity("length"), value: quantity("force") },
        { key: quantity("angle"), value: quantity("moment") },
      ],
    },
    { concept: "link-spring", help: "The spring in each drop link, and where it is used up." },
    {
      concept: "spring-curve",
      help: "Rows of deflection against force (torsional: angle against moment), from nought upwards.",
      rows: [
        { key: quantity("length"), value: quantity("force") },
        { key: quantity("angle"), value: quantity("moment") },
      ],
    },
    { concept: "force-adjuster", help: "How a force is adjusted, in braces behind its value." },
    { concept: "moment-adjuster", help: "How a moment is adjusted, in braces behind its value." },
  ],
  words: [
    ...stated,
    ...bothWays,
    ...coil,
    ...torsionBar,
    ...series,
    adjuster("force-adjuster", "force", "20 N"),
    adjuster("moment-adjuster", "moment", "5 N*m"),
  ],
};
