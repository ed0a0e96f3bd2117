// The packet: facts frozen at a stated time and digest, pressures, every check, exceptions on top.

import type { JobView, SurfaceView } from '#jobs/contract';
import type { Packet } from '../api/answers.js';
import { Demands, OptionDetails } from '../gauge/zones.js';
import { Comparison } from '../gauge/comparison.js';
import { Findings, outcomeOf } from '../parts/findings.js';
import { PlainTable } from '../parts/table.js';
import { moment, value } from '../parts/words.js';

export function PacketBody({
  packet,
  nameOf,
}: {
  readonly packet: Packet;
  readonly nameOf: (id: string) => string;
}) {
  const { job } = packet.body;
  return (
    <section className="stack wide" aria-label="The packet">
      <div className="notice">
        <p>
          Facts frozen on {moment(packet.frozen_at)}. Digest of the packet:{' '}
          <span className="digest">{packet.digest}</span>
        </p>
      </div>
      {job.surfaces.map((surface) => (
        <Surface key={surface.id} surface={surface} />
      ))}
      <FactsOf job={job} nameOf={nameOf} />
    </section>
  );
}

function FactsOf({
  job,
  nameOf,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
}) {
  return (
    <PlainTable
      caption="Facts and their sources"
      columns={['Fact', 'Value', 'How known', 'Source', 'Recorded']}
      rows={job.facts.map((fact) => [
        fact.definition.asks,
        value(fact.value),
        fact.how,
        fact.source ?? '',
        `${nameOf(fact.by)}, ${moment(fact.at)}`,
      ])}
    />
  );
}

function Surface({ surface }: { readonly surface: SurfaceView }) {
  const { gauge } = surface.stages;
  const findings = Object.values(surface.stages).flatMap((stage) => stage.findings);
  const exceptions = findings.filter((each) => outcomeOf(each).order < 4);
  return (
    <section className="stack" aria-label={surface.name}>
      <h2>{surface.name}</h2>
      {exceptions.length > 0 && (
        <Findings findings={exceptions} heading={`Exceptions: ${surface.name}`} level={3} />
      )}
      {gauge.evaluation && (
        <>
          <Comparison evaluation={gauge.evaluation} chosen={gauge.content?.option} />
          <Demands evaluation={gauge.evaluation} />
          <OptionDetails evaluation={gauge.evaluation} />
        </>
      )}
    </section>
  );
}
