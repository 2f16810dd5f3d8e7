/** A time as on a wrist: "2026-05-14 09:20". The clock is the face's. */

const two = (value: number): string => String(value).padStart(2, "0");

export const localTime = (now: Date): string =>
  `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
