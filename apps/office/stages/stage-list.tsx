// The six stages of one surface as an ordered list, and the picker of the job's other surfaces.

import { Link } from '@tanstack/react-router';
import type { JobView, Stage, SurfaceView } from '#jobs/contract';
import { openStage, stageStates, surfaceState } from './stage-state.js';

export function StageList({
  job,
  surface,
  here,
}: {
  readonly job: string;
  readonly surface: SurfaceView;
  readonly here: Stage;
}) {
  return (
    <nav aria-label={`Stages of ${surface.name}`}>
      <ol className="stage-list">
        {stageStates(surface).map(({ stage, name, state, words }) => (
          <li
            key={stage}
            data-state={state}
            data-here={stage === here ? 'yes' : 'no'}
            {...(stage === here ? { 'aria-current': 'step' as const } : {})}
          >
            <Link
              to="/jobs/$job/surfaces/$surface/$stage"
              params={{ job, surface: surface.id, stage }}
            >
              {name}
            </Link>
            <span className="state" data-state={state}>
              {words}
            </span>
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** Where there are others. */
export function SurfacePicker({ job, here }: { readonly job: JobView; readonly here: string }) {
  if (job.surfaces.length < 2) return null;
  return (
    <nav aria-label="Surfaces of this job" className="stack">
      <h2>Surfaces</h2>
      {job.buildings.map((building) => (
        <div key={building.id}>
          <h3>{building.name}</h3>
          <ul className="surface-list">
            {job.surfaces
              .filter((surface) => surface.building === building.id)
              .map((surface) => (
                <li key={surface.id}>
                  <Link
                    to="/jobs/$job/surfaces/$surface/$stage"
                    params={{ job: job.id, surface: surface.id, stage: openStage(surface) }}
                    {...(surface.id === here ? { 'aria-current': 'true' as const } : {})}
                  >
                    {surface.name}
                  </Link>{' '}
                  <span className="quiet small">{surfaceState(surface).words}</span>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </nav>
  );
}
