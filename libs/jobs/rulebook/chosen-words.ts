// What a stage settled, in a few words for a line of a table.

import { label } from '#rules';
import type { StageContents } from '../contract/events.js';
import type { Decided } from './decided.js';

export function chosenWords({ stage, content }: Pick<Decided, 'stage' | 'content'>): string {
  switch (stage) {
    case 'style':
      return (content as StageContents['style']).profile_name;
    case 'coating': {
      const { metal, paint_system, color_group } = content as StageContents['coating'];
      return [metal, paint_system, color_group].map(label).join(', ');
    }
    case 'hazards':
      return 'hazards assessed';
    case 'substrate':
      return label((content as StageContents['substrate']).substrate);
    case 'gauge': {
      const { gauge, thickness_in } = content as StageContents['gauge'];
      return sheetWords(gauge, thickness_in);
    }
  }
}

/** "24 gauge, 0.0239 in"; metals without a gauge have their thickness alone. */
export const sheetWords = (gauge: string | null, thickness: string): string =>
  gauge === null ? `${thickness} in` : `${gauge} gauge, ${thickness} in`;
