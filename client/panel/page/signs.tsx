/** Each kind's sign, between two places of the drawing or alone in a list; and each mode's colour and line style. */
import type { JSX } from "preact";
import type { PanelElement, PanelMode } from "../../../server/lsp/protocol-panel.js";
import type { Point2 } from "./geometry.js";
import { boxGlyph, damperGlyph, type Glyph, polyline, ring, springGlyph } from "./glyphs.js";
import type { PartOf } from "./strokes.js";

const BARS: Readonly<Record<string, number>> = { actuator: 0, "gas-spring": 1, "hydraulic-link": 2, inerter: 3 };

export function glyphOf(kind: string, a: Point2, b: Point2, size: number, aside: number): Glyph {
  switch (kind) {
    case "spring":
      return springGlyph(a, b, size, aside);
    case "damper":
      return damperGlyph(a, b, size * 0.9, aside);
    case "anti-roll-bar":
      return twistGlyph(a, b, size * 0.45);
    default:
      return boxGlyph(a, b, size, BARS[kind] ?? 4, aside);
  }
}

/** A bar that is twisted: two lines with a cross where the twist is. */
export function twistGlyph([ax, ay]: Point2, [bx, by]: Point2, size: number): Glyph {
  const length = Math.hypot(bx - ax, by - ay);
  if (length < 4 * size) return { line: ring([(ax + bx) / 2, (ay + by) / 2], Math.round(2 * size * 10) / 10) };
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  const at = (along: number, aside: number): Point2 => [ax + ux * along - uy * aside, ay + uy * along + ux * aside];
  const [from, to] = [length / 2 - 3 * size, length / 2 + 3 * size];
  const side = (k: number): string =>
    polyline([at(0, k * size), at(from, k * size), at(to, -k * size), at(length, -k * size)]);
  return { line: side(1) + side(-1) };
}

const COLOURS: Readonly<Record<PanelMode, string>> = {
  heave: "var(--heave)",
  roll: "var(--roll)",
  corner: "var(--single)",
  pitch: "var(--pitch)",
  warp: "var(--pitch)",
};

/** An element for several modes wears the first one's colour; its row names them all. */
export const colourOf = ({ for: modes }: PanelElement): string => COLOURS[modes[0] ?? "corner"];

const DASHES: Readonly<Record<PanelMode, string | undefined>> = {
  heave: undefined,
  corner: undefined,
  roll: "5 2.6",
  pitch: "8 2.5 1.5 2.5",
  warp: "2 2.5",
};

export const dashOf = ({ for: modes }: PanelElement): string | undefined => DASHES[modes[0] ?? "corner"];

export const PART_COLOURS: Readonly<Record<PartOf, string>> = {
  heave: "var(--heave)",
  roll: "var(--roll)",
  single: "var(--single)",
  pitch: "var(--pitch)",
  rest: "var(--rest)",
};

/** As it stands in a list, 20 px square. */
export function Sign({ element }: { readonly element: PanelElement }): JSX.Element {
  const glyph =
    element.drawn[0]?.kind === "about"
      ? twistGlyph([1, 10], [19, 10], 2.4)
      : glyphOf(element.kind, [1, 10], [19, 10], 4, 0);
  return (
    <svg class="sign" viewBox="0 0 20 20" aria-hidden="true" style={{ color: colourOf(element) }}>
      <g fill="none" stroke="currentColor" stroke-width="1.5" stroke-linejoin="round" stroke-linecap="round">
        {glyph.body === undefined ? null : <path d={glyph.body} />}
        <path d={glyph.line} />
      </g>
    </svg>
  );
}
