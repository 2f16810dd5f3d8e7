/**
 * Colours, line styles and symbols of drawings. An image in a hover does not know the editor's theme, and no grey is
 * legible as small text on white and on near black alike: a drawing brings its own ground. None of the colours says
 * anything that a line style or a symbol does not say as well.
 */
import {
  symbolAsterisk,
  symbolCircle,
  symbolCross,
  symbolDiamond,
  symbolDiamond2,
  symbolPlus,
  symbolSquare,
  symbolSquare2,
  symbolStar,
  symbolTimes,
  symbolTriangle,
  symbolTriangle2,
  type SymbolType,
} from "d3-shape";

/** Blue and orange tell apart for every kind of colour sight; the violet differs from both in how light it is as well. */
export const colours = {
  text: "#595959",
  faint: "#7f7f7f",
  curve: "#3a82c8",
  event: "#c9701a",
  limit: "#b0559e",
} as const;

/** The ground of every drawing, as light as the hover of a light theme. */
export const PAPER = "#f8f8f8";

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  readonly dashes: string | undefined;
}

export const lineStyles = {
  main: { colour: colours.curve, width: 2, dashes: undefined },
  dashed: { colour: colours.event, width: 1.4, dashes: "6 3" },
  dotted: { colour: colours.faint, width: 1.4, dashes: "1.5 2.5" },
  "dash-dotted": { colour: colours.limit, width: 1.4, dashes: "7 2.5 1.5 2.5" },
} as const satisfies Readonly<Record<string, LineStyle>>;

export interface Sign {
  readonly shape: SymbolType;
  readonly colour: string;
  readonly filled: boolean;
}

const filled = (shape: SymbolType, colour: string): Sign => ({ shape, colour, filled: true });
const stroked = (shape: SymbolType, colour: string): Sign => ({ shape, colour, filled: false });

export const signs = {
  dot: filled(symbolCircle, colours.curve),
  triangle: filled(symbolTriangle, colours.event),
  diamond: filled(symbolDiamond, colours.event),
  plus: stroked(symbolPlus, colours.event),
  cross: filled(symbolCross, colours.limit),
  square: filled(symbolSquare, colours.limit),
  star: filled(symbolStar, colours.limit),
  times: stroked(symbolTimes, colours.limit),
  "open-triangle": stroked(symbolTriangle2, colours.limit),
  asterisk: stroked(symbolAsterisk, colours.faint),
  "open-square": stroked(symbolSquare2, colours.faint),
  "open-diamond": stroked(symbolDiamond2, colours.event),
} as const satisfies Readonly<Record<string, Sign>>;

export type SignName = keyof typeof signs;
export type LineStyleName = keyof typeof lineStyles;
