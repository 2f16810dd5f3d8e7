/** Every element with a bar of how far it is worked in this pose, by which motion; and the axle's headline figures. */
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { PanelAxle, PanelCar, PanelElement } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import { AT_REST, type AxleName } from "./pose.js";
import { type PosedAxle, posedCar } from "./scene.js";
import { colourOf, PART_COLOURS, Sign } from "./signs.js";
import type { State } from "./state.js";
import { type PartOf, type Stroke, strokeOf, carriedOf } from "./strokes.js";
import { isFor, lengthText, percent, signed } from "./words.js";

interface Props {
  readonly state: State;
  readonly car: PanelCar;
  readonly axles: readonly PanelAxle[];
  readonly singleAxle: AxleName;
  readonly actions: Actions;
}

export function ElementList({ state, car, axles, singleAxle, actions }: Props): JSX.Element {
  const now = posedCar(car, axles, state.pose, singleAxle);
  const rest = useMemo(() => posedCar(car, axles, AT_REST, singleAxle), [car, axles, singleAxle]);
  const row = (element: PanelElement, axle: AxleName | undefined): JSX.Element => (
    <Row
      key={element.path + (element.side ?? "")}
      element={element}
      car={car}
      stroke={strokeOf(element, car, axle, state.pose, singleAxle)}
      carried={carriedIn(element, now, rest)}
      chosen={element.path === state.chosen}
      actions={actions}
    />
  );
  return (
    <section class="elements" aria-label="Elements and how far they are worked">
      {axles.map(({ name, elements }) => (
        <div key={name}>
          <h2>
            <span>{name === "front" ? "Front axle" : "Rear axle"}</span>
            <span>stroke from design</span>
          </h2>
          {elements.map((element) => row(element, name))}
        </div>
      ))}
      {car.elements.length === 0 || axles.length < 2 ? null : (
        <div>
          <h2>
            <span>Between the axles</span>
          </h2>
          {car.elements.map((element) => row(element, undefined))}
        </div>
      )}
      <PartKey />
    </section>
  );
}

function carriedIn(element: PanelElement, now: readonly PosedAxle[], rest: readonly PosedAxle[]): number | undefined {
  // Of what spans the axle: a corner element has one end on the chassis.
  return element.side === undefined ? carriedOf(element, now, rest) : undefined;
}

interface RowProps {
  readonly element: PanelElement;
  readonly car: PanelCar;
  readonly stroke: Stroke;
  readonly carried: number | undefined;
  readonly chosen: boolean;
  readonly actions: Actions;
}

const SHOWN_CARRY = 5e-4;

function Row({ element, car, stroke, carried, chosen, actions }: RowProps): JSX.Element {
  const { unit, scale, leak, side, name, kind } = element;
  const figure = stroke.whole === undefined ? "\u2013" : `${signed(stroke.whole * scale, 1)} ${unit}`;
  const carries = carried !== undefined && carried > SHOWN_CARRY ? `ends move ${lengthText(carried, car)}` : undefined;
  const sided = side === undefined ? name : `${name}, ${side}`;
  return (
    <button
      type="button"
      class={chosen ? "row chosen" : "row"}
      data-row={element.path + (side === undefined ? "" : `.${side}`)}
      aria-label={`${sided}, ${kind} ${isFor(element)}: ${strokeInWords(stroke, element)}${carries === undefined ? "" : `, ${carries}`}${leak?.level === undefined ? "" : `, leaks ${leak.text}`}. Go to its line.`}
      onClick={() => {
        actions.choose(element.path);
        actions.goTo(element.place);
      }}
    >
      <Sign element={element} />
      <span class="called">
        <b style={{ color: colourOf(element) }}>{sided}</b>
        <small>
          {kind} {isFor(element)}
        </small>
      </span>
      <Bar element={element} stroke={stroke} />
      <span class="stroke">
        {figure}
        {leak?.level === undefined ? (
          <small>{carries ?? ""}</small>
        ) : (
          <span class="leak" title={`leaks ${leak.text}`}>
            {percent(leak.share)} {leak.mode}
          </span>
        )}
      </span>
    </button>
  );
}

const PART_NAMES: Readonly<Record<PartOf, string>> = {
  heave: "heave",
  roll: "roll",
  pitch: "pitch",
  single: "one wheel",
  rest: "together",
};

function strokeInWords({ whole, parts }: Stroke, { unit, scale }: PanelElement): string {
  if (whole === undefined) return "no position here";
  const amount = Math.abs(whole * scale).toFixed(1);
  if (Number(amount) === 0) return "not worked";
  const way = unit === "mm" ? (whole > 0 ? "compressed" : "extended") : whole > 0 ? "one way" : "the other way";
  const by = parts.map(({ of, by: part }) => `${signed(part * scale, 1)} by ${PART_NAMES[of]}`).join(", ");
  return `${amount} ${unit} ${way}${parts.length > 1 ? ` (${by})` : ""}`;
}

const BAR = { width: 200, height: 22, middle: 11 };

