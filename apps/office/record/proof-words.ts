// What a checkpoint covers of a job, in sentences, and what no checkpoint can show.

import type { JobProof } from '../api/proof.js';
import { count, moment } from '../parts/words.js';
import { timed } from './time-words.js';

const n = (value: number): string => value.toLocaleString('en-US');

export function covers({
  entries,
  checkpoint,
  keys,
  path,
  signs,
  refused,
  time_stamp,
}: JobProof): readonly string[] {
  const own =
    `This job has ${count(entries.count, 'entry', 'entries')} in the record, at positions ` +
    `${n(entries.first)} to ${n(entries.last)}; the last was recorded on ${moment(entries.last_at)}.`;
  if (!signs) {
    return [
      own,
      'This installation signs no checkpoints: it was started without a folder for its key. Whoever ' +
        'has the database could rewrite it unseen; nothing here proves otherwise.',
    ];
  }
  if (refused !== null || checkpoint === null) {
    return [
      own,
      `The signer refused to sign the record as it stands. ${refused ?? ''} Tell the administrator: ` +
        'until this is cleared up, trust only papers and checkpoints that were kept elsewhere.',
    ];
  }
  const key = keys.find((each) => each.in_use);
  return [
    own,
    `A checkpoint over the first ${n(checkpoint.size)} entries of the company’s whole record was signed ` +
      `with the key ${key?.id ?? ''} (fingerprint ${key?.fingerprint.slice(0, 16) ?? ''}…). ` +
      `${entries.last <= checkpoint.size ? 'All entries of this job lie under it.' : 'It does not reach the last entries of this job yet.'}`,
    ...(path === null
      ? []
      : [
          `From the last entry, at position ${n(entries.last)}, ${count(path, 'hash', 'hashes')} lead to the ` +
            'signed root. This was computed and checked when you opened the page.',
        ]),
    ...timed(time_stamp, 'It lies over all entries of this job.'),
  ];
}

export const provesNot: readonly string[] = [
  'that what people entered is true: it shows who recorded what, and when the office knew it',
  'that no later entry exists: ask for a newer checkpoint',
  'anything to somebody who only has what is on this page: compare the key or a checkpoint with one kept outside this office',
  'that the design is safe or lawful: local code and the authority having jurisdiction govern',
];
