// The warranty document that a claim names: its term, registration, transfers, exclusions.

import { label } from '#jobs/contract';
import { FactTable } from '../parts/fact-table.js';
import { capital, day, prose } from '../parts/words.js';
import type { OfClaim } from './of-claim.js';

export function Document({ job, claim }: OfClaim) {
  const document = job.after.warranties.find((each) => each.document === claim.document);
  const registration = job.after.registrations.find(({ kind }) => kind === document?.kind);
  return (
    <section className="sheet stack" aria-labelledby="document">
      <h2 id="document">The warranty document</h2>
      {document === undefined ? (
        <p>The claim names no document: which one it rests on is an open question.</p>
      ) : (
        <FactTable
          rows={[
            [
              'Document',
              `${capital(label(document.kind))}, ${document.title} (document ${document.document})`,
            ],
            ['Warrantor', document.warrantor],
            [
              'Term',
              `from ${day(document.start)} for ${document.years} years, until ${day(document.ends)}`,
            ],
            ['Registration', registration ? capital(prose(registration.words)) : 'not recorded'],
            [
              'Transfers',
              document.transfers
                .map(
                  ({ to, on, notice_given }) =>
                    `${day(on)} to ${to}, ${notice_given ? 'with notice' : 'without notice'}`,
                )
                .join('; ') || 'none',
            ],
            [
              'Exclusions the record triggers',
              document.exclusions_triggered.map(prose).join('; ') || 'none when it was issued',
            ],
            [
              'Print',
              <a
                key="print"
                href={`/api/jobs/${job.id}/papers/warranty/${document.document}/print.pdf`}
              >
                Document {document.document}, PDF
              </a>,
            ],
          ]}
        />
      )}
    </section>
  );
}
