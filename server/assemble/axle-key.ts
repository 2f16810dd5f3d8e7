/**
 * The content key of an axle: every name and number that its mechanism is built from, as text. Two axles
 * with the same key have the same figures, in whatever file and at whatever place they are written.
 *
 * It is written out field by field, since it is made anew on every keystroke: it follows `assemble.ts`, and a
 * test changes every number of a car in turn and asks for another key.
 *
 * Invariant: places, units and notes are not part of it.
 */
import type {
  Attachment,
  AxleModel,
  CarModel,
  ConnectionModel,
  CornerModel,
  ElementModel,
  ResolvedBlock,
  ResolvedValue,
  WheelModel,
} from "../model/car.js";
import type { Given } from "../model/origin.js";
import { massesOfCar, restingOf } from "./masses.js";
import { dimensionOfUnit } from "../quantities/index.js";

/** A number or point, `-` where it is not given. */
const given = (value: Given<number | readonly number[]> | undefined): string =>
  value === undefined ? "-;" : `${String(value.value)};`;

const wheelPlaceKey = ({ centre, camber, toe, loadedRadius }: WheelModel): string =>
  given(centre) + given(camber) + given(toe) + given(loadedRadius);

const wheelKey = ({ unsprungMass, tyreRate }: WheelModel): string => given(unsprungMass) + given(tyreRate);

function rodKey(rod: Extract<CornerModel, { kind: "hardpoints" | "planar" }>["rod"]): string {
  return rod === undefined
    ? "no rod;"
    : `${rod.kind} ${rod.on} ${given(rod.outer)}${given(rod.inner)}${given(rod.longer)}`;
}

/** Eyes are not part of it: each element that is joined to one has its point. */
function cornerKey(corner: CornerModel): string {
  if (corner.kind === "ratio") return "ratio;";
  if (corner.kind === "incomplete") return `incomplete ${corner.missing.join()};`;
  const { lower, upper, rocker } = corner;
  if (corner.kind === "planar") {
    const arms = given(corner.lower.inner) + given(lower.outer) + given(corner.upper.inner) + given(upper.outer);
    return `planar ${arms}${rodKey(corner.rod)}${given(rocker?.pivot)}`;
  }
  const arms = [corner.lower, corner.upper]
    .map(({ fore, aft, outer }) => given(fore) + given(aft) + given(outer))
    .join("");
  const { trackRod } = corner;
  const axis = given(corner.rocker?.pivot) + given(corner.rocker?.axis);
  return `hardpoints ${arms}${given(trackRod.inner)}${given(trackRod.outer)}${rodKey(corner.rod)}${axis}`;
}

function endKey(end: Attachment | undefined): string {
  if (end === undefined) return "off;";
  switch (end.kind) {
    case "chassis":
      return `chassis ${given(end.point)}`;
    case "eye":
      return `${end.axle} ${end.side} rocker ${given(end.point)}`;
    case "body":
      return `${end.axle} ${end.side} ${end.body} ${given(end.point)}`;
    case "lever-end":
      return `${end.axle} ${end.side} ${end.bar};`;
  }
}

type BarModel = Extract<ConnectionModel, { kind: "bar" }>;

const linksKey = (links: BarModel["links"], longer: BarModel["longer"]): string =>
  `${endKey(links.left)}${given(longer.left)}${endKey(links.right)}${given(longer.right)}`;

function connectionKey(connection: ConnectionModel | undefined): string {
  if (connection === undefined) return "none;";
  switch (connection.kind) {
    case "between":
      return `between ${endKey(connection.ends[0])}${endKey(connection.ends[1])}`;
    case "twists": {
      const { of, against, tie } = connection;
      const other = against.body === "chassis" ? "chassis" : `${against.axle} ${against.side}`;
      return `twists ${of.axle} ${of.side} ${other} ${given(tie)}`;
    }
    case "bar": {
      const { levers, links } = connection;
      const both = [levers.left, levers.right]
        .map(({ pivot, axis, end }) => given(pivot) + given(axis) + given(end))
        .join("");
      return `bar ${both}${linksKey(links, connection.longer)}`;
    }
    case "tee": {
      const { foot, head, ends, links, longer } = connection;
      const points = given(foot) + given(head) + given(ends.left) + given(ends.right);
      return `tee ${points}${linksKey(links, longer)}`;
    }
    case "ratio":
      return `ratio ${connection.torsional} ${connection.ratios
        .map(
          ({ mode, ratio }) =>
            `${mode} ${ratio.kind === "constant" ? given(ratio.value) : `${ratio.travel.join()}:${ratio.deflection.join()};`}`,
        )
        .join("")}`;
    case "cylinders": {
      const { cylinders, lines } = connection;
      const ends = cylinders.map(({ name, ends: [one, other] }) => `${name} ${endKey(one)}${endKey(other)}`).join("");
      return `${ends}${lines.map(({ from, to, crossed, oneWay }) => `${from} ${to} ${crossed} ${oneWay ?? ""};`).join("")}`;
    }
  }
}

