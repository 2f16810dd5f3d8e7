/** The page as a whole: what is chosen at its head, the drawings, the sliders and the lists, or the curves. */
import type { ComponentChildren, JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { PanelAxle, PanelCar, PanelElement } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import type { ViewName } from "./camera.js";
import { Curves } from "./curves.js";
import { ElementList, Figures, Textures } from "./element-list.js";
import { Empty } from "./empty.js";
import { Motions } from "./motions.js";
import { Stage } from "./stage.js";
import { type AxlesShown, axlesOf, carOf, singleAxleOf, type State, type Tab } from "./state.js";
import { zoomBy } from "./use-grip.js";

interface Props {
  readonly state: State;
  readonly actions: Actions;
  readonly chooseCar: (name: string | undefined) => void;
}

export function App({ state, actions, chooseCar }: Props): JSX.Element {
  const car = carOf(state);
  return (
    <div class="panel">
      <Textures />
      <p class="heard" role="status" aria-live="polite" data-said>
        {state.said}
      </p>
      {car === undefined ? (
        <Empty state={state} />
      ) : (
        <>
          <Head state={state} car={car} actions={actions} chooseCar={chooseCar} />
          {state.tab === "mechanism" ? (
            <Mechanism state={state} car={car} actions={actions} />
          ) : (
            <div class="body" id="tab-curves" role="tabpanel" aria-label="Curves">
              <Note state={state} />
              <Curves state={state} answer={state.curves} actions={actions} />
            </div>
          )}
        </>
      )}
    </div>
  );
}

const TABS: readonly (readonly [Tab, string])[] = [
  ["mechanism", "Mechanism"],
  ["curves", "Curves"],
];

function Head({ state, car, actions, chooseCar }: Props & { readonly car: PanelCar }): JSX.Element {
  const cars = state.answer?.cars ?? [];
  return (
    <header class="head">
      <h1>
        {car.name}
        {car.title === undefined ? null : <small>{car.title}</small>}
      </h1>
      {cars.length < 2 ? null : (
        <select
          aria-label="Car or set-up"
          value={state.followed?.name ?? ""}
          onChange={(event) => chooseCar(event.currentTarget.value === "" ? undefined : event.currentTarget.value)}
        >
          <option value="">follow the cursor</option>
          {cars.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      )}
      <div class="choice" role="tablist" aria-label="What is shown">
        {TABS.map(([id, title]) => (
          <button
            key={id}
            type="button"
            role="tab"
            aria-selected={state.tab === id}
            aria-controls={`tab-${id}`}
            onClick={() => actions.change((old) => ({ ...old, tab: id }))}
          >
            {title}
          </button>
        ))}
      </div>
    </header>
  );
}

const Note = ({ state }: { readonly state: State }): JSX.Element | null =>
  state.note === undefined ? null : (
    <p class="note" data-note>
      {state.note}
    </p>
  );

const AXLES: readonly (readonly [AxlesShown, string])[] = [
  ["front", "Front axle"],
  ["rear", "Rear axle"],
  ["both", "Both"],
];

const VIEWS: readonly (readonly [ViewName, string])[] = [
  ["front", "Front"],
  ["side", "Side"],
  ["top", "Top"],
  ["free", "Free"],
];

function Mechanism({
  state,
  car,
  actions,
}: {
  readonly state: State;
  readonly car: PanelCar;
  readonly actions: Actions;
}): JSX.Element {
  // Lists that are the same as long as the car is, so that what rests on them is kept from frame to frame.
  const axles = useMemo(() => axlesOf(state, car), [car, state.axles]);
  const stages = useMemo(() => stagesOf(state, car, axles), [car, axles, state.view, state.near]);
  const before = state.held?.answer?.axle === undefined ? undefined : state.answer?.car?.axles;
  const singleAxle = singleAxleOf(state, car);
  const shared = { state, car, singleAxle, actions };
  return (
    <div class="body mechanism" id="tab-mechanism" role="tabpanel" aria-label="Mechanism">
      <Note state={state} />
      <div class="bars">
        {car.axles.length < 2 ? null : (
          <Choice
            label="Axle"
            options={AXLES}
            value={state.axles}
            put={(value) => actions.change((old) => ({ ...old, axles: value, zoom: 1, pan: [0, 0] }))}
          />
        )}
        <Choice
          label="View"
          options={VIEWS}
          value={state.view}
          put={(value) => actions.change((old) => ({ ...old, view: value, zoom: 1, pan: [0, 0] }))}
        />
        <Toggle on={state.near} put={(near) => actions.change((old) => ({ ...old, near, zoom: 1, pan: [0, 0] }))}>
          Close-up
        </Toggle>
        <span class="gap" />
        <Keys />
      </div>
      <div class="column">
        {stages.map(({ name, axles: shown, elements }) => (
          <Stage key={name} {...shared} axles={shown} elements={elements} name={name} />
        ))}
        <div class="bars">
          <Toggle on={state.road} put={(road) => actions.change((old) => ({ ...old, road }))}>
            Hold the road
          </Toggle>
          <Toggle on={state.trails} put={(trails) => actions.change((old) => ({ ...old, trails }))}>
            Trails
          </Toggle>
          <button type="button" class="plain" aria-label="Closer" onClick={() => zoomBy(actions, 1.4)}>
            +
          </button>
          <button type="button" class="plain" aria-label="Further away" onClick={() => zoomBy(actions, 1 / 1.4)}>
            {"\u2212"}
          </button>
          <span class="gap" />
          <span class="quiet">Save</span>
          <button type="button" class="plain" aria-label="Save the drawing as SVG" onClick={() => actions.save("svg")}>
            SVG
          </button>
          <button type="button" class="plain" aria-label="Save the drawing as PNG" onClick={() => actions.save("png")}>
            PNG
          </button>
        </div>
        <Motions {...shared} axles={axles} />
      </div>
      <div class="column">
        <Figures axles={axles} before={before} />
        <ElementList {...shared} axles={axles} />
      </div>
    </div>
  );
}

interface StageOf {
  readonly name: string;
  readonly axles: readonly PanelAxle[];
  readonly elements: readonly PanelElement[];
}

/** From the front two axles would hide each other: then each has a drawing of its own. */
function stagesOf(state: State, car: PanelCar, axles: readonly PanelAxle[]): readonly StageOf[] {
  const named = ({ name }: PanelAxle): string => (name === "front" ? "Front axle" : "Rear axle");
  const apart = axles.length === 1 || state.view === "front" || state.near;
  if (apart) return axles.map((axle) => ({ name: named(axle), axles: [axle], elements: axle.elements }));
  return [{ name: car.name, axles, elements: [...axles.flatMap(({ elements }) => elements), ...car.elements] }];
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [T, string])[];
  readonly value: T;
  readonly put: (value: T) => void;
}

function Choice<T extends string>({ label, options, value, put }: ChoiceProps<T>): JSX.Element {
  return (
    <div class="choice" role="group" aria-label={label}>
      {options.map(([id, title]) => (
        <button key={id} type="button" aria-pressed={id === value} onClick={() => put(id)}>
          {title}
        </button>
      ))}
    </div>
  );
}

function Toggle({
  on,
  put,
  children,
}: {
  readonly on: boolean;
  readonly put: (on: boolean) => void;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <button type="button" class="plain" aria-pressed={on} onClick={() => put(!on)}>
      {children}
    </button>
  );
}

const KEYS: readonly (readonly [string, string])[] = [
  ["1 2 3 4", "front, side, top, free view"],
  ["H R P W S", "heave, roll, pitch, one wheel, steer: a step on; with Shift a step back"],
  ["Space", "play and pause"],
  ["0", "back to design position"],
  ["C", "close-up"],
  ["arrows", "in the drawing: turn or push; on an eye: move it by 1 mm, with Alt by 0.1 mm"],
  ["Enter", "to the line of what has the focus"],
  ["Escape", "let go of an eye without writing"],
  ["Ctrl+Z", "undo the last move in the text"],
];

function Keys(): JSX.Element {
  const [open, setOpen] = useState(false);
  return (
    <span>
      <button
        type="button"
        class="plain"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
        onBlur={() => setOpen(false)}
      >
        Keys
      </button>
      {open ? (
        <div class="help" role="note">
          <dl>
            {KEYS.map(([keys, does]) => (
              <>
                <dt>
                  <kbd>{keys}</kbd>
                </dt>
                <dd>{does}</dd>
              </>
            ))}
          </dl>
        </div>
      ) : null}
    </span>
  );
}
