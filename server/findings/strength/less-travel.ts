/** The axle's travel taken back to where an element still has room, with a millimetre to spare. */
import { fromSI } from "../../quantities/index.js";
import type { Fix } from "../finding.js";
import { valueEdit } from "../setup-lines.js";
import { onGrid } from "./line-edits.js";
import { clearedBy, type Mending } from "./proof.js";

const MILLIMETRE = 1e-3;

/** Only for what comes about in heave: in roll both ends of the travel are concerned. */
export function lessTravel(mending: Mending): readonly Fix[] {
  const { context, car, element, fault, unit } = mending;
  const travel = element.axle?.travel;
  if (travel?.given === undefined || fault.where.mode !== "heave") return [];
  const { travel: at } = fault.where;
  const end = onGrid(at - Math.sign(at) * MILLIMETRE, unit, MILLIMETRE, at > 0 ? "down" : "up");
  const [from, to] = [travel.from, travel.to].map((value) => fromSI(value, unit));
  if (end === undefined || from === undefined || to === undefined) return [];
  const kept = (value: number): string => `${Number(value.toFixed(4))}`;
  const short = end.replace(/ .*$/, "");
  const text = at > 0 ? `${kept(from)} .. ${short} ${unit}` : `${short} .. ${kept(to)} ${unit}`;
  const path = `${element.axle?.name ?? ""}.travel`;
  const edit = valueEdit(context, car.model, { given: travel.given, path, text });
  if (edit === undefined || clearedBy(mending, { edits: [edit] }) === undefined) return [];
  return [{ title: `Shorten the travel to ${text}`, edits: [edit], preferred: false, safe: false }];
}
