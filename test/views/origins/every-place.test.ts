/** Every place of every sample, whole or broken, can be asked about: nothing throws, and each step that is told has a line. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { askedAt } from "../../../server/views/origins/asked.js";
import { chainOf } from "../../../server/views/origins/chain.js";
import { chainOfAsked } from "../../../server/views/origins/chain-of-asked.js";
import { choicesOf } from "../../../server/views/origins/choices.js";
import { clubFiles } from "./club-files.js";

const folders = ["samples/quill", "samples/dunlin", "samples/tern", "samples/broken"];

/** Enough to stand in every statement of a file of some hundred lines. */
const STEP = 7;

describe.each(folders)("places of %s", (folder) => {
  const names = readdirSync(folder).filter((name) => name.endsWith(".crank"));
  const texts = Object.fromEntries(names.map((name) => [name, readFileSync(`${folder}/${name}`, "utf8")]));
  const club = clubFiles(texts);

  it.each(names)("%s", (name) => {
    const file = club.fileOf(name);
    const told = new Set<string>();
    for (let offset = 0; offset <= file.text.length; offset += STEP) {
      const asked = askedAt(file, offset);
      if (asked.kind === "none") {
        expect(asked.why).toMatch(/\.$/);
        continue;
      }
      const key = "origin" in asked ? `${asked.origin.start}` : `${asked.kind} ${asked.path.join(".")}`;
      if (told.has(key)) continue;
      told.add(key);
      choicesOf(asked, club.fileOf);
      const chain = chainOfAsked(asked, club.fileOf);
      const [first] = chain?.steps ?? [];
      if (first?.kind !== "removed" && first?.value !== undefined) expect(first.value).toBe(chain?.value);
      for (const { origin, text, kind } of chain?.steps ?? []) {
        if (kind !== "default") expect(origin).toBeDefined();
        expect(text).not.toBe("");
        if (origin !== undefined) expect(origin.end).toBeLessThanOrEqual(club.fileOf(origin.uri).text.length);
      }
    }
  });
});

/** Of whole cars: what a set-up's line says is what is in force, and the chain begins with that very line. */
describe.each(["samples/quill", "samples/dunlin", "samples/tern"])("override lines of %s", (folder) => {
  const names = readdirSync(folder).filter((name) => name.endsWith(".crank"));
  const texts = Object.fromEntries(names.map((name) => [name, readFileSync(`${folder}/${name}`, "utf8")]));
  const club = clubFiles(texts);
  const lines = names.flatMap((name) =>
    club.fileOf(name).cars.flatMap(({ model: { setup, origin } }) => {
      const entry = club.fileOf(name).parsed.document.entries.find(({ start }) => start === origin.start);
      const own = entry?.kind === "statement" && setup !== undefined ? (entry.block?.entries ?? []) : [];
      const dotted = own.flatMap((line) =>
        line.kind === "statement" && line.head.segments.length > 1 && line.block === undefined ? [line] : [],
      );
      return dotted.map((line) => ({ name, line }));
    }),
  );

  it("has some", () => expect(lines.length).toBeGreaterThan(1));

  it.each(lines.map(({ name, line }) => [club.fileOf(name).text.slice(line.start, line.end), name, line] as const))(
    "%s (%s)",
    (_, name, line) => {
      const asked = askedAt(club.fileOf(name), line.start + 1);
      expect(asked.kind).toBe("property");
      if (asked.kind !== "property") return;
      const [first] = chainOf(asked.car, asked.path, club.fileOf)?.steps ?? [];
      expect(first?.origin).toMatchObject({ start: line.start, end: line.end });
    },
  );
});
