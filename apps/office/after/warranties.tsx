// Warranties and claims in words: registrations, documents, claims with their tests.

import { Link } from '@tanstack/react-router';
import { label, type ClaimView, type JobView, type WarrantyView } from '#jobs/contract';
import { Tag } from '../parts/table.js';
import { capital, day, moment, prose } from '../parts/words.js';
import { List } from './orders.js';
import { surfaceName } from './pick.js';
import { To } from './to.js';

export function Warranties({ job }: { readonly job: JobView }) {
  const { registrations, warranties } = job.after;
  return (
    <section className="sheet stack" aria-label="Warranty">
      <h3>Warranty</h3>
      {registrations.length === 0 && <p>No registration is recorded.</p>}
      {registrations.length > 0 && (
        <ul>
          {registrations.map(({ kind, words, due_by, late_days }) => (
            <li key={kind}>
              {capital(label(kind))}: {prose(words)}; due by {day(due_by)}{' '}
              {late_days > 0 && <Tag tone="waiting">Filed late</Tag>}
            </li>
          ))}
        </ul>
      )}
      {warranties.length === 0 && <p>No warranty document is issued.</p>}
      {warranties.map((each) => (
        <Document key={each.document} job={job} document={each} />
      ))}
      <p className="row">
        <To job={job} command="file-registration" />
        <To job={job} command="issue-warranty" />
        <To job={job} command="transfer-warranty" />
      </p>
    </section>
  );
}

const Document = ({
  job,
  document: of,
}: {
  readonly job: JobView;
  readonly document: WarrantyView;
}) => (
  <div className="stack tight">
    <h4>
      {capital(label(of.kind))}, {of.title} (document {of.document})
    </h4>
    <p>
      {of.warrantor}; {of.surfaces.map((id) => surfaceName(job, id)).join(', ')}; from{' '}
      {day(of.start)} for {of.years} years, until {day(of.ends)}.
    </p>
    {of.exclusions_triggered.length > 0 && (
      <List name="Exclusions the record triggers" lines={of.exclusions_triggered} />
    )}
    {of.transfers.length > 0 && (
      <List
        name="Transfers"
        lines={of.transfers.map(
          ({ to, on, notice_given }) =>
            `${day(on)} to ${to}, ${notice_given ? 'with notice' : 'without notice'}`,
        )}
      />
    )}
  </div>
);

export const Claims = ({
  job,
  nameOf,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
}) => (
  <section className="sheet stack" aria-label="Claims">
    <h3>Claims</h3>
    {job.after.claims.length === 0 && <p>No claim is open or decided.</p>}
    {job.after.claims.map((each) => (
      <Claim key={each.claim} job={job} claim={each} nameOf={nameOf} />
    ))}
    <p className="row">
      <To job={job} command="open-claim" />
    </p>
  </section>
);

const Claim = ({
  job,
  claim,
  nameOf,
}: {
  readonly job: JobView;
  readonly claim: ClaimView;
  readonly nameOf: (id: string) => string;
}) => (
  <div className="stack tight">
    <h4>
      <Link to="/jobs/$job/claims/$claim" params={{ job: job.id, claim: claim.claim }}>
        {capital(label(claim.kind))}, {surfaceName(job, claim.surface)} (claim {claim.claim})
      </Link>
    </h4>
    <p>
      Notice {day(claim.notice)}. {claim.words}
    </p>
    <p>
      {claim.decided
        ? `${capital(label(claim.decided.decision))} by ${nameOf(claim.decided.by)}, ${moment(claim.decided.at)}.`
        : 'Not decided: the tests are laid out on its page, a person decides.'}
    </p>
  </div>
);
