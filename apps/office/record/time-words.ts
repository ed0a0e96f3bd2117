// Whether an outside authority says when a checkpoint existed, in sentences.

import type { TimeStamp } from '../api/answers.js';
import { moment } from '../parts/words.js';

/** `meaning`: what the stamped checkpoint is to the reader. */
export function timed(
  { asks, stamp, fault, trouble, untimed }: TimeStamp,
  meaning?: string,
): readonly string[] {
  const newer =
    untimed === null
      ? []
      : [
          `The newest checkpoint, of ${untimed.toLocaleString('en-US')} entries, is untimed so far.`,
        ];
  const failed =
    trouble === null ? [] : [`When last asked: ${trouble} It is asked again by itself.`];
  if (fault !== null)
    return [`Untimed: the time-stamp that is kept does not hold. ${fault}`, ...failed];
  if (stamp !== null) {
    const of = `The checkpoint of ${stamp.size.toLocaleString('en-US')} entries`;
    const words = `${of} was time-stamped by ${stamp.by} on ${moment(stamp.at)}.`;
    return [meaning === undefined ? words : `${words} ${meaning}`, ...newer, ...failed];
  }
  if (!asks) return ['Untimed: no outside authority is asked when a checkpoint existed.'];
  return ['Untimed so far: no time-stamp of the authority is kept yet.', ...failed];
}
