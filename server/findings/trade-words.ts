/**
 * What the same thing is called elsewhere in the trade, so that a newcomer's first word finds ours.
 * Common usage, no published source. Keys are lower case; a value is offered only where it is valid.
 */
const elsewhere: Readonly<Record<string, readonly string[]>> = {
  "a-arm": ["lower-wishbone", "upper-wishbone"],
  "anti-sway-bar": ["anti-roll-bar"],
  arb: ["anti-roll-bar"],
  bellcrank: ["rocker"],
  "bell-crank": ["rocker"],
  bounce: ["heave"],
  bumprubber: ["bump-stop"],
  "bump-rubber": ["bump-stop"],
  center: ["centre"],
  "center-spring": ["spring"],
  cog: ["cg-height"],
  "cog-height": ["cg-height"],
  compression: ["bump", "in-compression"],
  crossweight: ["warp"],
  "drop-arm": ["drop-link"],
  "end-link": ["drop-link"],
  extension: ["rebound", "in-tension"],
  inertor: ["inerter"],
  "lower-a-arm": ["lower-wishbone"],
  "lower-arm": ["lower-wishbone"],
  "lower-control-arm": ["lower-wishbone"],
  packer: ["gap"],
  pullrod: ["pull-rod"],
  pushrod: ["push-rod"],
  rideheight: ["ride-height"],
  shock: ["damper"],
  "shock-absorber": ["damper"],
  "spring-rate": ["rate"],
  "steering-arm": ["track-rod"],
  stiffness: ["rate"],
  "sway-bar": ["anti-roll-bar"],
  "tie-rod": ["track-rod"],
  "tire-damping": ["tyre-damping"],
  "tire-rate": ["tyre-rate"],
  "tire-spring": ["tyre-rate"],
  "toe-link": ["track-rod"],
  "toe-rod": ["track-rod"],
  "track-width": ["track"],
  twist: ["warp"],
  "upper-a-arm": ["upper-wishbone"],
  "upper-arm": ["upper-wishbone"],
  "upper-control-arm": ["upper-wishbone"],
  "weight-distribution": ["mass-front"],
  weight: ["mass"],
};

/** Our words for a word of the trade; none where it is not in the list. */
export function ourWordsFor(word: string): readonly string[] {
  return Object.hasOwn(elsewhere, word) ? (elsewhere[word] ?? []) : [];
}