/** Every motion's part has a texture of its own beside its colour. */
const PART_PATTERNS: Readonly<Record<PartOf, string | undefined>> = {
  heave: undefined,
  roll: "roll-lines",
  single: "single-dots",
  pitch: "pitch-lines",
  rest: "rest-lines",
};

/** Compression to the right. Parts are stacked from nought; where they pull both ways they stand on both sides, and the mark tells the sum. */
function Bar({ element, stroke }: { readonly element: PanelElement; readonly stroke: Stroke }): JSX.Element {
  const { travel, stroke: room } = element;
  const most =
    Math.max(
      ...[travel?.from, travel?.to, room?.from, room?.to].map((end) => Math.abs(end ?? 0)),
      Math.abs(stroke.whole ?? 0),
      1e-4,
    ) * 1.04;
  const x = (value: number): number => BAR.width / 2 + (value / most) * (BAR.width / 2);
  let [plus, minus] = [0, 0];
  const parts = stroke.parts.map(({ of, by }) => {
    const from = by > 0 ? plus : minus;
    if (by > 0) plus += by;
    else minus += by;
    return { of, from: x(Math.min(from, from + by)), width: (Math.abs(by) / most) * (BAR.width / 2) };
  });
  return (
    <svg class="bar" viewBox={`0 0 ${BAR.width} ${BAR.height}`} preserveAspectRatio="none" aria-hidden="true">
      {travel === undefined ? null : (
        <rect
          class="range"
          x={x(travel.from)}
          y="5"
          width={Math.max(0, x(travel.to) - x(travel.from))}
          height="12"
          rx="2"
          vector-effect="non-scaling-stroke"
        />
      )}
      {parts.map(({ of, from, width }) => (
        <g key={of} style={{ "--colour": PART_COLOURS[of] }} data-part={of}>
          <rect class="part" x={from} y="7" width={width} height="8" />
          {PART_PATTERNS[of] === undefined ? null : (
            <rect x={from} y="7" width={width} height="8" fill={`url(#${PART_PATTERNS[of]})`} />
          )}
        </g>
      ))}
      {room === undefined ? null : (
        <path class="end" d={`M${x(room.from)} 3V19M${x(room.to)} 3V19`} vector-effect="non-scaling-stroke" />
      )}
      <path class="nought" d={`M${BAR.width / 2} 3V19`} vector-effect="non-scaling-stroke" />
      {stroke.whole === undefined || stroke.parts.length === 0 ? null : (
        <path class="now" d={`M${x(stroke.whole)} 2V20`} vector-effect="non-scaling-stroke" />
      )}
    </svg>
  );
}

/** Textures are defined once in the page, and told here. */
function PartKey(): JSX.Element {
  const parts: readonly PartOf[] = ["heave", "roll", "pitch", "single", "rest"];
  return (
    <div class="key-box" style={{ padding: "8px 8px 0" }}>
      {parts.map((of) => (
        <span key={of}>
          <svg viewBox="0 0 26 12" aria-hidden="true">
            <rect x="0" y="2" width="26" height="8" fill={PART_COLOURS[of]} />
            {PART_PATTERNS[of] === undefined ? null : (
              <rect x="0" y="2" width="26" height="8" fill={`url(#${PART_PATTERNS[of]})`} />
            )}
          </svg>
          {PART_NAMES[of]}
        </span>
      ))}
    </div>
  );
}

export function Textures(): JSX.Element {
  return (
    <svg width="0" height="0" style={{ position: "absolute" }} aria-hidden="true">
      <defs>
        <pattern id="roll-lines" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" stroke="var(--ground)" stroke-width="2.4" />
        </pattern>
        <pattern id="pitch-lines" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path d="M0 0V5" stroke="var(--ground)" stroke-width="2.4" />
        </pattern>
        <pattern id="single-dots" width="4" height="4" patternUnits="userSpaceOnUse">
          <circle cx="2" cy="2" r="0.95" fill="var(--ground)" />
        </pattern>
        <pattern id="rest-lines" width="4" height="4" patternUnits="userSpaceOnUse">
          <path d="M0 0V4" stroke="var(--ground)" stroke-width="2.2" />
        </pattern>
      </defs>
    </svg>
  );
}

/** While an eye is held, each figure shows what it was before. */
export function Figures({
  axles,
  before,
}: {
  readonly axles: readonly PanelAxle[];
  readonly before: readonly PanelAxle[] | undefined;
}): JSX.Element {
  return (
    <section aria-label="Figures of the axle">
      {axles.map((axle) => (
        <dl key={axle.name} class="figures" data-figures={axle.name}>
          {axle.figures
            .filter(({ value }) => value !== undefined)
            .map(({ name, text }) => {
              const old = before?.find((one) => one.name === axle.name)?.figures.find((figure) => figure.name === name);
              return (
                <div key={name}>
                  <dt>{axles.length > 1 ? `${axle.name} ${name}` : name}</dt>
                  <dd>
                    {text}
                    {old === undefined || old.text === text ? null : <small>was {old.text}</small>}
                  </dd>
                </div>
              );
            })}
        </dl>
      ))}
    </section>
  );
}
