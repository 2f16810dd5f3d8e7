/** What the mechanism panel asks, over the wire: of the sample car as it is typed, and of every text with a mistake. */
import { readFileSync, readdirSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type {
  MechanismAnswer,
  MechanismParams,
  MoveEyeAnswer,
  MoveEyeParams,
  PanelCurvesAnswer,
} from "../../server/lsp/protocol-panel.js";
import { at, type Club, edited, startClub } from "./club.js";

describe("over the wire", () => {
  let club: Club;
  const mechanism = (asked: MechanismParams) => club.wire.request<MechanismAnswer>("bellcrank/mechanism", asked);
  const moveEye = (asked: MoveEyeParams) => club.wire.request<MoveEyeAnswer>("bellcrank/moveEye", asked);
  const rollLow = (uri: string, name: string, to: MoveEyeParams["to"]): MoveEyeParams => ({
    uri,
    name,
    axle: "front",
    side: "left",
    point: "rocker.roll-low",
    to,
  });

  beforeEach(async () => {
    club = await startClub();
  });
  afterEach(async () => {
    expect(await club.close()).toBe(0);
  });

  it("the mechanism follows what is typed, and keeps to its places in the text", async () => {
    const text = await club.open("quill.crank");
    const uri = club.uri("quill.crank");
    const before = await mechanism({ uri });
    const [front] = before.car!.axles;
    const third = front!.elements.find(({ name }) => name === "third")!;
    expect(third.place.range.start).toEqual(at(text, "spring third for heave"));
    await club.wire.change(uri, text.replace("eye roll-low (45, 175, 348) mm", "eye roll-low (45, 175, 356) mm"));
    const after = await mechanism({ uri });
    const leak = (answer: MechanismAnswer) =>
      answer.car!.axles[0]!.elements.find(({ name }) => name === "roll-damper")!.leak;
    expect(leak(before)?.level).toBeUndefined();
    expect(leak(after)).toMatchObject({ mode: "heave", level: "warning" });
  });

  it("a dragged eye is answered with an edit that makes the text what was shown", async () => {
    const text = await club.open("quill.crank");
    const uri = club.uri("quill.crank");
    const moved = await moveEye(rollLow(uri, "quill", [0.3, 0.17642, 0.35118]));
    expect(moved.at).toEqual([0.045, 0.1764, 0.3512]);
    const changed = edited(text, [moved.edit!]);
    expect(changed).toContain("eye roll-low (45, 176.4, 351.2) mm");
    expect(changed.split("\n").length).toBe(text.split("\n").length);
    await club.wire.change(uri, changed);
    const { car } = await mechanism({ uri });
    const shape = (axle: MoveEyeAnswer["axle"]) => axle!.left.points.map(({ id, at: table }) => [id, table]);
    expect(shape(car!.axles[0])).toEqual(shape(moved.axle));
    expect(car!.axles[0]!.figures).toEqual(moved.axle!.figures);
  });

  it("asking about a drag changes nothing", async () => {
    const text = await club.open("wet.crank");
    const uri = club.uri("wet.crank");
    const asked = rollLow(uri, "wet", [0.045, 0.175, 0.352]);
    const first = await moveEye(asked);
    expect(first.edit?.newText).toContain("front.rocker.roll-low (45, 175, 352) mm");
    expect(first.edit?.uri).toBe(uri);
    expect(await moveEye(asked)).toEqual(first);
    expect(edited(text, [first.edit!])).toContain(text.trimEnd().slice(0, 200));
  });

  it("every curve has points, or says why not", async () => {
    await club.open("quill.crank");
    const asked = { uri: club.uri("quill.crank") };
    const { curves } = await club.wire.request<PanelCurvesAnswer>("bellcrank/panelCurves", asked);
    expect(new Set(curves.map(({ id }) => id)).size).toBe(curves.length);
    for (const { series, missing } of curves) expect(series.length > 0 || missing !== undefined).toBe(true);
    const groups = curves.map(({ group, title }) => `${group}: ${title}`).join("\n");
    for (const what of [
      /camber/i,
      /toe/i,
      /roll centre/i,
      /leaks: elements for roll/i,
      /per wheel travel/i,
      /ride height/i,
    ])
      expect(groups).toMatch(what);
  });

  it("no mistake in a text leaves the panel without an answer", async () => {
    const names = readdirSync("samples/broken").filter((file) => file.endsWith(".crank"));
    for (const name of names) club.write(name, readFileSync(`samples/broken/${name}`, "utf8"));
    const unanswered: string[] = [];
    for (const name of names) {
      await club.wire.open(club.uri(name), club.read(name));
      const asked = { uri: club.uri(name) };
      const { car } = await mechanism(asked);
      const corners = car?.axles.flatMap(({ left, right }) => [left, right]) ?? [];
      const { curves } = await club.wire.request<PanelCurvesAnswer>("bellcrank/panelCurves", asked);
      const moved = await moveEye(rollLow(asked.uri, car?.name ?? "", [0, 0, Number.MAX_VALUE]));
      if (corners.some(({ points, missing }) => points.length === 0 && missing === undefined))
        unanswered.push(`${name}: corner`);
      if (curves.some(({ series, missing }) => series.length === 0 && missing === undefined))
        unanswered.push(`${name}: curve`);
      if (moved.edit === undefined && moved.reason === undefined) unanswered.push(`${name}: drag`);
    }
    expect(unanswered).toEqual([]);
  }, 60_000);
});
