/** The type hierarchy of set-ups over the wire: what one derives from and what derives from it, opened or not. */
import type { TypeHierarchyItem } from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { at, type Club, startClub } from "./club.js";

describe("type hierarchy over the wire", () => {
  let club: Club;
  let car: string;
  beforeAll(async () => {
    club = await startClub();
    club.write("storm.crank", 'use "wet.crank"\nsetup storm from quarrow-wet {\n  front.third.rate by -5 N/mm\n}\n');
    club.write("lost.crank", 'use "nowhere.crank"\nsetup lost from gone {\n  front.third.rate 1 N/mm\n}\n');
    club.write("ring.crank", "setup one from two { }\nsetup two from one { }\n");
    club.write("half.crank", 'use "quill.crank"\nsetup half from quill {\n  front.third.rate 4');
    car = await club.open("quill.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const prepare = async (name: string, text: string, marker: string, part?: string) =>
    club.wire.request<TypeHierarchyItem[] | null>("textDocument/prepareTypeHierarchy", {
      textDocument: { uri: club.uri(name) },
      position: at(text, marker, part),
    });
  const related = async (way: "supertypes" | "subtypes", item: TypeHierarchyItem) =>
    club.wire.request<TypeHierarchyItem[] | null>(`typeHierarchy/${way}`, { item });
  const names = (items: readonly TypeHierarchyItem[] | null) => items?.map(({ name }) => name).sort();

  it("a car's set-ups are found in files that nobody has open", async () => {
    const [item] = (await prepare("quill.crank", car, "car quill", "quill")) ?? [];
    expect(item).toMatchObject({ name: "quill", detail: "Quill 7, hill-climb single-seater" });
    if (item === undefined) return;
    expect(names(await related("subtypes", item))).toEqual(["half", "quarrow-dry", "quarrow-wet"]);
    expect(await related("supertypes", item)).toEqual([]);
  });

  it("from a set-up both ways, each with the place of its name", async () => {
    const text = club.read("wet.crank");
    const [item] = (await prepare("wet.crank", text, "setup quarrow-wet", "quarrow")) ?? [];
    expect(item).toMatchObject({ name: "quarrow-wet", detail: "from quill" });
    if (item === undefined) return;
    const [base] = (await related("supertypes", item)) ?? [];
    expect(base).toMatchObject({ name: "quill", uri: club.uri("quill.crank") });
    expect(base?.selectionRange.start).toEqual(at(car, "car quill", "quill"));
    const [storm] = (await related("subtypes", item)) ?? [];
    expect(storm).toMatchObject({ name: "storm", uri: club.uri("storm.crank"), detail: "from quarrow-wet" });
  });

  it("the name behind `from` speaks of the base, the word in front of the name of the set-up", async () => {
    const text = club.read("wet.crank");
    expect(names(await prepare("wet.crank", text, "from quill", "quill"))).toEqual(["quill"]);
    expect(names(await prepare("wet.crank", text, "setup quarrow-wet", "setup"))).toEqual(["quarrow-wet"]);
  });

  it("comments, values and elements have none", async () => {
    expect(await prepare("quill.crank", car, "# ready to run")).toBeNull();
    expect(await prepare("quill.crank", car, "rate 55 N/mm", "55")).toBeNull();
    expect(await prepare("quill.crank", car, "spring third", "third")).toBeNull();
  });

  it("a circle goes round one step at a time, and a base that is not there has no place", async () => {
    const ring = club.read("ring.crank");
    const [one] = (await prepare("ring.crank", ring, "setup one", "one")) ?? [];
    const [two] = one === undefined ? [] : ((await related("supertypes", one)) ?? []);
    expect(two?.name).toBe("two");
    expect(two && names(await related("supertypes", two))).toEqual(["one"]);
    const [lost] = (await prepare("lost.crank", club.read("lost.crank"), "setup lost", "lost")) ?? [];
    expect(lost?.detail).toBe("from gone");
    expect(lost && (await related("supertypes", lost))).toEqual([]);
  });

  it("an item that the editor kept is found by its name after the text moved", async () => {
    const [item] = (await prepare("quill.crank", car, "car quill", "quill")) ?? [];
    await club.wire.change(club.uri("quill.crank"), `# a line more\n${car}`);
    expect(item && names(await related("subtypes", item))).toContain("quarrow-wet");
    await club.wire.change(club.uri("quill.crank"), car);
  });
});
