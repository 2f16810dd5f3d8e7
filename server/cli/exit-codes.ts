/** What the command's exit code says. */
export const exitCodes = {
  fine: 0,
  /** Findings at or above `--fail-on`, a missed expectation, or a file that `format --check` would change. */
  findings: 1,
  /** Wrong usage or unreadable input. */
  unusable: 2,
  /** `compare --detailed-exit-code`: something differs. */
  differs: 3,
} as const;
