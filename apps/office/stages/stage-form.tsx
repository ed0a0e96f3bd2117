// The form of a stage: its fields, the rules asked while it is filled in, cautions to acknowledge,
// rules to set aside, what it reopens, and one button.

import { useNavigate } from '@tanstack/react-router';
import type { FormEvent, ReactNode } from 'react';
import { STAGES } from '#jobs/contract';
import type { CommandInput, Rehearsal, Stage } from '#jobs/contract';
import { useRehearsal } from '../api/commands.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField, Tick, type FieldErrors } from '../parts/fields.js';
import { Findings } from '../parts/findings.js';
import { Kept } from '../parts/kept.js';
import { Reopens } from '../parts/reopens.js';
import { useForm } from '../parts/use-form.js';
import { useLater } from '../parts/use-later.js';
import { movable, unreadCautions } from './stage-frame.js';
import type { StageProps } from './stage-props.js';

export interface OnStage {
  readonly surface: string;
  readonly acknowledges: string[];
  readonly overrides: { rule: string; reason: string }[];
  readonly reason?: string;
}

interface Beside {
  readonly acknowledges: readonly string[];
  readonly overrides: Readonly<Record<string, string>>;
  readonly reason: string;
}

export interface StageFormProps<T extends object> extends StageProps {
  readonly stage: Exclude<Stage, 'sign-off'>;
  readonly initial: T;
  readonly faults: (typed: T, rehearsal: Rehearsal | undefined) => FieldErrors;
  /** The command, or null while too little is filled in to ask the rules. */
  readonly command: (
    typed: T,
    on: OnStage,
    rehearsal: Rehearsal | undefined,
  ) => CommandInput | null;
  readonly place: (pointer: string) => string;
  readonly children: (given: {
    readonly typed: T;
    readonly set: (change: Partial<T>) => void;
    readonly errors: FieldErrors;
    readonly rehearsal: Rehearsal | undefined;
    readonly asking: boolean;
  }) => ReactNode;
}

export function StageForm<T extends object>(props: StageFormProps<T>) {
  const { job, version, surface, stage, initial } = props;
  const draft = useDraft<T & Beside>(`${job.id} ${surface.id} ${stage}`, {
    ...initial,
    acknowledges: [],
    overrides: {},
    reason: '',
  });
  const { value: typed, set } = draft;
  const form = useForm(
    job.id,
    (pointer) => placeOn(pointer) ?? props.place(pointer),
    'Stage confirmed.',
  );
  const navigate = useNavigate();
  const before = surface.stages[stage].content !== null;
  const asked = useLater(rehearsed(props, typed, surface.id), 350);
  const rules = useRehearsal(job.id, version, asked);
  const rehearsal = asked === null ? undefined : rules.data;
  const findings = rehearsal?.findings ?? [];
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const faults = [...props.faults(typed, rehearsal), ...unread(findings, typed.acknowledges)];
    const make = () => props.command(typed, onStage(typed, surface.id, findings), rehearsal);
    form.submit(
      faults,
      () => make() as CommandInput,
      () => {
        draft.clear();
        const next = STAGES[STAGES.indexOf(stage) + 1] ?? 'sign-off';
        void navigate({
          to: '/jobs/$job/surfaces/$surface/$stage',
          params: { job: job.id, surface: surface.id, stage: next },
        });
      },
    );
  };
  const change = set as (change: Partial<T> | Partial<Beside>) => void;
  return (
    <form className="stack wide" noValidate onSubmit={submit}>
      <ErrorSummary {...form} />
      <Kept draft={draft} />
      {props.children({
        typed,
        set: change,
        errors: form.errors,
        rehearsal,
        asking: rules.isFetching,
      })}
      <Findings findings={findings} busy={rules.isFetching} />
      <Refusals rehearsal={rehearsal} />
      {unreadCautions(findings).map((each) => (
        <Tick
          key={each.rule}
          id={`read-${each.rule}`}
          label={`I have read this caution: ${each.title} (${each.rule})`}
          hint={each.words}
          checked={typed.acknowledges.includes(each.rule)}
          onChange={(on) =>
            change({
              acknowledges: on
                ? [...typed.acknowledges, each.rule]
                : typed.acknowledges.filter((rule) => rule !== each.rule),
            })
          }
        />
      ))}
      {movable(findings).map((each) => (
        <LongField
          key={each.rule}
          id={`aside-${each.rule}`}
          errors={form.errors}
          label={`Set aside ${each.rule}, with a reason`}
          hint={`${each.title}. Where the policy gives your role this; the reason is kept for ever.`}
          value={typed.overrides[each.rule] ?? ''}
          onChange={(text) => change({ overrides: { ...typed.overrides, [each.rule]: text } })}
        />
      ))}
      {rehearsal && <Reopens job={job} reopens={rehearsal.reopens} />}
      {before && (
        <LongField
          id="reason"
          label="Reason for the change"
          hint="Not needed where the same is confirmed again"
          errors={form.errors}
          value={typed.reason}
          onChange={(reason) => change({ reason })}
        />
      )}
      <div className="row">
        <button type="submit" className="main" aria-disabled={form.busy}>
          {form.busy ? 'Saving…' : 'Save and continue'}
        </button>
      </div>
    </form>
  );
}

function onStage(typed: Beside, surface: string, findings: Rehearsal['findings']): OnStage {
  const rules = new Set(movable(findings).map(({ rule }) => rule));
  const reason = typed.reason.trim();
  return {
    surface,
    acknowledges: [...typed.acknowledges],
    overrides: Object.entries(typed.overrides)
      .filter(([rule, why]) => rules.has(rule) && why.trim())
      .map(([rule, why]) => ({ rule, reason: why.trim() })),
    ...(reason ? { reason } : {}),
  };
}

/** The rules are asked about the choice; a reason is typed last, so one stands in for it here. */
function rehearsed<T extends object>(
  props: StageFormProps<T>,
  typed: T & Beside,
  surface: string,
): CommandInput | null {
  if (props.faults(typed, undefined).length > 0) return null;
  const { acknowledges } = typed;
  const reason =
    props.surface.stages[props.stage].content === null ? {} : { reason: 'not given yet' };
  return props.command(
    typed,
    { surface, acknowledges: [...acknowledges], overrides: [], ...reason },
    undefined,
  );
}

const unread = (findings: Rehearsal['findings'], read: readonly string[]): FieldErrors =>
  unreadCautions(findings)
    .filter(({ rule }) => !read.includes(rule))
    .map(({ rule, title }) => ({
      field: `read-${rule}`,
      message: `Read this caution and tick it: ${title} (${rule})`,
    }));

const placeOn = (pointer: string): string | undefined => {
  if (pointer.startsWith('/reason')) return 'reason';
  return pointer.startsWith('/overrides') || pointer.startsWith('/acknowledges') ? '' : undefined;
};

/** Refusals that are not a rule's finding: of order, of content. */
function Refusals({ rehearsal }: { readonly rehearsal: Rehearsal | undefined }) {
  const found = (rehearsal?.refusals ?? []).filter(
    ({ code }) => !['MOVE-02', 'MOVE-05', 'MOVE-12'].includes(code) && code.startsWith('MOVE'),
  );
  if (found.length === 0) return null;
  return (
    <div className="notice blocked" role="status">
      <ul>
        {found.map(({ code, words }, i) => (
          <li key={i}>
            {words} ({code})
          </li>
        ))}
      </ul>
    </div>
  );
}
