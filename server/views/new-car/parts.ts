/** The shelf of a new car: what its elements are fitted with, and what lies beside it to try. */
import type { NewCar } from "./answers.js";

const valving = (name: string, slow: number): string => {
  const force = (speed: number, share: number): string => `${speed} mm/s: ${Math.round(slow * speed * share)} N`;
  const side = (share: number): string =>
    [force(25, share), force(50, share), force(100, share * 0.82), force(200, share * 0.65)].join(", ");
  return `  valving ${name} {
    bump { ${side(0.85)} }
    rebound { ${side(1.15)} }
  }`;
};

export function partsText({ name, corner, springs, bars }: NewCar): string {
  const isCoil = springs === "coil" || corner === "ratio";
  const carriers = isCoil
    ? `  # coils; the number is the rate
  coil K-80 { rate 80 N/mm, wire 9.5 mm, mean-diameter 50 mm, active-turns 8, free-length 190 mm, stock 2 }
  coil K-100 { rate 100 N/mm, wire 10 mm, mean-diameter 50 mm, active-turns 7.9, free-length 190 mm, stock 2 }
  coil K-120 { rate 120 N/mm, wire 10.5 mm, mean-diameter 50 mm, active-turns 8, free-length 190 mm, stock 2 }`
    : `  # torsion bars, solid; the number is the diameter in tenths of a millimetre
  torsion-bar TB-120 { diameter 12 mm, length 480 mm, stock 2 }
  torsion-bar TB-130 { diameter 13 mm, length 480 mm, stock 2 }
  torsion-bar TB-140 { diameter 14 mm, length 480 mm, stock 2 }`;
  const barParts = bars
    ? `
  # anti-roll bars
  torsion-bar RB-14 { diameter 14 mm, bore 9 mm, length 380 mm, stock 1 }
  torsion-bar RB-15 { diameter 15 mm, bore 10 mm, length 380 mm, stock 1 }
`
    : "";
  return `# ${name}-parts.crank: what is on the shelf
catalogue {
${carriers}
${barParts}
  # dampers; the number is the slow slope in N*s/mm times ten
${[
  ["V-24", 2.4],
  ["V-30", 3],
  ["V-36", 3.6],
  ["V-46", 4.6],
]
  .map(([part, slow]) => valving(String(part), Number(slow)))
  .join("\n")}
}
`;
}
