/** The curves tab: small plots side by side, one a figure, both axles in each; a mark follows the sliders. */
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { PanelCurve, PanelCurvesAnswer, PanelSeries } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import { PLOT, plotted, valueAt } from "./plot.js";
import type { State } from "./state.js";

const GROUPS: readonly (readonly [id: string, title: string])[] = [
  ["wheels", "Wheels"],
  ["rates", "Rates"],
  ["leaks", "Leaks"],
  ["forces", "Forces"],
  ["speed", "Speed and cornering"],
];

interface Props {
  readonly state: State;
  readonly answer: PanelCurvesAnswer | undefined;
  readonly actions: Actions;
}

export function Curves({ state, answer, actions }: Props): JSX.Element {
  if (answer === undefined) return <p class="missing">Working out the curves …</p>;
  const known = new Set(GROUPS.map(([id]) => id));
  const groups = [
    ...GROUPS,
    ...[...new Set(answer.curves.map(({ group }) => group))]
      .filter((id) => !known.has(id))
      .map((id) => [id, id] as const),
  ];
  return (
    <div class="column">
      {groups.map(([id, title]) => {
        const curves = answer.curves.filter(({ group }) => group === id);
        if (curves.length === 0) return null;
        return (
          <section key={id} aria-label={title} class="elements">
            <h2 style={{ padding: 0 }}>
              <span>{title}</span>
            </h2>
            <div class="curves">
              {curves.map((curve) => (
                <Curve key={curve.id} curve={curve} state={state} actions={actions} />
              ))}
            </div>
          </section>
        );
      })}
    </div>
  );
}

/** By axle in colour, and by order in dash, so that eight lines can still be told apart. */
const DASHES = [undefined, "6 3", "2 2.5", "8 3 2 3", "12 3", "1 3"];
const COLOURS = ["var(--heave)", "var(--roll)", "var(--single)", "var(--pitch)", "var(--rest)", "var(--ink)"];

function lookOf(series: PanelSeries, index: number): { readonly colour: string; readonly dash: string | undefined } {
  const colour = COLOURS[index % COLOURS.length] ?? "var(--ink)";
  return { colour, dash: series.axle === "rear" && index === 1 ? DASHES[1] : DASHES[index % DASHES.length] };
}

const titled = ({ name, unit }: PanelCurve["x"]): string => (unit === "" ? name : `${name}, ${unit}`);

function Curve({
  curve,
  state,
  actions,
}: {
  readonly curve: PanelCurve;
  readonly state: State;
  readonly actions: Actions;
}): JSX.Element {
  const plot = useMemo(() => plotted(curve), [curve]);
  const drawn = curve.series.some(({ points }) => points.some(([, y]) => y !== null));
  const at = curve.follows === undefined ? undefined : state.pose[curve.follows.motion] * curve.follows.scale;
  const words = curve.series.map((series) => seriesInWords(curve, series, plot.y.decimals)).join(" ");
  return (
    <figure class="curve" data-curve={curve.id}>
      <figcaption>
        {curve.title}
        <small>{curve.y.unit}</small>
      </figcaption>
      {drawn ? (
        <svg
          class="plot"
          viewBox={`0 0 ${PLOT.width} ${PLOT.height}`}
          role="img"
          aria-label={`${curve.title} against ${titled(curve.x)}. ${words}`}
        >
          <Grid plot={plot} x={titled(curve.x)} />
          {curve.series.map((series, i) => {
            const { colour, dash } = lookOf(series, i);
            return (
              <path
                key={series.label}
                class="curve-line"
                style={{ "--colour": colour }}
                stroke-dasharray={dash}
                d={plot.path(series)}
              />
            );
          })}
          {at === undefined || at < plot.x.from || at > plot.x.to ? null : <Here at={at} curve={curve} plot={plot} />}
        </svg>
      ) : null}
      {curve.missing === undefined ? null : <p class="missing">{curve.missing}</p>}
      {drawn ? <Key curve={curve} at={at} decimals={plot.y.decimals} actions={actions} /> : null}
    </figure>
  );
}

type Plot = ReturnType<typeof plotted>;

function Grid({ plot, x }: { readonly plot: Plot; readonly x: string }): JSX.Element {
  const [bottom, right] = [PLOT.height - PLOT.bottom, PLOT.width - PLOT.right];
  return (
    <g>
      {plot.y.ticks.map(({ at, text }) => (
        <g key={at}>
          <path class={at === 0 ? "zero" : "grid"} d={`M${PLOT.left} ${plot.py(at)}H${right}`} />
          <text x={PLOT.left - 6} y={plot.py(at) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {plot.x.ticks.map(({ at, text }) => (
        <g key={at}>
          <path class={at === 0 ? "zero" : "grid"} d={`M${plot.px(at)} ${PLOT.top}V${bottom}`} />
          <text x={plot.px(at)} y={bottom + 14} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text x={right} y={PLOT.height - 4} text-anchor="end">
        {x}
      </text>
    </g>
  );
}

function Here({
  at,
  curve,
  plot,
}: {
  readonly at: number;
  readonly curve: PanelCurve;
  readonly plot: Plot;
}): JSX.Element {
  return (
    <g>
      <path class="here" d={`M${plot.px(at)} ${PLOT.top}V${PLOT.height - PLOT.bottom}`} />
      {curve.series.map((series, i) => {
        const value = valueAt(series, at);
        if (value === undefined) return null;
        return (
          <circle
            key={series.label}
            class="at"
            style={{ "--colour": lookOf(series, i).colour }}
            cx={plot.px(at)}
            cy={plot.py(value)}
            r="3.2"
          />
        );
      })}
    </g>
  );
}

const figure = (value: number, decimals: number): string =>
  value
    .toFixed(decimals)
    .replace(/^-(0\.?0*)$/, "$1")
    .replace("-", "\u2212");

function Key({
  curve,
  at,
  decimals,
  actions,
}: {
  readonly curve: PanelCurve;
  readonly at: number | undefined;
  readonly decimals: number;
  readonly actions: Actions;
}): JSX.Element {
  return (
    <ul class="key">
      {curve.series.map((series, i) => {
        const { colour, dash } = lookOf(series, i);
        const value = at === undefined ? undefined : valueAt(series, at);
        const label = value === undefined ? series.label : `${series.label} ${figure(value, decimals)}`;
        return (
          <li key={series.label}>
            <svg viewBox="0 0 26 8" aria-hidden="true">
              <path d="M0 4H26" stroke={colour} stroke-width="2" stroke-dasharray={dash} />
            </svg>
            {series.place === undefined ? (
              label
            ) : (
              <button type="button" onClick={() => actions.goTo(series.place)}>
                {label}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function seriesInWords({ y }: PanelCurve, { label, points }: PanelSeries, decimals: number): string {
  const values = points.flatMap(([, value]) => (value === null ? [] : [value]));
  const [first, last] = [values[0], values.at(-1)];
  if (first === undefined || last === undefined) return "";
  return `${label}: from ${figure(first, decimals)} to ${figure(last, decimals)} ${y.unit}.`;
}
