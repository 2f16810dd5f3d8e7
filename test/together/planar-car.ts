/** Texts of cars on the axle that test/support/plain-axle.ts works out a second time. */

const linkage = `linkage planar {
      lower-wishbone { inner (190, 103) mm, outer (678, 108) mm }
      upper-wishbone { inner (235, 297) mm, outer (650, 342) mm }
      push-rod on lower-wishbone { outer (632, 128) mm, inner (226, 436) mm, thread 1.25 mm/turn }
      rocker {
        pivot (190, 400) mm
        eye side (208, 463) mm
        eye third (192, 456) mm
        eye damper (196, 476) mm
        eye high (175, 452) mm
        eye low (175, 348) mm
        eye bar (222, 396) mm
      }
    }`;

export const cornerBar = `spring corner-bar for corner {
      torsion-bar { diameter 11 mm, length 360 mm }
      twists rocker against chassis
    }`;

const axle = (name: "front" | "rear", x: number, elements: string): string => `  axle ${name} {
    track 1480 mm
    ride-height 32 mm
    travel -25 .. 25 mm
    wheel {
      centre (${x}, 731, 230) mm
      camber -2 deg
      loaded-radius 262 mm
      unsprung-mass 17 kg
      tyre-rate 165 N/mm
    }
    ${linkage}
    ${elements}
  }
`;

/** Its front axle alone carries elements, 44 % of 540 kg. */
export const onOneAxle = (elements: string, after = ""): string => `car tried {
  wheelbase 2540 mm
  mass 540 kg
  mass-front 44 %
  cg-height 285 mm
${axle("front", 0, elements)}}
${after}`;

/** Two axles alike, each carrying as much as the front one above. */
export const onTwoAxles = (elements: string, between: string): string => `car tried {
  wheelbase 2540 mm
  mass 475.2 kg
  mass-front 50 %
  cg-height 285 mm
${axle("front", 0, elements)}${axle("rear", -2540, elements)}${between}}
`;
