/** Words of the catalogue: the kinds of parts, each with the blocks that `fit` may put it in. */
import { stockWord } from "./file.js";
import { declares } from "./slots.js";
import type { PartFit, Word, WordGroup } from "./word.js";

const part = (word: string, fits: PartFit, example: string, help: string): Word => ({
  word,
  in: ["catalogue"],
  takes: [[declares("part")]],
  opens: `${word}-part`,
  block: "required",
  role: "part",
  times: "named",
  fits,
  example,
  help,
});

const parts: readonly Word[] = [
  part(
    "torsion-bar",
    { into: ["spring", "anti-roll-bar"], as: "block" },
    "torsion-bar TB-195 { diameter 19.5 mm, length 290 mm, stock 2 }",
    "A torsion bar or tube, for a spring or an anti-roll bar.",
  ),
  part(
    "coil",
    { into: ["spring"], as: "block" },
    "coil C-120 { rate 120 N/mm, free-length 150 mm, stock 2 }",
    "A coil spring, by its stated rate or by its wire.",
  ),
  part(
    "valving",
    { into: ["damper"], as: "contents" },
    "valving V-14 {\n  bump { 50 mm/s: 320 N, 100 mm/s: 470 N }\n  rebound { 50 mm/s: 410 N, 100 mm/s: 690 N }\n}",
    "A damper with its valving; the damper is swapped whole.",
  ),
  part(
    "bump-stop",
    { into: ["bump-stop"], as: "contents" },
    "bump-stop BS-40 {\n  power-law { force 1500 N, deflection 12 mm, exponent 2.5 }\n  stock 4\n}",
    "A bump stop; gap and packers stay with the element.",
  ),
  part(
    "gas-spring",
    { into: ["gas-spring"], as: "contents" },
    "gas-spring GS-20 { pressure 20 bar, volume 80 ml, area 314 mm^2, stock 1 }",
    "A gas spring with its charge.",
  ),
  part(
    "inerter",
    { into: ["inerter"], as: "contents" },
    "inerter I-60 { inertance 60 kg, stock 1 }",
    "An inerter with its inertance.",
  ),
  part(
    "blade",
    { into: ["anti-roll-bar"], as: "block" },
    "blade BL-8 { section 8 x 30 mm, length 70 mm, stock 2 }",
    "A pair of blade levers for an anti-roll bar.",
  ),
  part(
    "link-spring",
    { into: ["anti-roll-bar"], as: "block" },
    "link-spring LS-90 { rate 90 N/mm, travel 3 mm, stock 2 }",
    "A pair of springs for the drop links of an anti-roll bar.",
  ),
];

export const catalogueGroup: WordGroup = {
  title: "Catalogue",
  help: "Parts by name. `fit NAME` in an element takes one; the words inside are those of the element's own block.",
  concepts: [
    { concept: "catalogue", help: "What is on the shelf." },
    { concept: "torsion-bar-part", help: "A torsion bar on the shelf." },
    { concept: "coil-part", help: "A coil spring on the shelf." },
    { concept: "valving-part", help: "A damper valving on the shelf." },
    { concept: "bump-stop-part", help: "A bump stop on the shelf." },
    { concept: "gas-spring-part", help: "A gas spring on the shelf." },
    { concept: "inerter-part", help: "An inerter on the shelf." },
    { concept: "blade-part", help: "A pair of blades on the shelf." },
    { concept: "link-spring-part", help: "A pair of drop-link springs on the shelf." },
  ],
  words: [...parts, { ...stockWord, in: parts.flatMap((word) => word.opens ?? []) }],
};
