/**
 * One drawing: some axles in one view, with what can be taken hold of in it.
 *
 * Names keep the place that they have at rest while the mechanism moves under them; only the line that leads to them follows.
 */
import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { PanelAxle, PanelCar, PanelElement } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import { Elements, Eyes, NAME_CHARACTER, type NameWanted, Names, nameWidth } from "./drawn-parts.js";
import { placesToFit } from "./fit.js";
import type { Point2 } from "./geometry.js";
import { type Box, type Placed, placeLabels } from "./labels.js";
import { draw, type Drawn, trailsOf } from "./layout.js";
import { AT_REST, type AxleName } from "./pose.js";
import { type Extent, extentOf, type Projection, projectionOf } from "./projection.js";
import { bodyOver, HELD, posedCar, roadHeight } from "./scene.js";
import { cameraOf, type State } from "./state.js";
import { useGrip } from "./use-grip.js";
import { useCamera, useWidth } from "./use-size.js";
import { isFor, percent } from "./words.js";

export interface StageProps {
  readonly state: State;
  readonly car: PanelCar;
  readonly axles: readonly PanelAxle[];
  readonly elements: readonly PanelElement[];
  readonly singleAxle: AxleName;
  readonly actions: Actions;
  readonly name: string;
}

const NAME_HEIGHT = 15;

const FLATTEST = 200;
const TALLEST = 0.66;

/** As high as what is drawn asks for; the free view keeps one height while it is turned. */
function heightFor(width: number, view: State["view"], { left, right, bottom, top }: Extent, margin: Margin): number {
  const tallest = Math.min(540, TALLEST * width);
  if (view === "free") return Math.round(0.94 * tallest);
  const wanted = ((top - bottom) / Math.max(1e-3, right - left)) * (width - 2 * margin.x) + 2 * margin.y;
  return Math.round(Math.min(tallest, Math.max(FLATTEST, wanted)));
}

export function Stage(props: StageProps): JSX.Element {
  const { state, car, axles, elements, singleAxle, actions, name } = props;
  const [frame, width] = useWidth(560);
  const [turning, setTurning] = useState(false);
  const camera = useCamera(cameraOf(state), !turning && state.view !== "free");
  const margin = { x: state.near ? 90 : 30, y: state.near ? 56 : 46 };
  const road = useMemo(() => roadHeight(axles), [axles]);
  const toFit = useMemo(() => placesToFit(car, axles, state.near), [car, axles, state.near]);
  const extent = useMemo(() => extentOf(toFit, camera), [toFit, camera]);
  const settled = useMemo(() => extentOf(toFit, cameraOf(state)), [toFit, state.view, state.free]);
  const size = { width, height: heightFor(width, state.view, settled, margin) };
  const now = posedCar(car, axles, state.pose, singleAxle);
  const body = state.road ? bodyOver(now, road) : HELD;
  const look = { camera, extent, size, margin, zoom: state.zoom, pan: state.pan };
  const projection = projectionOf({ ...look, body });
  const drawn = draw(now, elements, projection);
  const names = useNames(props, look, drawn);
  const trails = useTrails(props, look, projection);
  return (
    <div class="stage" ref={frame}>
      <svg
        class={state.view === "free" ? (turning ? "turning" : "turns") : ""}
        width={width}
        height={size.height}
        viewBox={`0 0 ${width} ${size.height}`}
        tabIndex={0}
        role="group"
        aria-roledescription="drawing"
        aria-label={`${name}, ${state.view} view. Arrow keys ${state.view === "free" ? "turn" : "push"} it, plus and minus zoom.`}
        data-stage={name}
        {...useGrip(state.view === "free", actions, setTurning)}
      >
        <g class="drawing">
          <Ground drawn={drawn} />
          <Linkage drawn={drawn} trails={trails} near={state.near} />
          <Elements drawn={drawn} state={state} actions={actions} />
          <Names names={names} drawn={drawn} state={state} actions={actions} />
          <Eyes drawn={drawn} state={state} actions={actions} projection={projection} />
        </g>
      </svg>
    </div>
  );
}

interface Margin {
  readonly x: number;
  readonly y: number;
}

type LookAt = Omit<Parameters<typeof projectionOf>[0], "body">;

/** While the body is held they stand still, whatever the pose is. */
function useTrails(
  { state, car, axles, singleAxle }: StageProps,
  look: LookAt,
  projection: Projection,
): readonly string[] {
  const { camera, extent, size, zoom, pan } = look;
  const { steer } = state.pose;
  const moves = state.road ? projection : undefined;
  return useMemo(
    () => (state.trails ? trailsOf(posedCar(car, axles, AT_REST, singleAxle), projection, steer) : []),
    [state.trails, camera, extent, size.width, size.height, zoom, pan[0], pan[1], car, axles, singleAxle, steer, moves],
  );
}

