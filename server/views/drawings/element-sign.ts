/**
 * The signs of elements between two places on paper, told apart by shape alone: a spring's coils, a damper's tube and piston,
 * boxes with bars for gas and oil, a ring for what stores motion.
 */
import type { ElementKind } from "../../model/car.js";
import { pixel } from "./svg.js";

export type Paper = readonly [x: number, y: number];

/** How far along (share of its length), and how far aside (px). */
type Along = readonly [number, number];

const HALF = 4;

/** The `d` of a path; a short one is a plain line. */
export function elementSign(kind: ElementKind, from: Paper, to: Paper): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const place = placer(from, to, length);
  if (length < 5 * HALF)
    return drawn(
      [
        [0, 0],
        [1, 0],
      ].map((at) => place(at as unknown as Along)),
    );
  return waysOf(kind, length)
    .map((way) => drawn(way.map(place)))
    .join("");
}

function placer(from: Paper, to: Paper, length: number): (along: Along) => Paper {
  const [ux, uy] = length === 0 ? [1, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return ([share, aside]) => [
    from[0] + (to[0] - from[0]) * share - uy * aside,
    from[1] + (to[1] - from[1]) * share + ux * aside,
  ];
}

const drawn = (points: readonly Paper[]): string => `M${points.map(([x, y]) => `${pixel(x)} ${pixel(y)}`).join("L")}`;

/** The sign takes the middle of long elements, so that it looks the same on all of them. */
function waysOf(kind: ElementKind, length: number): readonly (readonly Along[])[] {
  const half = Math.min(0.32, 22 / length);
  const [a, b] = [0.5 - half, 0.5 + half];
  const legs: readonly (readonly Along[])[] = [
    [
      [0, 0],
      [a, 0],
    ],
    [
      [b, 0],
      [1, 0],
    ],
  ];
  const box = (bars: number): readonly (readonly Along[])[] => [
    ...legs,
    [
      [a, HALF],
      [b, HALF],
      [b, -HALF],
      [a, -HALF],
      [a, HALF],
    ],
    ...Array.from({ length: bars }, (_, i): readonly Along[] => {
      const share = a + ((b - a) * (i + 1)) / (bars + 1);
      return [
        [share, HALF],
        [share, -HALF],
      ];
    }),
  ];
  switch (kind) {
    case "spring":
      return [[[0, 0], [a, 0], ...coils(a, b), [b, 0], [1, 0]]];
    case "damper":
      return tube(a, b);
    case "bump-stop":
      return [
        ...legs,
        [
          [a, -HALF],
          [b, -HALF / 2],
          [b, HALF / 2],
          [a, HALF],
          [a, -HALF],
        ],
      ];
    case "gas-spring":
      return box(1);
    case "hydraulic-link":
      return box(2);
    case "inerter":
      return box(3);
    case "actuator":
      return box(0);
    case "anti-roll-bar":
      return [
        [
          [0, HALF / 2],
          [1, HALF / 2],
        ],
        [
          [0, -HALF / 2],
          [1, -HALF / 2],
        ],
      ];
  }
}

function coils(a: number, b: number): readonly Along[] {
  const turns = 5;
  return Array.from({ length: 2 * turns }, (_, i) => [
    a + ((b - a) * (i + 0.5)) / (2 * turns),
    i % 2 === 0 ? HALF : -HALF,
  ]);
}

function tube(a: number, b: number): readonly (readonly Along[])[] {
  const piston = a + 0.55 * (b - a);
  return [
    [
      [0, 0],
      [a, 0],
    ],
    [
      [b, HALF],
      [a, HALF],
      [a, -HALF],
      [b, -HALF],
    ],
    [
      [piston, HALF * 0.8],
      [piston, -HALF * 0.8],
    ],
    [
      [piston, 0],
      [1, 0],
    ],
  ];
}
