// "What the rules say": every rule asked, its outcome in words, its edition and its source.

import { citationText } from '#engineering';
import type { Finding } from '#jobs/contract';
import { label } from '#jobs/contract';
import { Tag, type Tone } from './table.js';
import { amount, capital, prose } from './words.js';

type Outcome = Finding['outcome'];

/** What the outcome of a finding means for the person, with its tone. */
export function outcomeOf({ outcome, severity }: Finding): {
  words: string;
  tone: Tone;
  order: number;
} {
  if (outcome === 'pass') return { words: 'Pass', tone: 'ready', order: 5 };
  if (outcome === 'not-applicable') return { words: 'Not applicable', tone: 'plain', order: 6 };
  if (outcome === 'not-evaluated') return { words: 'Not known yet', tone: 'waiting', order: 3 };
  return FAILED[severity];
}

const FAILED: Readonly<Record<Finding['severity'], { words: string; tone: Tone; order: number }>> =
  {
    refuse: { words: 'Refused', tone: 'blocked', order: 0 },
    require: { words: 'Adds a duty', tone: 'waiting', order: 1 },
    caution: { words: 'Caution', tone: 'waiting', order: 2 },
    note: { words: 'Note', tone: 'plain', order: 4 },
  };

const QUIET: readonly Outcome[] = ['pass', 'not-applicable'];

export function Findings({
  findings,
  heading = 'What the rules say',
  edition,
  busy,
  level = 2,
}: {
  readonly findings: readonly Finding[];
  readonly heading?: string;
  readonly edition?: { readonly number: number } | null;
  readonly busy?: boolean;
  readonly level?: 2 | 3;
}) {
  const H = level === 2 ? 'h2' : 'h3';
  const ordered = [...findings].sort((a, b) => outcomeOf(a).order - outcomeOf(b).order);
  const loud = ordered.filter(({ outcome }) => !QUIET.includes(outcome));
  const quiet = ordered.filter(({ outcome }) => QUIET.includes(outcome));
  return (
    <section className="sheet stack" aria-label={heading}>
      <div className="row ends">
        <H>{heading}</H>
        {edition && <span className="quiet small">Rules edition {edition.number}</span>}
      </div>
      <p className="quiet" {...(busy === undefined ? {} : { role: 'status' })}>
        {busy ? 'Asking the rules…' : summary(findings)}
      </p>
      {loud.length > 0 && <List findings={loud} />}
      {quiet.length > 0 && (
        <details open={loud.length === 0}>
          <summary>
            {quiet.length} {quiet.length === 1 ? 'rule has' : 'rules have'} nothing against it
          </summary>
          <List findings={quiet} />
        </details>
      )}
    </section>
  );
}

function summary(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'No rule has been asked yet.';
  const count = (words: string) =>
    findings.filter((each) => outcomeOf(each).words === words).length;
  const parts = [
    'Refused',
    'Adds a duty',
    'Caution',
    'Not known yet',
    'Note',
    'Pass',
    'Not applicable',
  ]
    .map((words) => ({ words, n: count(words) }))
    .filter(({ n }) => n > 0)
    .map(({ words, n }) => `${n} ${words.toLowerCase()}`);
  return `${findings.length} ${findings.length === 1 ? 'rule' : 'rules'} asked: ${parts.join(', ')}.`;
}

const List = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <ul className="findings">
    {findings.map((each, i) => (
      <li key={`${each.rule} ${i}`}>
        <One finding={each} />
      </li>
    ))}
  </ul>
);

function One({ finding }: { readonly finding: Finding }) {
  const { words, tone } = outcomeOf(finding);
  return (
    <>
      <div className="heading">
        <Tag tone={tone}>{words}</Tag>
        <strong>{finding.title}</strong>
        <span className="quiet small">
          {finding.rule}, version {finding.version}
        </span>
      </div>
      <p>{capital(prose(finding.words))}</p>
      {finding.figures.length > 0 && (
        <p className="small">
          {finding.figures.map(({ name, v, u }) => `${name} ${amount({ v, u })}`).join('; ')}
        </p>
      )}
      <p className="cite">
        {capital(label(finding.class))}. Source: {finding.cites.map(citationText).join('; ')}.
      </p>
    </>
  );
}
