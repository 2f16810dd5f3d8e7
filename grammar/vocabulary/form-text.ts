/** A form as it would be written, slot by slot: for help, messages and the reference page. One wording for all. */
import type { DimensionName, Form, Slot } from "./word.js";

/** How a dimension is shown: where a whole value stands, or as the unit behind numbers that are shown already. */
export type ShowDimension = (dimension: DimensionName, as: "value" | "unit") => string;

/** "between END and END", "NAME for MODE"; empty for a form that takes nothing. */
export function formText(form: Form, show: ShowDimension): string {
  return form.map((slot) => slotText(slot, show)).join(" ");
}

export function slotText(slot: Slot, show: ShowDimension): string {
  switch (slot.kind) {
    case "keyword":
      return slot.word;
    case "choice":
      return slot.words.join(" | ");
    case "quantity":
      return slot.label ?? show(slot.dimension, "value");
    case "point":
      return pointText(slot, show);
    case "range":
      return `FROM .. TO ${show(slot.dimension, "unit")}`.trim();
    case "text":
      return `"${slot.label}"`;
    case "name":
      return slot.declares === "let" ? "NAME =" : "NAME";
    case "reference":
      return slot.to.toUpperCase();
    case "attachment":
      return "END";
    case "body":
      return "BODY";
    case "modes":
      return "MODE";
    case "figure":
      return "FIGURE";
  }
}

function pointText({ size, dimension }: Extract<Slot, { kind: "point" }>, show: ShowDimension): string {
  const numbers = size === 3 ? "(x, y, z)" : "(y, z)";
  return dimension === "length" ? `${numbers} ${show("length", "unit")}` : numbers;
}
