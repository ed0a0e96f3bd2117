// The time-stamps in an evidence bundle. Without one the checkpoints are untimed, which is no fault.

import { checkpointFile, timeStampFiles } from './bundle.js';
import { text } from './bundle-files.js';
import type { Opened } from './bundle-files.js';
import { TimeStampFault } from './time-signature.js';
import { openTimeStamp } from './time-stamp.js';
import type { Files } from './zip.js';

/** `authority`: certificates held from elsewhere, PEM. */
export function checkTimeStamps(
  { contents, files, checkpoint }: Opened,
  authority: string | undefined,
  says: string[],
): void {
  const stamped = contents.timeStamps ?? [];
  const compare =
    authority === undefined
      ? 'compare the certificate under time-stamps/ with one you hold'
      : 'whose certificate you hold';
  for (const size of stamped) {
    const latest = size === checkpoint.size;
    if (!latest && !contents.checkpoints.includes(size)) {
      throw new SyntaxError(`There is no checkpoint of ${size} entries for its time-stamp.`);
    }
    const names = timeStampFiles(size);
    const { at, by } = named(size, () =>
      openTimeStamp(text(files, latest ? 'checkpoint.txt' : checkpointFile(size)), {
        request: bytes(files, names.request),
        reply: bytes(files, names.reply),
        trusted: authority ?? text(files, names.trusted),
      }),
    );
    says.push(`The checkpoint of ${size} entries was time-stamped by ${by} at ${at}; ${compare}.`);
  }
  if (stamped.includes(checkpoint.size)) return;
  says.push(
    `The bundle's checkpoint of ${checkpoint.size} entries is untimed: ` +
      'no outside authority says when it existed.',
  );
}

/** Says which time-stamp is at fault. */
function named<T>(size: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof TimeStampFault)) throw error;
    throw new SyntaxError(`Time-stamp of ${size} entries: ${error.message}`, { cause: error });
  }
}

function bytes(files: Files, name: string): Buffer {
  const found = files.get(name);
  if (found === undefined) throw new SyntaxError(`${name} is missing.`);
  return found;
}
