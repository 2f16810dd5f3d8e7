/** The small words inside a statement, with what hover says of them. They are never units. */
export const joiningWords: Readonly<Record<string, string>> = {
  above: "The figure has to be greater than what follows.",
  against: "Between the two bodies of a torsional connection.",
  and: "Joins the two ends of a connection, two modes, or the ends of a range.",
  at: "Names the load case at which a figure is taken.",
  below: "The figure has to be smaller than what follows.",
  between: "From one end to the other: of a connection, or of a range that a figure has to lie in.",
  by: "In a set-up: adds to the inherited value instead of replacing it. After `trim`: what the trim turns.",
  crossed: "A line from one cylinder's working side to the other's far side.",
  for: "What the element claims to work in; its computed motion is held against it.",
  from: "What a set-up derives from, or where a curve is read from.",
  of: "How many positions an adjuster has.",
  on: "The body that a rod is joined to.",
  per: "What comes before it is for one of what follows: a shim of that thickness.",
  to: "The other end of a line.",
  within: "The figure may differ from the target by this much, either way.",
  x: "Between the two sides of a section.",
};
