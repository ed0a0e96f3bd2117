// Lines of an order as a table: the same columns wherever they are read.

import { feetInches } from '#drawings';
import { label, type JobView } from '#jobs/contract';
import { PlainTable } from '../parts/table.js';
import { capital } from '../parts/words.js';
import { surfaceName } from './pick.js';

export interface LineShown {
  readonly id: string;
  readonly surface: string | null;
  readonly what: string;
  readonly words: string;
  readonly length: string;
  readonly count: string;
  readonly weight: string;
  readonly price: string;
}

export const LinesTable = ({
  job,
  caption,
  lines,
}: {
  readonly job: JobView;
  readonly caption: string;
  readonly lines: readonly LineShown[];
}) => (
  <PlainTable
    caption={caption}
    columns={[
      'Line',
      'For',
      'Kind',
      'What',
      { name: 'Count', num: true },
      { name: 'Length', num: true },
      { name: 'In inches', num: true },
      { name: 'Weight, lb', num: true },
      { name: 'Price, USD', num: true },
    ]}
    rows={lines.map((line) => [
      line.id.toUpperCase(),
      line.surface ? surfaceName(job, line.surface) : 'the whole job',
      capital(label(line.what)),
      line.words,
      line.count,
      Number(line.length) > 0 ? feetInches(Number(line.length)) : '',
      line.length,
      line.weight,
      line.price,
    ])}
  />
);