/** Where names stand: settled at rest, so that they do not dance. */
function useNames(
  { state, car, axles, elements, singleAxle }: StageProps,
  look: LookAt,
  drawn: Drawn,
): readonly (Placed & NameWanted)[] {
  const { camera, extent, size, zoom, pan } = look;
  const [panX, panY] = pan;
  return useMemo(() => {
    const projection = projectionOf({ ...look, body: HELD });
    const rest = draw(posedCar(car, axles, AT_REST, singleAxle), elements, projection);
    const wanted = namesWanted(rest, state);
    const area = { x: 4, y: 4, width: size.width - 8, height: size.height - 8 };
    return placeLabels(wanted, area, obstacles(rest)).flatMap((placed) => {
      const name = wanted.find(({ id }) => id === placed.id);
      return name === undefined ? [] : [{ ...name, ...placed }];
    });
    // The pose is left out on purpose: names stand still while the mechanism moves.
  }, [
    camera,
    extent,
    size.width,
    size.height,
    zoom,
    panX,
    panY,
    car,
    axles,
    elements,
    singleAxle,
    state.near,
    drawn.elements.length,
  ]);
}

function namesWanted(rest: Drawn, state: State): readonly NameWanted[] {
  const all = rest.elements.map(({ element, middle }): NameWanted => {
    const badge = element.leak?.level === undefined ? undefined : `${percent(element.leak.share)} ${element.leak.mode}`;
    return {
      id: element.path + (element.side ?? ""),
      element,
      badge,
      text: element.name,
      title: `${element.path}, ${element.kind} ${isFor(element)}`,
      anchor: middle,
      width: nameWidth(element.name) + (badge === undefined ? 0 : badge.length * NAME_CHARACTER + 20),
      height: NAME_HEIGHT,
    };
  });
  // A corner element is the same on both sides: its name once is enough, on the left.
  const once = all.filter(({ element }) => element.side !== "right");
  const weight = ({ badge, element }: NameWanted): number =>
    (badge === undefined ? 0 : 2) + (element.path === state.chosen ? 1 : 0);
  return once.sort((a, b) => weight(b) - weight(a));
}

const EVERY = 12;

/** Boxes all along a line. */
function along([ax, ay]: Point2, [bx, by]: Point2, half: number): readonly Box[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / EVERY));
  return Array.from({ length: steps + 1 }, (_, i) =>
    around([ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps], half),
  );
}

const around = ([x, y]: Point2, r: number): Box => ({ x: x - r, y: y - r, width: 2 * r, height: 2 * r });

/** Names keep clear of eyes, elements, rods and the names of the wheels. */
function obstacles(rest: Drawn): readonly Box[] {
  return [
    ...rest.eyes.map(({ at }) => around(at, 4)),
    ...rest.elements.flatMap(({ ends: [a, b], half }) => along(a, b, half)),
    ...rest.lines
      .filter(({ role }) => role === "rod" || role === "drop-link" || role === "lever")
      .flatMap(({ points: [a, b] }) => (a === undefined || b === undefined ? [] : along(a, b, 2))),
    ...rest.wheels.map(({ foot }) => ({ x: foot[0] - 24, y: foot[1] + 2, width: 48, height: 22 })),
  ];
}

function Ground({ drawn }: { readonly drawn: Drawn }): JSX.Element {
  return (
    <g aria-hidden="true">
      {drawn.road.map(([a, b], i) => (
        <path key={i} class="road" d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} />
      ))}
      {drawn.wheels.map(({ key, tyre, rim, foot, name }) => (
        <g key={key}>
          <path class="tyre" d={tyre} />
          <path class="rim" d={rim} />
          <text class="side-name" x={foot[0]} y={foot[1] + 16}>
            {name}
          </text>
        </g>
      ))}
    </g>
  );
}

const LINE_CLASS: Readonly<Record<string, string>> = {
  wishbone: "wishbone",
  upright: "upright",
  rod: "member rod",
  "track-rod": "member thin",
  lever: "member",
  "drop-link": "member thin",
};

function Linkage({
  drawn,
  trails,
  near,
}: {
  readonly drawn: Drawn;
  readonly trails: readonly string[];
  readonly near: boolean;
}): JSX.Element {
  return (
    <g aria-hidden="true">
      {drawn.lines.map(({ role, d }, i) => (
        <path key={i} class={LINE_CLASS[role] ?? "member"} d={d} data-role={role} />
      ))}
      {drawn.fixed.map(([x, y], i) => (
        <rect key={i} class="fixed" x={x - 2.5} y={y - 2.5} width="5" height="5" />
      ))}
      {drawn.joints.map(([x, y], i) => (
        <circle key={i} class="joint" cx={x} cy={y} r={near ? 3.2 : 2.6} />
      ))}
      {trails.map((d, i) => (
        <path key={i} class="trail" d={d} />
      ))}
      {drawn.rockers.map(({ d, pivot, axis }, i) => (
        <g key={i}>
          <path class="axis" d={axis} />
          <path class="rocker" d={d} />
          <circle class="pivot" cx={pivot[0]} cy={pivot[1]} r={near ? 4.6 : 3} />
        </g>
      ))}
    </g>
  );
}
