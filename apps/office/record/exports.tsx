// Who exported the evidence of a job, and why.

import { useQuery } from '@tanstack/react-query';
import type { JobView } from '#jobs/contract';
import { exportsQuery } from '../api/proof.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { moment } from '../parts/words.js';

export function Exports({ job }: { readonly job: JobView }) {
  const exports = useQuery(exportsQuery(job.id));
  if (exports.isPending) return <Loading what="the exports" />;
  if (exports.data === undefined)
    return <Failure error={exports.error} retry={() => void exports.refetch()} />;
  if (exports.data.length === 0) return <p>The evidence of this job was never exported.</p>;
  return (
    <PlainTable
      caption="Exports of the evidence"
      note="Newest first"
      columns={['When', 'By', 'Reason']}
      rows={exports.data.map(({ at, reader, why }) => [moment(at), reader.name, why ?? ''])}
    />
  );
}
