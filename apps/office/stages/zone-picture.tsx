// The wind zones of this surface to scale, where shape, size and every zone's pressures are known.

import { zonePlan, type Drawing as Picture } from '#drawings';
import { degreesOfRise, feet, per12, zoneLayout, type AsceEdition } from '#engineering';
import type { HazardsContent, JobView, SurfaceView } from '#jobs/contract';
import { Drawing } from '../parts/drawing.js';
import { prose } from '../parts/words.js';

export function ZonePicture({ job, surface }: { readonly job: JobView; readonly surface: SurfaceView }) {
  const { content } = surface.stages.hazards;
  const figure = content && picture(job, surface, content.wind);
  return figure ? <Drawing figure={figure} /> : null;
}

function picture(job: JobView, surface: SurfaceView, wind: HazardsContent['wind']): Picture | undefined {
  const at = (path: string) => job.facts.find((fact) => fact.path === path)?.value;
  const number = (path: string) => Number((at(path) as { v?: string } | undefined)?.v ?? NaN);
  const building = `building/${surface.building}`;
  const rise = [number(`${building}/roof-slope`), number(`surface/${surface.id}/slope`)].find((n) => n >= 0);
  const [h, width, length] = ['mean-roof-height', 'width', 'length'].map((name) => number(`${building}/${name}`));
  const shape = at(`${building}/roof-shape`);
  if (!h || !width || !length || rise === undefined || !SHAPES.includes(shape as string)) return undefined;
  const part = wind.zones[0]?.part === 'wall' ? 'wall' : 'roof';
  try {
    const pieces = zoneLayout({
      edition: (wind.edition ?? '7-16') as AsceEdition,
      h: feet(h),
      roof: {
        shape: shape as 'gable', theta: degreesOfRise(per12(rise)), width: feet(Math.min(width, length)),
        length: feet(Math.max(width, length)), falls: 'along-width', overhang: feet(0),
      },
      eaveHeight: feet(Math.max(1, h - (Math.min(width, length) * rise) / 48)),
    }).filter((piece) => piece.part === part && (piece.face === undefined || piece.face === 'eave'));
    return zonePlan({
      title: `Wind zones, ${part}`,
      pieces,
      pressures: wind.zones.map(({ zone, part: of, inward_psf, outward_psf }) => ({ zone, part: of, inward_psf, outward_psf })),
      basis: wind.basis === 'ASD' ? 'ASD' : 'strength level',
      source: prose(wind.source),
    });
  } catch {
    // A zone of the plan without a pressure, or a shape outside the layouts: no picture.
    return undefined;
  }
}

const SHAPES = ['gable', 'hip', 'monoslope', 'flat'];
