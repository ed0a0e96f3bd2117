// Claims: tests computed from readings and the term, laid out for a person who decides. A term
// without a scale is an open question, never assumed.

import {
  chalkAgainstTerm,
  fadeAgainstTerm,
  type ColorChange,
  type TermOutcome,
} from '#engineering';
import type { CommandOf } from '../contract/commands.js';
import type { ClaimTest } from '../contract/after-order-events.js';
import type { EventData } from '../contract/events.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import type { Job } from '../job.js';
import { refuse, type Refusal } from '../refusal.js';
import { speakAt } from './order.js';
import { installedFacts } from './gate-facts.js';
import { shareLeft } from './share.js';
import type { Claim, Warranty } from './state.js';
import { exclusionsTriggered } from './warranty.js';

export function openClaim(job: Job, command: CommandOf<'open-claim'>): Decision {
  const refusals: Refusal[] = [];
  if (job.after.claims[command.claim])
    refusals.push(refuse('MOVE-07', `Claim ${command.claim} is open already.`, '/claim'));
  if (!job.surfaces[command.surface])
    refusals.push(refuse('MOVE-03', `There is no surface ${command.surface}.`, '/surface'));
  if (command.document !== undefined && !job.after.warranties[command.document]) {
    refusals.push(
      refuse('MOVE-03', `There is no warranty document ${command.document}.`, '/document'),
    );
  }
  if (refusals.length > 0) return decline(...refusals);
  const { type: _, ...data } = command;
  return accept({ type: 'claim-opened/1', data });
}

export function recordReading(job: Job, command: CommandOf<'record-reading'>): Decision {
  const claim = job.after.claims[command.claim];
  if (!claim) return decline(refuse('MOVE-03', `There is no claim ${command.claim}.`, '/claim'));
  const refusals: Refusal[] = [];
  if (claim.decided)
    refusals.push(refuse('MOVE-07', 'This claim is decided; open a new one for new facts.'));
  if (command.what === 'color') {
    for (const key of ['scale', 'illuminant', 'observer', 'retained', 'weathered'] as const) {
      if (command[key] === undefined)
        refusals.push(refuse('MOVE-10', `A color reading states its ${key}.`, `/${key}`));
    }
  } else if (command.rating === undefined) {
    refusals.push(refuse('MOVE-10', `A ${command.what} reading states its rating.`, '/rating'));
  }
  if (refusals.length > 0) return decline(...refusals);
  const { type: _, ...data } = command;
  return accept({ type: 'reading-recorded/1', data });
}

export function decideClaim(
  job: Job,
  command: CommandOf<'decide-claim'>,
  context: Context,
): Decision {
  const claim = job.after.claims[command.claim];
  if (!claim) return decline(refuse('MOVE-03', `There is no claim ${command.claim}.`, '/claim'));
  if (claim.decided)
    return decline(refuse('MOVE-07', `This claim was decided: ${claim.decided.decision}.`));
  const { type: _, ...data } = command;
  return accept({
    type: 'claim-decided/1',
    data: {
      ...data,
      tests: claimTests(job, claim, context),
      findings: claimFindings(job, claim, context),
    },
  });
}

/** The computed tests of a claim; a person decides. */
export function claimTests(
  job: Job,
  claim: Claim,
  context: Pick<Context, 'catalogue'>,
): readonly ClaimTest[] {
  const warranty = claim.document ? job.after.warranties[claim.document] : undefined;
  const surface = job.surfaces[claim.surface];
  const excluded = surface ? exclusionsTriggered(job, [surface], context.catalogue) : [];
  const built = job.after.asBuilt[claim.surface];
  return [
    ...(warranty ? termTests(claim, warranty) : [open('term', 'no warranty document is named')]),
    ...claim.readings.flatMap((reading) => readingTests(reading, warranty)),
    {
      test: 'exclusions',
      outcome: excluded.length === 0 ? 'met' : 'not met',
      words:
        excluded.length === 0
          ? 'none is triggered by what is recorded'
          : `triggered: ${excluded.join('; ')}`,
    },
    built
      ? {
          test: 'as built',
          outcome: built.differences.length === 0 ? 'met' : 'not met',
          words: built.differences.join('; ') || 'built as approved',
        }
      : open('as built', 'nothing was recorded as built'),
  ];
}

const open = (test: string, words: string): ClaimTest => ({ test, outcome: 'open', words });

function termTests(claim: Claim, warranty: Warranty): readonly ClaimTest[] {
  const end = endOf(warranty.start, warranty.years);
  const within = claim.notice >= warranty.start && claim.notice < end;
  const year =
    Math.floor((Date.parse(claim.notice) - Date.parse(warranty.start)) / (365.25 * 86_400_000)) + 1;
  const share = within ? shareLeft(warranty, claim.notice) : null;
  const silent = warranty.transfers.filter(({ notice_given }) => !notice_given);
  return [
    {
      test: 'term in force at the notice date',
      outcome: within ? 'met' : 'not met',
      words: `notice ${claim.notice}, in year ${year}; the term runs from ${warranty.start} for ${warranty.years} years`,
    },
    {
      test: 'transfers',
      outcome: silent.length === 0 ? 'met' : 'not met',
      words:
        silent.length === 0
          ? `${warranty.transfers.length} recorded, each with notice`
          : `without notice: ${silent.map(({ to }) => to).join(', ')}`,
    },
    ...(share
      ? [
          {
            test: 'cover left at the notice date',
            outcome: share.months_left > 0 || share.of_months === 0 ? 'met' : 'not met',
            words: share.words,
          } as const,
        ]
      : []),
  ];
}