function valueKey(value: ResolvedValue): string {
  switch (value.kind) {
    case "number":
      return `${value.value} ${value.dimension},`;
    case "word":
      return `${value.text},`;
    case "range":
      return `${value.value.join(" ")} ${dimensionOfUnit(value.unit) ?? ""},`;
    default:
      // Points, names and attachments of an element are those of its connection.
      return "";
  }
}

/** A row of an actuator is that of a load case, by its name. */
const rowKey = (key: ResolvedValue): string => (key.kind === "path" ? `${key.segments.join(".")},` : valueKey(key));

/** The words of a law with their numbers. */
export function blockKey(block: ResolvedBlock): string {
  let text = "";
  for (const { word, form, values, block: inner } of block.statements) {
    text += `${word} ${form} `;
    for (const value of values) text += valueKey(value);
    if (inner !== undefined) text += `{${blockKey(inner)}}`;
  }
  for (const { key, value } of block.rows) text += `${rowKey(key)}:${valueKey(value)}`;
  return text;
}

const elementKey = ({ path, kind, side, for: modes, connection, block }: ElementModel): string =>
  `${path} ${kind} ${side ?? ""} ${modes.join()} ${connectionKey(connection)}${blockKey(block)}\n`;

const joinedKey = ({ path, kind, side, connection }: ElementModel): string =>
  `${path} ${kind} ${side ?? ""} ${connectionKey(connection)}\n`;

/** The key of what the points of an axle alone decide, within its envelope and at its ride height. */
export function geometryKey({ name, rideHeight, drawnRideHeight, travel, wheel, corner, elements }: AxleModel): string {
  const heights = given(rideHeight) + given(drawnRideHeight);
  const wheels = wheelPlaceKey(wheel.left) + wheelPlaceKey(wheel.right);
  const corners = cornerKey(corner.left) + cornerKey(corner.right);
  return `${name} ${heights}${travel.from} ${travel.to};${wheels}${corners}\n${elements.map(joinedKey).join("")}`;
}

const lawKey = ({ for: modes, block }: ElementModel): string => `${modes.join()} ${blockKey(block)}\n`;

/** The key of an axle: made, or at hand. */
export type KeyOf = (axle: AxleModel, car: CarModel) => string;

/** The key of everything that joins the axles: of both of them, and of the elements between them. */
export function joiningKey(car: CarModel, keyOf: KeyOf = axleKey): string {
  const { front, rear } = car.axles;
  const axles = [front, rear].map((axle) => (axle === undefined ? "-" : keyOf(axle, car)));
  return `${axles.join("\n")}\n${car.elements.map(elementKey).join("")}`;
}

/** What the wheels carry at rest: of a car with lines beside its mass, or not balanced about the centre plane, whatever that rests on. */
function massKey(car: CarModel): string {
  const masses = massesOfCar(car);
  const { total, frontShare } = masses;
  const { left, crossWeight, tracks, hasSeatEachSide } = restingOf(car, masses);
  const stated = `${given(car.mass)}${given(car.massFront)}${total} ${frontShare};`;
  if (left === 0 && crossWeight === 0.5) return stated;
  return `${stated}${left} ${crossWeight} ${JSON.stringify(tracks)}${JSON.stringify(hasSeatEachSide)};`;
}

/** What an axle's own lines say beyond its geometry: its trim, its wheels, the laws of its elements. */
export function lawsKey({ track, trim, wheel, elements }: AxleModel): string {
  const own = `${given(track)}${trim.by} ${trim.element ?? ""};${wheelKey(wheel.left)}${wheelKey(wheel.right)}`;
  return `${own}\n${elements.map(lawKey).join("")}`;
}

/**
 * The key of an axle with the masses of its car.
 *
 * @param own geometry and laws, where they are at hand
 */
export const axleKey = (axle: AxleModel, car: CarModel, own = `${geometryKey(axle)}${lawsKey(axle)}`): string =>
  `${own}${massKey(car)}`;
