/**
 * The chassis mount of an element moved along the element's own line, so that its stroke lies where the travel needs it.
 * Its motion is nearly the same from there; the check on the changed text says whether it serves.
 */
import { add, norm, scale, sub } from "../../maths/vec3.js";
import type { Attachment } from "../../model/car.js";
import { showQuantity } from "../../quantities/index.js";
import { coordinatesText, isPlain } from "../coupling/coordinates.js";
import type { Fix } from "../finding.js";
import { isInside } from "../setup-lines.js";
import { clearedBy, type Mending } from "./proof.js";

/** To spare, m. */
const MARGIN = 1e-3;

type Mount = Extract<Attachment, { kind: "chassis" }>;

/** Its chassis end and its other one, where it has one of each at places that are known. */
function endsOf({ element: { model } }: Mending): { readonly mount: Mount; readonly other: Attachment } | undefined {
  if (model.connection?.kind !== "between") return undefined;
  const [one, two] = model.connection.ends;
  if (one.kind === "chassis") return { mount: one, other: two };
  return two.kind === "chassis" ? { mount: two, other: one } : undefined;
}

/** Only in the car that writes the mount, and only where a stated length makes room by it. */
export function movedMount(mending: Mending<"over-travel">): readonly Fix[] {
  const { context, car, element, fault } = mending;
  const ends = endsOf(mending);
  if (ends === undefined || !("point" in ends.other) || element.model.side === "right") return [];
  const { mount, other } = ends;
  const { origin, unit, value } = mount.point;
  const along = sub(value, other.point.value);
  const isOwn = isInside(origin, car.model.origin) && isPlain(context.text.slice(origin.start, origin.end));
  if (!isOwn || !(norm(along) > 0)) return [];
  // Longer at design leaves more in bump, shorter more in rebound.
  const by = (fault.way === "bump" ? 1 : -1) * (-fault.room.least + MARGIN);
  const text = coordinatesText(add(value, scale(along, by / norm(along))), unit);
  if (text === undefined) return [];
  const edits = [{ uri: origin.uri, span: { start: origin.start, end: origin.end }, newText: text }];
  if (clearedBy(mending, { edits }) === undefined) return [];
  const title = `Move its mount by ${showQuantity(Math.abs(by), unit, 2)} to ${text}`;
  return [{ title, edits, preferred: false, safe: false }];
}
