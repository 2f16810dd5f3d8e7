/** What is shown while there is nothing to draw: why, and what to write. */
import type { JSX } from "preact";
import type { State } from "./state.js";

const HINT = `car first {
  axle front {
    track 1480 mm
    …
  }
}`;

export function Empty({ state }: { readonly state: State }): JSX.Element {
  const { answer, nothing } = state;
  if (answer === undefined && nothing === undefined) return <main class="empty" aria-busy="true" />;
  const broken = answer?.broken;
  return (
    <main class="empty">
      <Drawing />
      <h1>No mechanism to show</h1>
      <p>
        {nothing ??
          broken ??
          "This file declares no car and no set-up. As soon as a car has an axle, it is drawn here."}
      </p>
      {answer === undefined ? null : <pre aria-label="How a car begins">{HINT}</pre>}
    </main>
  );
}

/** A bell crank on its pivot, with its two rods. */
function Drawing(): JSX.Element {
  return (
    <svg viewBox="0 0 148 96" aria-hidden="true">
      <g fill="none" stroke="currentColor" stroke-width="3" stroke-linecap="round" stroke-linejoin="round">
        <path d="M18 84L62 46" />
        <path d="M62 46L86 58L92 26Z" />
        <path d="M92 26L132 22" stroke-dasharray="7 5" />
        <circle cx="86" cy="58" r="6" />
        <circle cx="62" cy="46" r="4" />
        <circle cx="92" cy="26" r="4" />
      </g>
    </svg>
  );
}
