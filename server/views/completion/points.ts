/** Places that an element can be connected to: the eyes of the rockers, the bodies, the chassis, the levers of bars. */
import { type Candidate, candidate } from "./candidate.js";
import type { ValueScene } from "./scene.js";

export function attachmentCandidates(scene: ValueScene, slot: "attachment" | "body"): readonly Candidate[] {
  const bodies = ["rocker", "left.rocker", "right.rocker", "chassis"];
  if (slot === "body") return bodies.map((body) => candidate(body, "name", scene.span));
  const eyes = eyesOf(scene).flatMap((eye) => [`rocker.${eye}`, `left.rocker.${eye}`, `right.rocker.${eye}`]);
  const fixed = ["chassis", "lower-wishbone", "upper-wishbone", "upright"].map((name) =>
    candidate(name, "name", scene.span, {
      insert: `${name} (\${1:0}, \${2:0}, \${3:0}) mm`,
      snippet: true,
      detail: "a point fixed to it",
    }),
  );
  return [
    ...eyes.map((eye) => candidate(eye, "eye", scene.span, { detail: "eye of the rocker", rank: 0 })),
    ...leversOf(scene).map((lever) => candidate(lever, "eye", scene.span, { detail: "end of the bar's lever" })),
    ...fixed,
  ];
}

function eyesOf(scene: ValueScene): readonly string[] {
  const corner = scene.axle === undefined ? undefined : scene.car?.model.axles[scene.axle]?.corner.left;
  if (corner?.kind !== "hardpoints" && corner?.kind !== "planar") return [];
  return [...(corner.rocker?.eyes.keys() ?? [])];
}

function leversOf(scene: ValueScene): readonly string[] {
  const elements = scene.axle === undefined ? [] : (scene.car?.model.axles[scene.axle]?.elements ?? []);
  return elements.filter(({ connection }) => connection?.kind === "bar").map(({ name }) => `${name}.lever.end`);
}
