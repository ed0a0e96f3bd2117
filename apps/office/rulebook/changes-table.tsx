// The difference of two editions, rule by rule: was, becomes, and what it rests on.

import type { RuleChange } from '#jobs/contract';
import { PlainTable } from '../parts/table.js';
import { capital, number } from '../parts/words.js';

export const ChangesTable = ({
  caption,
  changes,
}: {
  readonly caption: string;
  readonly changes: readonly RuleChange[];
}) => (
  <PlainTable
    caption={caption}
    columns={['Rule', 'What', 'Was', 'Becomes', 'Rests on', 'Source of the rule']}
    rows={changes.map((each) => [
      <>
        {each.rule}
        <br />
        <span className="quiet small">{each.title}</span>
      </>,
      capital(each.what.replaceAll('_', ' ')),
      side(each.was, 'not in the edition'),
      side(each.becomes, 'left out'),
      each.because ?? 'came with the product',
      each.source,
    ])}
  />
);

const side = (value: string | null, none: string): string =>
  value === null ? none : value === 'true' ? 'yes' : value === 'false' ? 'no' : number(value);
