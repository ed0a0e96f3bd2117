// What stands against a command of a gate, all of it at once with its rule, and what a person may do
// about it: acknowledge a caution, set a rule aside with a reason.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { RefusalView, Rehearsal } from '#jobs/contract';
import { rulebookQuery } from '../api/queries.js';
import { SALE } from '../facts/by-stage.js';
import { LongField, Tick, type FieldErrors } from '../parts/fields.js';
import { capital, prose } from '../parts/words.js';

export interface Beside {
  readonly acknowledges: readonly string[];
  readonly overrides: Readonly<Record<string, string>>;
}
export const NOTHING_BESIDE: Beside = { acknowledges: [], overrides: {} };

/** The gate's part of a command; a rule that stands no longer is not set aside. */
export const besideIn = ({ acknowledges, overrides }: Beside, said: Rehearsal | undefined) => ({
  acknowledges: [...acknowledges],
  overrides: Object.entries(overrides)
    .filter(([rule, why]) => why.trim() && said?.refusals.some(({ code }) => code === rule))
    .map(([rule, reason]) => ({ rule, reason: reason.trim() })),
});

export function Gate({
  job,
  rehearsal,
  asking,
  firm,
  typed,
  set,
  errors,
}: {
  readonly job: string;
  /** Of the command with nothing set aside and nothing acknowledged. */
  readonly rehearsal: Rehearsal | undefined;
  readonly asking: boolean;
  /** Nothing here can be set aside or acknowledged. */
  readonly firm: boolean;
  readonly typed: Beside;
  readonly set: (change: Partial<Beside>) => void;
  readonly errors: FieldErrors;
}) {
  const rules = useQuery(rulebookQuery).data?.rules ?? [];
  const found = (rehearsal?.refusals ?? []).map((each) => ({ ...each, rule: ruleOf(each) }));
  const unknown = found.some(isUnknown);
  const movable = found.filter(
    (each) =>
      !firm &&
      each.code === each.rule &&
      !isUnknown(each) &&
      rules.some(({ rule, class: of }) => rule === each.rule && MOVABLE.includes(of)),
  );
  const cautions = found.filter(({ code }) => !firm && code === 'MOVE-05');
  return (
    <section className="sheet stack" aria-label="What the rules say">
      <h2>What the rules say</h2>
      <p className="quiet" role="status">
        {summary(rehearsal, asking, found.length)}
      </p>
      {found.length > 0 && (
        <ul className="findings">
          {found.map(({ rule, words, cites }, i) => (
            <li key={i}>
              <p>
                <strong>{rule}</strong> {rules.find((each) => each.rule === rule)?.title}
              </p>
              <p>{capital(prose(words))}</p>
              {cites.length > 0 && <p className="cite">Source: {cites.join('; ')}.</p>}
            </li>
          ))}
        </ul>
      )}
      {unknown && (
        <p>
          What is not known yet is recorded as a fact:{' '}
          <Link to="/jobs/$job/facts" params={{ job }} search={{ on: SALE }}>
            the sale and its papers
          </Link>
          , or there of the site or a surface. What you typed here is kept.
        </p>
      )}
      {cautions.map(({ rule, words }) => (
        <Tick
          key={rule}
          id={`read-${rule}`}
          label={`I have read this caution (${rule})`}
          hint={words}
          checked={typed.acknowledges.includes(rule)}
          onChange={(on) =>
            set({
              acknowledges: on
                ? [...typed.acknowledges, rule]
                : typed.acknowledges.filter((each) => each !== rule),
            })
          }
        />
      ))}
      {movable.length > 0 && (
        <details>
          <summary>Set a rule of the house or of guidance aside</summary>
          <div className="stack">
            {movable.map(({ rule }) => (
              <LongField
                key={rule}
                id={`aside-${rule}`}
                label={`Set aside ${rule}, with a reason`}
                errors={errors}
                hint="Where the policy gives your role this; the reason is kept for ever."
                value={typed.overrides[rule] ?? ''}
                onChange={(text) => set({ overrides: { ...typed.overrides, [rule]: text } })}
              />
            ))}
          </div>
        </details>
      )}
    </section>
  );
}

const MOVABLE: readonly string[] = ['guidance', 'house-policy'];

/** What nobody knows yet cannot be set aside: there is nothing said to set aside. */
const isUnknown = ({ words }: RefusalView): boolean => /^not known yet/i.test(words);

/** A caution's refusal names its rule first. */
const ruleOf = ({ code, words }: RefusalView): string =>
  code === 'MOVE-05' ? (/^\S+/.exec(words)?.[0] ?? code) : code;

function summary(rehearsal: Rehearsal | undefined, asking: boolean, found: number): string {
  if (!rehearsal)
    return asking ? 'Asking the rules…' : 'The rules are asked once enough is filled in.';
  if (found === 0) return 'Nothing stands against it.';
  return `${found} ${found === 1 ? 'thing stands' : 'things stand'} against it.`;
}
