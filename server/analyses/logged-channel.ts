/**
 * What a logged channel says of the wheels: the travel of its own wheel, or heave or roll of the axle, against a rocker's angle
 * or an element's deflection, both counted from a position that the channel is set to nought in.
 *
 * In: channel against motion over the envelope. Out: the stretch around that position where one follows from the other.
 */
import { monotone } from "../maths/monotone.js";
import { absent } from "./absent.js";
import type { Absent } from "./results.js";

export interface Sample {
  /** Travel or heave, m; roll, rad. */
  readonly motion: number;
  /** rad or m */
  readonly channel: number;
}

export interface ChannelCurve {
  readonly kind: "channel-curve";
  /** Rising in the channel. */
  readonly samples: readonly Sample[];
  /** True where the envelope goes further than the channel is of use: from there on one value means two motions. */
  readonly isCut: boolean;
  /** The motion that a channel means, and back; straight on outside of the samples. */
  motionAt(channel: number): number;
  channelAt(motion: number): number;
}

/** Less movement of the channel than this between two samples is none. */
const STILL = 1e-12;

/** @param samples rising in motion, with one at `zero` @param zero the motion at which the channel reads nought */
export function channelCurve(samples: readonly Sample[], zero: number): ChannelCurve | Absent {
  const start = samples.findIndex(({ motion }) => motion >= zero - STILL);
  const [before, at, after] = [samples[start - 1], samples[start], samples[start + 1]];
  if (at === undefined) return absent("the position that it is set to nought in is not among those looked at");
  const way = Math.sign((after ?? at).channel - (before ?? at).channel);
  const stretch = monotoneStretch(samples, start, way);
  if (way === 0 || stretch.length < 3) return absent("the channel does not move there, or turns round");
  const counted = stretch.map(({ motion, channel }) => ({ motion, channel: channel - at.channel }));
  const rising = way > 0 ? counted : [...counted].reverse();
  const byChannel = monotone(
    rising.map(({ channel }) => channel),
    rising.map(({ motion }) => motion),
  );
  const byMotion = monotone(
    counted.map(({ motion }) => motion),
    counted.map(({ channel }) => channel),
  );
  return {
    kind: "channel-curve",
    samples: rising,
    isCut: stretch.length < samples.length,
    motionAt: (channel) => byChannel.value(channel),
    channelAt: (motion) => byMotion.value(motion),
  };
}

function monotoneStretch(samples: readonly Sample[], start: number, way: number): readonly Sample[] {
  const goesOn = (i: number): boolean => {
    const [one, next] = [samples[i], samples[i + 1]];
    return one !== undefined && next !== undefined && way * (next.channel - one.channel) > STILL;
  };
  let [low, high] = [start, start];
  while (goesOn(high)) high++;
  while (low > 0 && goesOn(low - 1)) low--;
  return samples.slice(low, high + 1);
}
