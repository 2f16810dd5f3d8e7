/** What can be taken hold of in a drawing: elements, their names, and the eyes that are dragged. */
import type { JSX } from "preact";
import type { PanelElement } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import type { Placed, Wanted } from "./labels.js";
import type { Drawn, DrawnEye } from "./layout.js";
import type { Projection } from "./projection.js";
import { colourOf, dashOf } from "./signs.js";
import type { State } from "./state.js";
import { useEyeGrip } from "./use-eye-grip.js";
import { isFor } from "./words.js";

export interface NameWanted extends Wanted {
  readonly element: PanelElement;
  readonly text: string;
  readonly title: string;
  readonly badge: string | undefined;
}

interface Props {
  readonly drawn: Drawn;
  readonly state: State;
  readonly actions: Actions;
}

/** Of most sans-serif faces at the drawing's size, px. */
export const NAME_CHARACTER = 6.7;
export const nameWidth = (text: string): number => text.length * NAME_CHARACTER + 8;

const called = (base: string, chosen: boolean): string => (chosen ? `${base} chosen` : base);

/** The list beside the drawing offers the same to the keyboard, so these are no stops of the tab key. */
export function Elements({ drawn, state, actions }: Props): JSX.Element {
  const ordered = [...drawn.elements].sort((a, b) => rank(a.element, state) - rank(b.element, state));
  return (
    <g>
      {ordered.map(({ element, glyph, ends: [a, b] }) => (
        <g
          key={element.path + (element.side ?? "")}
          class={called("element", element.path === state.chosen)}
          style={{ "--colour": colourOf(element) }}
          data-element={element.path}
          onClick={() => {
            actions.choose(element.path);
            actions.goTo(element.place);
          }}
        >
          <title>{`${element.path}: ${element.kind} ${isFor(element)}. Click for its line.`}</title>
          <path class="hit" d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} />
          <path class="halo" d={glyph.line} />
          {glyph.body === undefined ? null : <path class="casing" d={glyph.body} />}
          <path
            class="line"
            d={glyph.line}
            stroke-dasharray={element.kind === "spring" ? undefined : dashOf(element)}
          />
        </g>
      ))}
    </g>
  );
}

/** The chosen one lies on top. */
const rank = ({ path }: PanelElement, { chosen }: State): number => (path === chosen ? 1 : 0);

export function Names({
  names,
  drawn,
  state,
  actions,
}: Props & { readonly names: readonly (Placed & NameWanted)[] }): JSX.Element {
  return (
    <g>
      {names.map((name) => (
        <Name key={name.id} name={name} drawn={drawn} state={state} actions={actions} />
      ))}
    </g>
  );
}

function Name({ name, drawn, state, actions }: Props & { readonly name: Placed & NameWanted }): JSX.Element {
  const { element, badge, text, x, y, width, height, leader } = name;
  const now = drawn.elements.find(
    (one) => one.element.path === element.path && one.element.side === element.side,
  )?.middle;
  const textWidth = nameWidth(text);
  return (
    <g
      class={called("name", element.path === state.chosen)}
      onClick={() => {
        actions.choose(element.path);
        actions.goTo(element.place);
      }}
    >
      {leader === undefined || now === undefined ? null : (
        <path class="leader" d={`M${now[0]} ${now[1]}L${leader[1][0]} ${leader[1][1]}`} />
      )}
      <title>{name.title}</title>
      <rect class="name-box" x={x} y={y} width={width} height={height} rx="3" />
      <text x={x + 4} y={y + 11.5}>
        {text}
      </text>
      {badge === undefined ? null : (
        <g class="badge" data-leak={element.path}>
          <rect x={x + textWidth} y={y} width={width - textWidth} height={height} rx={height / 2} />
          <text x={x + textWidth + 7} y={y + 11.5}>
            {badge}
          </text>
        </g>
      )}
    </g>
  );
}

export function Eyes({ drawn, state, actions, projection }: Props & { readonly projection: Projection }): JSX.Element {
  return (
    <g>
      {drawn.eyes.map((eye) => (
        <Eye key={eye.path} eye={eye} state={state} actions={actions} projection={projection} />
      ))}
    </g>
  );
}

interface EyeProps {
  readonly eye: DrawnEye;
  readonly state: State;
  readonly actions: Actions;
  readonly projection: Projection;
}

function Eye({ eye, state, actions, projection }: EyeProps): JSX.Element {
  const { corner, index, at, path } = eye;
  const point = corner.data.points[index];
  const held = state.held !== undefined && point?.id === state.held.point && corner.axle === state.held.axle;
  const grip = useEyeGrip(eye, actions, projection);
  const mine = held && corner.side === state.held?.side;
  const radius = state.near ? 4 : 2.8;
  return (
    <g
      class={`${called("eye", path === state.chosen)}${held ? " held" : ""}${point?.place === undefined ? " still" : ""}`}
      tabIndex={state.near && corner.side === "left" ? 0 : -1}
      role="button"
      aria-label={`eye ${point?.id ?? ""}, ${corner.axle} ${corner.side}. Arrow keys move it by 1 millimetre, with Alt by a tenth. Enter goes to its line.`}
      data-eye={path}
      {...grip}
    >
      <title>{`${path}: drag to move it, click for its line`}</title>
      {mine ? <SlidePlane eye={eye} projection={projection} /> : null}
      <circle class="hit" cx={at[0]} cy={at[1]} r={9} />
      <circle class="dot" cx={at[0]} cy={at[1]} r={held ? radius + 1 : radius} />
    </g>
  );
}

/** A cross of the two directions that the eye can be moved in. */
function SlidePlane({ eye: { at } }: { readonly eye: DrawnEye; readonly projection: Projection }): JSX.Element {
  const [x, y] = at;
  return <path class="slide-plane" d={`M${x - 26} ${y}H${x + 26}M${x} ${y - 26}V${y + 26}`} />;
}
