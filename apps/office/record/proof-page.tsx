// The proof in words: what a signed checkpoint covers and what it proves of a job, what it does not;
// and the evidence as one file that can be checked anywhere.

import { useQuery } from '@tanstack/react-query';
import { sessionQuery } from '../api/queries.js';
import { proofQuery, type JobProof } from '../api/proof.js';
import { jobCrumbs, WithJob } from '../jobs/use-job.js';
import { FactTable } from '../parts/fact-table.js';
import { Failure, Loading } from '../parts/states.js';
import { Page } from '../shell/page.js';
import { has } from '../shell/home.js';
import type { JobView } from '#jobs/contract';
import { ExportEvidence, EXPORTERS } from './export-evidence.js';
import { Exports } from './exports.js';
import { HowToCheck } from './how-to-check.js';
import { Keys } from './keys.js';
import { covers, provesNot } from './proof-words.js';

export const ProofPage = () => <WithJob>{({ job }) => <Proof job={job} />}</WithJob>;

function Proof({ job }: { readonly job: JobView }) {
  const proof = useQuery(proofQuery(job.id, job.version));
  const session = useQuery(sessionQuery).data;
  return (
    <Page
      title="Proof and evidence"
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={
        <p>What can be shown of this job’s record to somebody who does not trust this office.</p>
      }
    >
      {proof.isPending && <Loading what="the proof" />}
      {proof.error && <Failure error={proof.error} retry={() => void proof.refetch()} />}
      {proof.data && <InWords proof={proof.data} />}
      {proof.data?.signs && has(session, ...EXPORTERS) && <ExportEvidence job={job} />}
      {proof.data && <HowToCheck job={job} proof={proof.data} />}
      {has(session, 'warranty-reviewer', 'administrator') && <Exports job={job} />}
    </Page>
  );
}

function InWords({ proof }: { readonly proof: JobProof }) {
  const { checkpoint } = proof;
  return (
    <>
      <section className="sheet stack" aria-labelledby="covers">
        <h2 id="covers">What is covered</h2>
        {covers(proof).map((words) => (
          <p key={words}>{words}</p>
        ))}
      </section>
      {checkpoint && (
        <>
          <section className="sheet stack" aria-labelledby="proves">
            <h2 id="proves">What it proves, and what not</h2>
            <p>
              To anyone who holds this checkpoint, or a key or a checkpoint from before: that these
              entries stood in this order when it was signed, and that none of them was altered,
              inserted or removed since. The record is tamper-evident against anyone holding a
              checkpoint.
            </p>
            <p>It does not prove:</p>
            <ul>
              {provesNot.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </section>
          <section className="sheet stack" aria-labelledby="checkpoint">
            <h2 id="checkpoint">The checkpoint</h2>
            <FactTable
              rows={[
                [
                  'Log',
                  <span key="o" className="digest">
                    {checkpoint.origin}
                  </span>,
                ],
                ['Entries covered', checkpoint.size.toLocaleString('en-US')],
                [
                  'Root',
                  <span key="r" className="digest">
                    {checkpoint.root}
                  </span>,
                ],
              ]}
            />
            <details>
              <summary>The signed note, to keep</summary>
              <pre className="digest note">{checkpoint.note}</pre>
            </details>
          </section>
          <Keys keys={proof.keys} />
        </>
      )}
    </>
  );
}
