/** The kinds of element and the modes that an element can be for: shared words without text behind them. */
export type { ElementKind, Mode } from "../model/car.js";
