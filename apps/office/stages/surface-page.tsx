// One surface through its six stages, one at a time: the question, the facts it rests on, what the
// rules say, save and continue.

import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { label, STAGES } from '#jobs/contract';
import type { JobView, Stage } from '#jobs/contract';
import { sessionQuery, useNames } from '../api/queries.js';
import { StageFacts } from '../facts/fact-list.js';
import { GaugeStage } from '../gauge/gauge-stage.js';
import { idsIn, jobCrumbs, WithJob } from '../jobs/use-job.js';
import { Cautions } from '../parts/cautions.js';
import { Tag } from '../parts/table.js';
import { capital } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import { SignOffStage } from '../sign-off/sign-off-stage.js';
import { CoatingStage } from './coating-stage.js';
import { HazardsStage } from './hazards-stage.js';
import { Withdrawn } from './withdrawn.js';
import { StageList, SurfacePicker } from './stage-list.js';
import type { StageProps } from './stage-props.js';
import { stageStates, surfaceState } from './stage-state.js';
import { StyleStage } from './style-stage.js';
import { SubstrateStage } from './substrate-stage.js';

const STAGE_PAGES = {
  style: StyleStage,
  coating: CoatingStage,
  hazards: HazardsStage,
  substrate: SubstrateStage,
  gauge: GaugeStage,
  'sign-off': SignOffStage,
} as const satisfies Record<Stage, (props: StageProps) => React.ReactNode>;

export const SurfacePage = () => (
  <WithJob>{({ job, version }) => <Surface job={job} version={version} />}</WithJob>
);

function Surface({ job, version }: { readonly job: JobView; readonly version: number }) {
  const { surface: surfaceId, stage: given } = useParams({ strict: false });
  const surface = job.surfaces.find(({ id }) => id === surfaceId);
  const stage = STAGES.find((each) => each === given);
  const nameOf = useNames(idsIn(job));
  const session = useQuery(sessionQuery).data;
  if (!surface || !stage) return <NotFound />;
  const state = surfaceState(surface);
  const here = stageStates(surface).find((each) => each.stage === stage);
  const Stage = STAGE_PAGES[stage];
  const may = has(session, ...OFFICE) && surface.withdrawn === null;
  const building = job.buildings.find(({ id }) => id === surface.building)?.name;
  return (
    <Page
      title={`${surface.name}: ${capital(label(stage))}`}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      wide={stage === 'gauge'}
      lead={
        <p className="row">
          <Tag tone={state.tone}>{state.words}</Tag>
          <span>
            {job.name}, {building}, {label(surface.kind)}
          </span>
        </p>
      }
    >
      {surface.withdrawn !== null && <Withdrawn why={surface.withdrawn} />}
      <div className="split">
        <div className="stack wide no-print">
          <StageList job={job.id} surface={surface} here={stage} />
          <SurfacePicker job={job} here={surface.id} />
        </div>
        <div className="stack wide">
          <p className="quiet">
            Stage {STAGES.indexOf(stage) + 1} of {STAGES.length}: {here?.words}
          </p>
          <StageFacts job={job} surface={surface} stage={stage} nameOf={nameOf} may={may} />
          <Stage key={`${surface.id} ${stage}`} {...{ job, version, surface, nameOf, may }} />
          <Cautions />
        </div>
      </div>
    </Page>
  );
}
