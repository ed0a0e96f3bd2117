// Decisions in the order they were recorded: who, when recorded, when true, in words.

import { label } from '#jobs/contract';
import { moment } from '../parts/words.js';

export interface Entry {
  readonly version: number;
  readonly at: string;
  readonly effective: string;
  readonly by: string;
  readonly role: string;
  readonly words: string;
}

export function Timeline({ entries }: { readonly entries: readonly Entry[] }) {
  return (
    <ol className="timeline">
      {entries.map((each) => (
        <li key={each.version}>
          <p>
            <strong>{each.words}</strong>
          </p>
          <p className="quiet small">
            Entry {each.version}; {each.by} ({label(each.role)}); recorded {moment(each.at)}
            {each.effective !== each.at && `; true since ${moment(each.effective)}`}
          </p>
        </li>
      ))}
    </ol>
  );
}
