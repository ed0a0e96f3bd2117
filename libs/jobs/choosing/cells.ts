// Judging one option in one zone, as often as a search asks: the same rules and the same checks as
// the evaluation, each check made once and remembered, each judgement counted against the budget.

import { bookKey, factsReadBy, refusing, type Edition, type FactKey } from '#rules';
import { zonesOf, type Zone } from './demand.js';
import { checkedIn, optionFacts, type Check } from './evaluate.js';
import type { Frame } from './choices.js';
import type { Option } from './options.js';
import { attachmentIn, type Question } from './question.js';

/** Spacings laid over what is proposed for one zone, inches; what is absent stays as it is. */
export interface Local {
  readonly spacing?: number;
  readonly rows?: number;
  readonly supports?: number;
}

export interface Cells {
  readonly check: Check;
  /** Whether the rules that see no zone refuse the option in this frame. */
  readonly refusedOutright: (frame: Frame) => boolean;
  /** Whether the rules that see zones let the option pass in one zone. */
  readonly passes: (frame: Frame, zone: Zone, local: Local) => boolean;
  /** Counts judgements; false once the budget is spent. */
  readonly spend: (judgements: number) => boolean;
  readonly spent: () => { readonly judgements: number; readonly reached: boolean };
}

export function cellsOf(question: Question, budget: number): Cells {
  const check = remembering();
  const [withZones, without] = parted(question);
  const read = factsReadBy(withZones, question.book, 'gauge').filter(
    (key) => key !== 'zones' && key !== 'option',
  ) as FactKey[];
  const known = new Map<string, boolean>();
  const keys = new WeakMap<Frame, string>();
  const keyOf = (frame: Frame): string => {
    const found = keys.get(frame) ?? mechanics(frame, read);
    keys.set(frame, found);
    return found;
  };
  let judgements = 0;
  const spend = (n: number): boolean => (judgements += n) < budget;
  const judgeZone = (frame: Frame, zone: Zone, local: Local): boolean => {
    spend(1);
    const asked = questionIn(frame.question, zone, local);
    const here = { ...zone, spacing_in: local.supports ?? zone.spacing_in };
    const facts = optionFacts(
      asked,
      unpriced(frame.option),
      [],
      [check(asked, frame.option, here).facts],
    );
    return refusing(withZones, asked.book, 'gauge', facts).length === 0;
  };
  return {
    check,
    spend,
    spent: () => ({ judgements, reached: judgements >= budget }),
    refusedOutright: ({ question: asked, option, options }) => {
      spend(1);
      return (
        refusing(without, asked.book, 'gauge', optionFacts(asked, option, options, [])).length > 0
      );
    },
    passes: (frame, zone, local) => {
      const key = `${keyOf(frame)}|${zone.zone}|${local.spacing}|${local.rows}|${local.supports}`;
      const found = known.get(key) ?? judgeZone(frame, zone, local);
      known.set(key, found);
      return found;
    },
  };
}

/**
 * What a zone's outcome rests on beside its spacings: the sheet, its fastener, and facts of the
 * rules.
 */
function mechanics({ question, option }: Frame, read: readonly FactKey[]): string {
  const facts: Partial<Record<FactKey, unknown>> = question.facts;
  return JSON.stringify([
    question.profile.id,
    question.width,
    option.id,
    option.availability,
    question.attachment.fastener,
    read.map((key) => facts[key]),
  ]);
}
/**
 * No rule that sees zones looks at the price; a change that one would refuse does not reproduce.
 */
const unpriced = (option: Option): Option => ({ ...option, price: null });

/** The gauge rules that read zones, and those that do not. */
function parted({ edition, book }: Question): readonly [Edition, Edition] {
  const gauge = edition.entries.filter(
    ({ rule, version }) => book.get(bookKey(rule, version))?.stage === 'gauge',
  );
  const sees = ({ rule, version }: Edition['entries'][number]): boolean =>
    book.get(bookKey(rule, version))?.reads.includes('zones') === true;
  return [
    { ...edition, entries: gauge.filter(sees) },
    { ...edition, entries: gauge.filter((entry) => !sees(entry)) },
  ];
}

/**
 * A check is a pure function of profile, option, attachment, spacing and loads: these are its key.
 */
function remembering(): Check {
  const known = new Map<string, ReturnType<Check>>();
  return (question, option, zone) => {
    const at = attachmentIn(question, zone.zone);
    const key = [
      question.profile.id,
      question.width,
      option.id,
      question.attachment.fastener,
      zone.zone,
      zone.part,
      zone.spacing_in,
      at?.spacing.v,
      at?.rows?.v,
      zone.windInward,
      zone.windOutward,
      question.snow.roof_psf,
    ].join('|');
    const found = known.get(key) ?? checkedIn(question, option, zone);
    known.set(key, found);
    return found;
  };
}

const inches = (value: number) => ({ v: String(value), u: 'in' as const });

function attachmentWith(question: Question, zone: string, local: Local) {
  const at = attachmentIn(question, zone);
  const { rows } = local;
  // A concealed clip sits on its support and moves with it.
  const clips = question.open_framing && question.profile.fastening === 'concealed';
  const spacing = local.spacing ?? (clips ? local.supports : undefined);
  const asked = spacing === undefined ? at?.spacing : inches(spacing);
  const asRows = rows === undefined ? at?.rows : inches(rows);
  return asked ? [{ zone, spacing: asked, ...(asRows ? { rows: asRows } : {}) }] : [];
}

/** The attachment of one zone alone, changed; its support spacing goes with the zone itself. */
function questionIn(question: Question, { zone }: Zone, local: Local): Question {
  if (Object.keys(local).length === 0) return question;
  return {
    ...question,
    attachment: { ...question.attachment, zones: attachmentWith(question, zone, local) },
  };
}

/**
 * The question with spacings changed in some zones; every zone then has an attachment of its own.
 */
export function withLocals(question: Question, locals: ReadonlyMap<string, Local>): Question {
  if (locals.size === 0) return question;
  const zones = zonesOf(question);
  const attachments = zones.flatMap(({ zone }) =>
    attachmentWith(question, zone, locals.get(zone) ?? {}),
  );
  const moved = [...locals].flatMap(([zone, { supports }]) =>
    supports === undefined ? [] : [{ zone, v: String(supports) }],
  );
  const kept = question.spacings.filter((each) => !moved.some(({ zone }) => zone === each.zone));
  const asked = {
    ...question,
    attachment: { ...question.attachment, zones: attachments },
    spacings: [...kept, ...moved],
  };
  if (moved.length === 0) return asked;
  const now = zonesOf(asked);
  const added = now.some(({ spacing_in }, i) => (spacing_in ?? 0) < (zones[i]?.spacing_in ?? 0));
  const widest = Math.max(...now.map(({ spacing_in }) => spacing_in ?? 0));
  return {
    ...asked,
    facts: {
      ...asked.facts,
      support_spacing_in: widest,
      ...(added ? { framing_added: true } : {}),
    },
  };
}
