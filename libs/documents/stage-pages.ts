// The stages of a surface on paper: what was settled, the facts read, what the rules said.

import { timeline, type Drawing } from '#drawings';
import {
  chosenField,
  prose,
  type DecisionRecord,
  type Evaluation,
  type RecordedStage,
  type RecordedSurface,
} from '#jobs';
import { factTable } from './fact-table.js';
import { nameIn } from './option-tables.js';
import { column, type Pair, type PrintTable } from './print.js';
import { capital, dayWords, momentWords, personWords, spaced, statusWords } from './words.js';

export interface StagePage {
  readonly name: string;
  readonly standing: string;
  readonly chosen: readonly Pair[];
  readonly tables: readonly PrintTable[];
}

export function stagePage(stage: RecordedStage, evaluation: Evaluation | null): StagePage {
  const editions = `rules edition ${stage.rules_edition}, catalogue edition ${stage.catalogue_edition}`;
  const who = `${personWords(stage.by, stage.role)}, ${momentWords(stage.at)}`;
  return {
    name: capital(stage.stage),
    standing: `${capital(statusWords(stage.status))}. ${who}; ${editions}.`,
    chosen: stage.chosen
      .filter(({ what }) => what !== 'profile')
      .map((each) => chosenWords(each, evaluation)),
    tables: [factsOf(stage), saidTable(stage), overrideTable(stage)].filter(
      ({ rows }) => rows.length > 0,
    ),
  };
}

/** What holds the id of an option; a profile's id is left out, its name stands beside it. */
const OPTIONS: readonly string[] = ['option', 'recommended'];

function chosenWords(
  { what, value }: RecordedStage['chosen'][number],
  evaluation: Evaluation | null,
): Pair {
  if (evaluation && OPTIONS.includes(what)) return [capital(what), nameIn(evaluation, value)];
  const [name, words] = chosenField(what, value);
  return [capital(name), prose(words)];
}

const factsOf = ({ stage, facts }: RecordedStage): PrintTable =>
  factTable(`Facts that the ${stage} stage read`, facts, ({ how, by, at }) =>
    knownWords(how, by, at),
  );

/** "measured, Cora, 3 Mar 2026"; records of before facts named their person say how alone. */
const knownWords = (how: string | null, by?: string | null, at?: string | null): string =>
  [how ?? 'decided earlier', ...(by ? [by] : []), ...(at ? [dayWords(at)] : [])].join(', ');

const saidTable = ({ stage, said }: RecordedStage): PrintTable => ({
  caption: `What the rules said at the ${stage} stage`,
  columns: [
    column('Rule'),
    column('If not met'),
    column('Outcome'),
    column('Words', 3),
    column('Source', 1),
  ],
  rows: said.map((each) => [
    each.rule,
    each.severity,
    spaced(each.outcome),
    each.words,
    each.cites.join('; '),
  ]),
});

const overrideTable = ({ stage, overrides }: RecordedStage): PrintTable => ({
  caption: `Set aside at the ${stage} stage, with the reason`,
  columns: [column('Rule'), column('It says', 1), column('Reason', 1)],
  rows: overrides.map(({ rule, says, reason }) => [rule, says, reason]),
});

/** The stages in the order they were recorded, in the words of the job's history. */
export function stageTimeline(record: DecisionRecord, surface: RecordedSurface): Drawing {
  const stages = [...surface.stages].sort((a, b) => a.at.localeCompare(b.at));
  return timeline({
    title: `Decisions as they stand, ${surface.name}`,
    as_of: null,
    decisions: stages.map(({ stage, at, by, role, status }) => ({
      at,
      words:
        record.timeline.find((each) => each.at === at && each.words.startsWith(capital(stage)))
          ?.words ?? capital(stage),
      by: personWords(by, role),
      standing: status === 'confirmed' ? 'stands' : statusWords(status),
    })),
  });
}