/** The day on which a term is over; a term that starts on a leap day ends on March 1. */
export function endOf(start: string, years: number): string {
  const [year = 0, month = 1, day = 1] = start.split('-').map(Number);
  return new Date(Date.UTC(year + years, month - 1, day)).toISOString().slice(0, 10);
}

function readingTests(
  reading: EventData['reading-recorded/1'],
  warranty: Warranty | undefined,
): readonly ClaimTest[] {
  if (reading.what === 'chalk') return [chalkTest(reading, warranty)];
  if (reading.what !== 'color')
    return [open(reading.what, `reading ${reading.rating} recorded; no term speaks of it here`)];
  const { fade } = warranty ?? {};
  if (!fade) return [open('fade', 'the document has no fade term')];
  const { retained, weathered, scale, washed, illuminant = 'C', observer = '2' } = reading;
  if (!retained || !weathered) return [open('fade', 'the reading is not complete')];
  const term = {
    fade: {
      most: Number(fade.limit),
      ...(fade.scale === 'not named' ? {} : { scale: fade.scale }),
    },
  };
  const space = scale === 'Hunter' ? 'Hunter' : 'CIELAB';
  const change: ColorChange = {
    retained: { space, value: lab(retained) },
    weathered: { space, value: lab(weathered) },
    viewing: { illuminant, observer: observer === '10' ? '10-degree' : '2-degree' },
    washed,
  };
  const sums = fade.scale === 'not named' ? inEachScale(change) : '';
  return [tested('fade', fadeAgainstTerm(term, change), `${sums} Term: ${fade.years} years.`)];
}

/** Where the term names no scale, the same change in each of them, for the question to its warrantor. */
function inEachScale(change: ColorChange): string {
  const read = (['Hunter', 'CIELAB', 'CIEDE2000'] as const).flatMap((scale) => {
    const told = fadeAgainstTerm({ fade: { most: Infinity, scale } }, change);
    return told.outcome === 'open' ? [] : [`${told.measured.toFixed(2)} in ${scale}`];
  });
  return read.length === 0 ? '' : ` This one is ${read.join(', ')}.`;
}

const lab = ({ L, a, b }: { L: string; a: string; b: string }) => ({
  L: Number(L),
  a: Number(a),
  b: Number(b),
});

const tested = (test: string, term: TermOutcome, rest = ''): ClaimTest => ({
  test,
  outcome: term.outcome === 'open' ? 'open' : term.outcome === 'within' ? 'met' : 'not met',
  words: `${term.says}${rest}`,
});

function chalkTest(
  reading: EventData['reading-recorded/1'],
  warranty: Warranty | undefined,
): ClaimTest {
  const { chalk } = warranty ?? {};
  const term = chalk ? { chalk: { least: Number(chalk.least) } } : {};
  return tested(
    'chalk',
    chalkAgainstTerm(term, { rating: Number(reading.rating), ratedBeforeWashing: !reading.washed }),
  );
}

function claimFindings(job: Job, claim: Claim, context: Context) {
  const warranty = claim.document ? job.after.warranties[claim.document] : undefined;
  const color = claim.readings.filter(({ what }) => what === 'color');
  const chalk = claim.readings.filter(({ what }) => what === 'chalk');
  const surface = job.surfaces[claim.surface];
  return speakAt(
    'claim',
    {
      claim_particulars_missing: [
        ...(claim.lot ? [] : ['lot']),
        ...(claim.document ? [] : ['warranty document']),
      ],
      notice_date: claim.notice,
      term_from: warranty?.start,
      term_to: warranty && endOf(warranty.start, warranty.years),
      is_color_claim: claim.kind === 'fade' || claim.kind === 'chalk',
      term_color_scale: warranty?.fade?.scale ?? 'not named',
      chalk_rated_before_wash: chalk.length > 0 ? chalk.every(({ washed }) => !washed) : undefined,
      color_read_after_wash: color.length > 0 ? color.every(({ washed }) => washed) : undefined,
      reading_details_missing: [...color, ...chalk].flatMap(({ instrument, calibrated }) => [
        ...(instrument ? [] : ['instrument']),
        ...(calibrated ? [] : ['calibration date']),
      ]),
      registered_on: warranty ? job.after.registrations[warranty.kind]?.on : undefined,
      transfers_without_notice:
        warranty?.transfers.filter(({ notice_given }) => !notice_given).map(({ to }) => to) ?? [],
      exclusions_triggered: surface ? exclusionsTriggered(job, [surface], context.catalogue) : [],
      claim_evidence_missing: claim.files > 0 ? [] : ['photos'],
      as_built_differences: installedFacts(job).as_built_differences,
    },
    context,
  );
}
