/** The table itself: nothing twice, nothing that leads nowhere, nothing without help. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  concepts,
  conceptOf,
  connectives,
  dimensionOfSlot,
  findWord,
  joiningWords,
  limitsOf,
  modesIn,
  opensAt,
  opensFor,
  reservedNames,
  usualOf,
  words,
  wordsIn,
  type Limits,
  type Word,
} from "../../grammar/vocabulary/index.js";
import { stockWord } from "../../grammar/vocabulary/file.js";
import { starterText } from "../../grammar/vocabulary/starter-text.js";
import { toSI } from "../../server/quantities/index.js";
import { unknownIn } from "./known-words.js";

const opened = (word: Word): string[] =>
  [word.opens, ...(word.opensByForm ?? [])].filter((concept) => concept !== undefined);

describe("the vocabulary", () => {
  it("has every word once in a block", () => {
    const places = words.flatMap((word) => word.in.map((concept) => `${concept} ${word.word}`));
    expect(places.length).toBe(new Set(places).size);
  });

  it("describes every block once, and every block that is opened or stood in", () => {
    const known = concepts.map(({ concept }) => concept);
    expect(known.length).toBe(new Set(known).size);
    expect(words.flatMap((word) => [...word.in, ...opened(word)]).filter((name) => !known.includes(name))).toEqual([]);
  });

  it("has a way into every block, and something in it", () => {
    const entered = new Set(["file", ...words.flatMap(opened)]);
    expect(concepts.filter(({ concept }) => !entered.has(concept))).toEqual([]);
    const empty = concepts.filter(({ concept, rows }) => rows === undefined && wordsIn(concept).length === 0);
    expect(empty).toEqual([]);
  });

  it("says for each word that opens a block whether it has to, and one block a form", () => {
    const wrong = words.filter(
      (word) =>
        opened(word).length > 0 !== (word.block !== undefined) ||
        (word.opensByForm !== undefined && word.opensByForm.length !== word.takes.length) ||
        word.takes.length === 0,
    );
    expect(wrong.map(({ word }) => word)).toEqual([]);
  });

  it("helps with every word and block in whole sentences", () => {
    const lacking = [...words, ...concepts].filter(({ help }) => help.length < 12 || !/[.)]$/.test(help));
    expect(lacking.map(({ help }) => help)).toEqual([]);
  });

  it("has a starter or a block for whatever is needed", () => {
    const lacking = words.filter(
      (word) =>
        word.needed === true && word.starter === undefined && word.example === undefined && !opened(word).length,
    );
    expect(lacking.map(({ word }) => word)).toEqual([]);
  });

  it("spares a needed word only for words of the same blocks", () => {
    const wrong = words.filter(
      ({ in: where, needed, unless = [] }) =>
        (unless.length > 0 && needed !== true) ||
        unless.some((other) => where.every((concept) => findWord(concept, other) === undefined)),
    );
    expect(wrong.map(({ word }) => word)).toEqual([]);
  });

  it("starts with values seen in practice", () => {
    const strange = words.filter((word) => {
      const [value, unit = ""] = (word.starter ?? "").split(" ");
      const slot = word.takes[0]?.find((candidate) => candidate.kind === "quantity");
      const usual = slot === undefined ? undefined : usualOf(word, slot);
      const si = toSI(Number(value), unit);
      return usual !== undefined && si !== undefined && (si < usual.from || si > usual.to);
    });
    expect(strange.map(({ word }) => word)).toEqual([]);
  });

  it("says what holds when a property that is not needed is absent", () => {
    const silent = words.filter(
      (word) => word.role === "property" && word.needed !== true && word.fallback === undefined,
    );
    expect(silent.map(({ word, in: where }) => `${where[0]} ${word}`)).toEqual([]);
  });

  it("explains every connective that a form uses, and only connectives", () => {
    const used = words
      .flatMap((word) => word.takes.flat())
      .flatMap((slot) => (slot.kind === "keyword" ? [slot.word] : []));
    const joining = new Set(["and", "by", "for", ...used.filter((word) => connectives.has(word))]);
    expect([...joining].filter((word) => !Object.hasOwn(joiningWords, word))).toEqual([]);
    expect(Object.keys(joiningWords).filter((word) => !connectives.has(word))).toEqual([]);
  });

  it("fits parts into blocks that are there", () => {
    for (const part of words.filter(({ role }) => role === "part")) {
      for (const concept of part.fits?.into ?? []) {
        const own = wordsIn(part.opens ?? "").filter(({ word }) => word !== stockWord.word);
        const inside = part.fits?.as === "block" ? findWord(concept, part.word)?.opens : concept;
        const missing = own.filter(({ word }) => findWord(inside ?? "", word) === undefined);
        expect(missing.map(({ word }) => `${part.word} ${word} in ${inside}`)).toEqual([]);
        expect(findWord(concept, "fit")).toBeDefined();
      }
    }
  });

  it("keeps starters and usual ranges within the hard limits", () => {
    const ranges = words.flatMap((word) =>
      word.takes.flat().map((slot) => ({ word: word.word, usual: usualOf(word, slot), limits: limitsOf(word, slot) })),
    );
    const wrong = ranges.filter(
      ({ usual, limits }) =>
        usual !== undefined &&
        !(usual.from < usual.to && usual.source !== "" && allowed(usual.from, limits) && allowed(usual.to, limits)),
    );
    expect(ranges.filter(({ usual }) => usual !== undefined).length).toBeGreaterThan(50);
    expect(wrong.map(({ word }) => word)).toEqual([]);
  });
});

function allowed(value: number, limits: Limits = {}): boolean {
  return (
    value >= (limits.atLeast ?? -Infinity) &&
    value <= (limits.atMost ?? Infinity) &&
    // A range that begins at an open limit (nothing is thinner than 0) is as far as it can be said.
    value >= (limits.above ?? -Infinity) &&
    value <= (limits.below ?? Infinity)
  );
}

describe("look-ups", () => {
  it("find a word in its block only", () => {
    expect(findWord("axle", "track")?.starter).toBe("1450 mm");
    expect(findWord("car", "track")).toBeUndefined();
    expect(findWord("no such block", "track")).toBeUndefined();
    expect(findWord("axle", "constructor")).toBeUndefined();
    expect(conceptOf("wheel")?.concept).toBe("wheel");
  });

  it("tell the block that each form of linkage opens", () => {
    const linkage = findWord("axle", "linkage") as Word;
    expect([0, 1, 2].map((form) => opensAt(linkage, form))).toEqual(["linkage", "linkage-planar", undefined]);
    expect(opensFor(linkage, [])).toBe("linkage");
    expect(opensFor(linkage, ["planar"])).toBe("linkage-planar");
    expect(opensFor(linkage, ["ratio"])).toBeUndefined();
    expect(opensFor(findWord("axle", "spring") as Word, ["third", "for", "heave"])).toBe("spring");
  });

  it("give a usual range to the first dimension only, and limits to all", () => {
    const rate = findWord("spring", "rate") as Word;
    const [linear, torsional] = rate.takes.flat();
    expect(linear && dimensionOfSlot(linear)).toBe("rate");
    expect(linear && usualOf(rate, linear)).toBeDefined();
    expect(torsional && usualOf(rate, torsional)).toBeUndefined();
    expect(torsional && limitsOf(rate, torsional)).toEqual({ above: 0 });
  });

  it("know the modes of a scope", () => {
    expect(modesIn("axle")).toEqual(["corner", "heave", "roll"]);
    expect(modesIn("car")).toEqual(["heave", "pitch", "roll", "warp"]);
  });

  it("reserve what an override path may mean", () => {
    const names = [
      "left",
      "chassis",
      "camber",
      "rocker",
      "travel",
      "heave-rate",
      "third",
      "side-damper",
      "bar",
      "corner-bar",
      "platform",
    ];
    const free = ["third", "side-damper", "bar", "corner-bar", "platform"];
    expect(names.filter((name) => !reservedNames.has(name))).toEqual(free);
  });
});

const quill = readFileSync(new URL("./fixtures/quill.crank", import.meta.url), "utf8");

describe("starter texts", () => {
  const places = words.flatMap((word) => word.in.map((concept) => ({ word, concept })));

  it.each(places.map(({ word, concept }) => ({ word, concept, title: `${word.word} in ${concept}` })))(
    "$title is known in its place",
    ({ word, concept }) => {
      // Overrides in the examples speak of the car that the design shows.
      expect(unknownIn(wrapped(word, concept), [quill])).toEqual([]);
    },
  );
});

/** The statement inside blocks that lead to its place. */
function wrapped(word: Word, place: string): string {
  let text = starterText(word);
  let concept = place;
  for (let depth = 0; concept !== "file" && depth < 9; depth++) {
    const { opener, head } = wayInto(concept);
    text = `${head} {\n${text}\n}`;
    concept = opener.in[0] ?? "file";
  }
  return text;
}

