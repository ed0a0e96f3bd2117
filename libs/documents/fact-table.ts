// Facts as they were read: what is known with how and from where; what nobody had told, in one line.

import { prose } from '#jobs';
import { column, type PrintTable } from './print.js';
import { factWords, valueWords } from './words.js';

interface FactRead {
  readonly path: string;
  readonly value: unknown;
  readonly source: string | null;
}

/** How a fact is known is read as a path of its own; it stands beside the fact, not below it. */
const isHow = ({ path }: FactRead): boolean => path.endsWith('#how');
const isKnown = ({ value }: FactRead): boolean => value !== null && value !== undefined;

export function factTable<F extends FactRead>(
  caption: string,
  facts: readonly F[],
  howWords: (fact: F) => string,
): PrintTable {
  const own = facts.filter((each) => !isHow(each));
  const known = own.filter(isKnown);
  const open = own.filter((each) => !isKnown(each)).map(({ path }) => factWords(path));
  return {
    caption,
    columns: [column('Fact'), column('Value', 2), column('How known'), column('Source', 1)],
    rows: [
      ...known.map((each) => [
        factWords(each.path),
        valueWords(each.value),
        howWords(each),
        prose(each.source ?? '–'),
      ]),
      ...(open.length > 0 ? [['Not given', open.join('; '), '–', '–']] : []),
    ],
  };
}
