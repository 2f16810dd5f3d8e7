/** Where values come from and which set-ups change them, over the wire, with all but one file closed. */
import type { Hover, Location, MarkupContent } from "vscode-languageserver/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ChangersAnswer, ValueAsked, WhereFromAnswer } from "../../server/lsp/protocol-provenance.js";
import { Wire } from "../support/wire.js";
import { at, type Club, rangeAt, startClub } from "./club.js";

describe("provenance over the wire", () => {
  let club: Club;
  let car: string;
  let wet: string;
  beforeAll(async () => {
    club = await startClub();
    club.write("storm.crank", 'use "wet.crank"\nsetup storm from quarrow-wet {\n  front.third.rate by -5 N/mm\n}\n');
    car = await club.open("quill.crank");
    wet = club.read("wet.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const here = (name: string, text: string, marker: string, part?: string): ValueAsked => ({
    uri: club.uri(name),
    position: at(text, marker, part),
  });
  const whereFrom = async (asked: ValueAsked) => club.wire.request<WhereFromAnswer>("bellcrank/whereFrom", asked);
  const changers = async (asked: ValueAsked) => club.wire.request<ChangersAnswer>("bellcrank/changers", asked);
  const rate = "spring third for heave {\n      rate 55 N/mm";

  it("tells the chain with the place of each line, through files that nobody has open", async () => {
    const storm = club.read("storm.crank");
    const answer = await whereFrom(here("storm.crank", storm, "front.third.rate", "rate"));
    expect(answer).toEqual({
      kind: "chain",
      title: "front.third.rate of storm: 40 N/mm",
      steps: [
        {
          label: "40 N/mm",
          by: "set-up storm",
          text: "front.third.rate by -5 N/mm",
          where: {
            uri: club.uri("storm.crank"),
            range: rangeAt(storm, "front.third.rate by -5 N/mm"),
            shown: "storm.crank:3",
          },
        },
        expect.objectContaining({ label: "45 N/mm", by: "set-up quarrow-wet" }),
        expect.objectContaining({
          label: "55 N/mm",
          by: "car quill",
          where: expect.objectContaining({ uri: club.uri("quill.crank"), range: rangeAt(car, rate, "rate 55 N/mm") }),
        }),
      ],
    });
  });

  it("offers the values of a set-up and answers to the one that is chosen, written or not", async () => {
    const answer = await whereFrom(here("wet.crank", wet, "setup quarrow-wet", "setup"));
    expect(answer.kind).toBe("choose");
    if (answer.kind !== "choose") return;
    expect(answer.name).toBe("quarrow-wet");
    const gap = answer.values.find(({ path }) => path === "front.third.gap");
    expect(gap?.by).toBe("the language");
    const chosen = { uri: club.uri("wet.crank"), name: "quarrow-wet", path: "front.third.gap" };
    const chain = await whereFrom(chosen);
    expect(chain.kind === "chain" && chain.steps.map(({ by, where }) => [by, where])).toEqual([
      ["the language, when nothing is written", undefined],
    ]);
    const brought = await whereFrom({ ...chosen, path: "front.corner-bar.torsion-bar.diameter" });
    expect(brought.kind === "chain" && brought.steps.map(({ by }) => by)).toEqual([
      "part TB-105",
      "set-up quarrow-wet, fits the part",
      "part TB-110",
      "car quill, fits the part",
    ]);
  });

  it("says why there is nothing to tell", async () => {
    expect(await whereFrom(here("wet.crank", wet, 'use "quill.crank"', "quill"))).toMatchObject({ kind: "none" });
    expect(await whereFrom({ uri: club.uri("wet.crank"), name: "gone", path: "mass" })).toEqual({
      kind: "none",
      why: "wet.crank has no car or set-up gone any more.",
    });
    expect(await whereFrom({ uri: club.uri("wet.crank"), name: "quarrow-wet", path: "a.b" })).toMatchObject({
      kind: "none",
      why: expect.stringContaining("a.b") as string,
    });
    expect(await whereFrom({ uri: club.uri("none.crank"), position: { line: 3, character: 4 } })).toMatchObject({
      kind: "none",
    });
  });

  it("set-ups that change a value, with what it was and which way the line moves the car", async () => {
    const answer = await changers(here("quill.crank", car, rate, "55"));
    expect(answer.kind === "changers" && answer.title).toBe("Set-ups that change front.third.rate");
    const told = answer.kind === "changers" ? answer.changers : [];
    expect(told.map(({ by, label }) => `${by}: ${label}`).sort()).toEqual([
      "set-up quarrow-dry: 55 N/mm → 60 N/mm (+5 N/mm, +9.09 %)",
      "set-up quarrow-wet: 55 N/mm → 45 N/mm (-10 N/mm, -18.2 %)",
      "set-up storm: 45 N/mm → 40 N/mm (-5 N/mm, -11.1 %)",
    ]);
    const storm = told.find(({ by }) => by === "set-up storm");
    expect(storm?.text).toMatch(/^front\.third\.rate by -5 N\/mm: front heave rate -[\d.]+ %/);
    expect(await changers(here("quill.crank", car, "mass 540", "540"))).toEqual({
      kind: "none",
      why: "No set-up of this workspace changes mass.",
    });
  });

  it("the lines of these set-ups are the implementations of the value", async () => {
    const places = await club.wire.request<Location[]>("textDocument/implementation", {
      textDocument: { uri: club.uri("quill.crank") },
      position: at(car, rate, "55"),
    });
    const ofWet = places.find(({ uri }) => uri === club.uri("wet.crank"));
    expect(ofWet?.range).toEqual(rangeAt(wet, "front.third.rate 45 N/mm"));
    expect(places).toHaveLength(3);
    const none = await club.wire.request<Location[]>("textDocument/implementation", {
      textDocument: { uri: club.uri("quill.crank") },
      position: at(car, "# ready to run"),
    });
    expect(none).toEqual([]);
  });

  it("hovers link to both for a client that has the commands, and for no other", async () => {
    const wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
    await wire.initialize([], {
      initializationOptions: { commands: ["bellcrank.whereFrom", "bellcrank.showChangers"] },
    });
    const linksAt = async (by: Wire, name: string, text: string, marker: string, part?: string) => {
      const asked = { textDocument: { uri: club.uri(name) }, position: at(text, marker, part) };
      const hover = await by.request<Hover | null>("textDocument/hover", asked);
      const { value } = (hover?.contents ?? { value: "" }) as MarkupContent;
      return [...value.matchAll(/\[([^\]]+)\]\(command:(\S+?)\?(\S+)\)/g)].map(([, title, command, query]) => ({
        title,
        command,
        asked: JSON.parse(decodeURIComponent(query ?? "")) as unknown,
      }));
    };
    await wire.open(club.uri("wet.crank"), wet);
    await wire.findings(club.uri("wet.crank"));
    const links = await linksAt(wire, "wet.crank", wet, "front.third.rate 45", "45");
    expect(links.map(({ title }) => title)).toEqual(["Where this comes from", "Set-ups that change it"]);
    expect(links[0]?.asked).toEqual([here("wet.crank", wet, "front.third.rate 45", "45")]);
    const whole = await linksAt(wire, "wet.crank", wet, "setup quarrow-wet", "quarrow-wet");
    expect(whole.map(({ command }) => command)).toEqual(["bellcrank.whereFrom"]);
    expect(await linksAt(wire, "wet.crank", wet, "expect front", "expect")).toHaveLength(2);
    expect(await linksAt(wire, "wet.crank", wet, 'use "quill.crank"', "use")).toEqual([]);
    const mass = await linksAt(wire, "quill.crank", car, "mass 540", "540");
    expect(mass.map(({ command }) => command)).toEqual(["bellcrank.showChangers"]);
    expect(await linksAt(club.wire, "quill.crank", car, "mass 540", "540")).toEqual([]);
    await wire.stop();
  });

  it("follows what is typed", async () => {
    await club.wire.change(club.uri("quill.crank"), car.replace("rate 55 N/mm", "rate 57 N/mm"));
    const answer = await whereFrom(here("wet.crank", wet, "front.third.rate 45", "45"));
    expect(answer.kind === "chain" && answer.steps.map(({ label }) => label)).toEqual(["45 N/mm", "57 N/mm"]);
    await club.wire.change(club.uri("quill.crank"), car);
  });
});