function wayInto(concept: string): { opener: Word; head: string } {
  for (const opener of words) {
    const form = opener.takes.findIndex((_, index) => opensAt(opener, index) === concept);
    if (form < 0 || opener.in.includes(concept)) continue;
    const slots = (opener.takes[form] ?? []).map((slot) => {
      switch (slot.kind) {
        case "keyword":
          return slot.word;
        case "choice":
          return slot.words[0];
        case "quantity":
          return opener.starter;
        case "text":
          return '"text"';
        case "modes":
          return "roll";
        case "attachment":
          return "rocker.side";
        default:
          return "some-name";
      }
    });
    const starter = opener.takes[form]?.length === 1 ? opener.starter : undefined;
    const quantity = opener.takes[form]?.[0]?.kind === "quantity" ? starterFor(opener, form, starter) : undefined;
    return { opener, head: [opener.word, ...(quantity === undefined ? slots : [quantity])].join(" ") };
  }
  throw new Error(`no way into ${concept}`);
}

/** A value in the form's dimension: the starter holds for the first form only. */
function starterFor(opener: Word, form: number, starter: string | undefined): string | undefined {
  if (form === 0) return starter;
  const slot = opener.takes[form]?.[0];
  return slot?.kind === "quantity"
    ? { angle: "1 deg", moment: "1 N*m" }[slot.dimension as "angle" | "moment"]
    : starter;
}
