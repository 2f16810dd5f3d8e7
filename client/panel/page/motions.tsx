/**
 * The sliders: one a motion, each barred where a wheel would be beyond its travel; play and reset.
 *
 * Play swings the motion that was used last over all that it can do. Who asks for less motion gets steps on a key instead.
 */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { PanelAxle, PanelCar } from "../../../server/lsp/protocol-panel.js";
import type { Actions } from "./actions.js";
import { allowed, AT_REST, type AxleName, type CornerRange, type Motion } from "./pose.js";
import { rangesOf } from "./scene.js";
import type { State } from "./state.js";
import { prefersStillness } from "./use-size.js";
import { DIRECTIONS, MOTION_NAMES, MOTIONS, shown, unitOf } from "./words.js";

interface Ends {
  readonly from: number;
  readonly to: number;
}

const COLOURS: Readonly<Record<Motion, string>> = {
  heave: "var(--heave)",
  roll: "var(--roll)",
  pitch: "var(--pitch)",
  single: "var(--single)",
  steer: "var(--rest)",
};

/** How far each slider goes: all that the freest wheel allows by itself, the same way both sides. */
export function endsOf(motion: Motion, car: PanelCar, corners: readonly CornerRange[]): Ends | undefined {
  if (motion === "steer") return steerEnds(car);
  if (motion === "pitch" && car.axles.length < 2) return undefined;
  const alone = allowed(motion, AT_REST, corners, { from: -1, to: 1 });
  const reach = Math.max(-alone.low.at, alone.high.at);
  return reach > 0 && reach < 1 ? { from: -reach, to: reach } : undefined;
}

function steerEnds(car: PanelCar): Ends | undefined {
  const steers = car.axles.flatMap(({ left }) => left.steers);
  const reach = Math.max(0, ...steers.map(Math.abs));
  return reach > 0 ? { from: -reach, to: reach } : undefined;
}

const WHY_NOT: Readonly<Record<string, string>> = {
  steer: "no steering",
  pitch: "one axle only",
};

interface Props {
  readonly state: State;
  readonly car: PanelCar;
  readonly axles: readonly PanelAxle[];
  readonly singleAxle: AxleName;
  readonly actions: Actions;
}

export function Motions({ state, car, axles, singleAxle, actions }: Props): JSX.Element {
  const corners = rangesOf(car, axles, singleAxle);
  return (
    <section class="motions" aria-label="Motion of the car">
      {MOTIONS.map((motion) => (
        <Slider key={motion} motion={motion} state={state} car={car} corners={corners} actions={actions} />
      ))}
      <div class="motion-foot">
        <PlayButton state={state} ends={endsOf(state.motion, car, corners)} actions={actions} />
        <button
          type="button"
          class="plain"
          onClick={() => {
            actions.change((old) => ({ ...old, pose: AT_REST, playing: false, why: undefined }));
            actions.say("Back at design position.");
          }}
        >
          Reset
        </button>
        <span class="why" data-why>
          {state.why}
        </span>
      </div>
    </section>
  );
}

interface SliderProps {
  readonly motion: Motion;
  readonly state: State;
  readonly car: PanelCar;
  readonly corners: readonly CornerRange[];
  readonly actions: Actions;
}

function Slider({ motion, state, car, corners, actions }: SliderProps): JSX.Element {
  const ends = endsOf(motion, car, corners);
  const id = `motion-${motion}`;
  const value = state.pose[motion];
  if (ends === undefined) {
    return (
      <div class="motion off">
        <label for={id}>{MOTION_NAMES[motion]}</label>
        <div class="slider">
          <span class="rail" />
          <input id={id} type="range" disabled />
        </div>
        <output>{WHY_NOT[motion] ?? "no travel"}</output>
      </div>
    );
  }
  const { low, high } = allowed(motion, state.pose, corners, ends);
  const share = (at: number): number => (100 * (at - ends.from)) / (ends.to - ends.from);
  const [l, h] = [share(Math.max(ends.from, low.at)), share(Math.min(ends.to, high.at))];
  const { scale, decimals } = unitOf(motion, car);
  const atEnd = value !== 0 && (Math.abs(value - low.at) < 1e-9 || Math.abs(value - high.at) < 1e-9);
  const stopped = atEnd && (value > 0 ? high : low).corner !== undefined;
  const now = share(value);
  return (
    <div class={stopped ? "motion stopped" : "motion"} style={{ "--colour": COLOURS[motion] }}>
      <label for={id} title={DIRECTIONS[motion]}>
        {MOTION_NAMES[motion]}
      </label>
      <div class="slider">
        <span class="rail" />
        {l > 0.5 ? <span class="barred" style={{ left: 0, width: `${l}%` }} /> : null}
        {h < 99.5 ? <span class="barred" style={{ left: `${h}%`, right: 0 }} /> : null}
        <span class="moved" style={{ left: `${Math.min(50, now)}%`, width: `${Math.abs(now - 50)}%` }} />
        <span class="nought" style={{ left: "50%" }} />
        <input
          id={id}
          type="range"
          min={ends.from * scale}
          max={ends.to * scale}
          step={0.1 ** decimals}
          value={value * scale}
          aria-valuetext={`${shown(motion, value, car)}, positive is ${DIRECTIONS[motion]}`}
          onInput={(event) => actions.move(motion, Number(event.currentTarget.value) / scale)}
          onDblClick={() => actions.move(motion, 0)}
        />
      </div>
      <output for={id}>{shown(motion, value, car)}</output>
    </div>
  );
}

const PERIOD_MS = 3600;

function PlayButton({
  state,
  ends,
  actions,
}: {
  readonly state: State;
  readonly ends: Ends | undefined;
  readonly actions: Actions;
}): JSX.Element {
  const { motion, playing } = state;
  useSwing(playing && !prefersStillness(), motion, ends, actions);
  const step = useRef(0);
  const press = (): void => {
    if (!prefersStillness()) actions.change((old) => ({ ...old, playing: !old.playing }));
    else if (ends !== undefined) {
      step.current += 1;
      actions.move(motion, swung(step.current / 8, ends));
    }
  };
  const still = prefersStillness();
  return (
    <button type="button" class="plain" aria-pressed={playing} disabled={ends === undefined} onClick={press} data-play>
      {still ? "Step" : playing ? "Pause" : "Play"} {MOTION_NAMES[motion].toLowerCase()}
    </button>
  );
}

const swung = (turns: number, { to }: Ends): number => to * Math.sin(2 * Math.PI * turns);

/** From where the motion stands: the swing begins at its own phase. */
function useSwing(on: boolean, motion: Motion, ends: Ends | undefined, actions: Actions): void {
  const reach = ends?.to;
  const act = useRef(actions);
  act.current = actions;
  useEffect(() => {
    if (!on || reach === undefined) return undefined;
    const start = performance.now();
    let frame = requestAnimationFrame(function step(now: number) {
      act.current.change((old) => ({ ...old, why: undefined }));
      act.current.move(motion, swung((now - start) / PERIOD_MS, { from: -reach, to: reach }));
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [on, motion, reach]);
}
