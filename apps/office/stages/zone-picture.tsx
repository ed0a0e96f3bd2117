// The wind zones of this surface to scale, where shape, size and every zone's pressures are known.

import { zonePlan, type Drawing as Picture } from '#drawings';
import {
  ASCE_EDITIONS,
  degreesOfRise,
  feet,
  per12,
  zoneLayout,
  type AsceEdition,
} from '#engineering';
import type { HazardsContent, JobView, SurfaceView } from '#jobs/contract';
import { Drawing } from '../parts/drawing.js';
import { prose } from '../parts/words.js';

export function ZonePicture({
  job,
  surface,
}: {
  readonly job: JobView;
  readonly surface: SurfaceView;
}) {
  const { content } = surface.stages.hazards;
  const figure = content && picture(job, surface, content.wind);
  return figure ? <Drawing figure={figure} /> : null;
}

function picture(
  job: JobView,
  surface: SurfaceView,
  wind: HazardsContent['wind'],
): Picture | undefined {
  const at = (path: string) => job.facts.find((fact) => fact.path === path)?.value;
  const number = (path: string) => Number((at(path) as { v?: string } | undefined)?.v ?? NaN);
  const building = `building/${surface.building}`;
  const rise = [number(`${building}/roof-slope`), number(`surface/${surface.id}/slope`)].find(
    (n) => n >= 0,
  );
  const [h, width, length] = ['mean-roof-height', 'width', 'length'].map((name) =>
    number(`${building}/${name}`),
  );
  const shape = at(`${building}/roof-shape`);
  if (!h || !width || !length || rise === undefined || !SHAPES.includes(shape as string))
    return undefined;
  const [least, most] = [Math.min(width, length), Math.max(width, length)];
  const part = wind.zones[0]?.part === 'wall' ? 'wall' : 'roof';
  const editions = wind.edition === null ? ASCE_EDITIONS : [wind.edition as AsceEdition];
  return editions.map(drawn).find((each) => each !== undefined);

  function drawn(edition: AsceEdition): Picture | undefined {
    try {
      return draw(edition);
    } catch {
      // A zone of this edition's plan has no pressure, or the shape is outside its layouts.
      return undefined;
    }
  }
  function draw(edition: AsceEdition): Picture {
    const pieces = zoneLayout({
      edition,
      h: feet(h as number),
      roof: {
        shape: shape as 'gable',
        theta: degreesOfRise(per12(rise as number)),
        width: feet(least),
        length: feet(most),
        falls: 'along-width',
        overhang: feet(0),
      },
      eaveHeight: feet(Math.max(1, (h as number) - (least * (rise as number)) / 48)),
    }).filter(
      (piece) => piece.part === part && (piece.face === undefined || piece.face === 'eave'),
    );
    return zonePlan({
      title: `Wind zones, ${part}, laid out by ASCE/SEI ${edition} without overhangs`,
      pieces,
      pressures: wind.zones.map(({ zone, part: of, inward_psf, outward_psf }) => ({
        zone,
        part: of,
        inward_psf,
        outward_psf,
      })),
      basis: wind.basis === 'ASD' ? 'ASD' : 'strength level',
      source: prose(wind.source),
    });
  }
}

const SHAPES = ['gable', 'hip', 'monoslope', 'flat'];
