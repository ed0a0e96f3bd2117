// What is typed for wind and snow, checked before it is sent, and the command's hazards.

import type { CommandInput, HazardsContent, SurfaceView } from '#jobs/contract';
import type { FieldErrors } from '../parts/fields.js';
import { day, parseDay } from '../parts/words.js';

export interface ZoneTyped {
  readonly zone: string;
  readonly part: string;
  readonly inward: string;
  readonly outward: string;
}
export interface LoadTyped {
  readonly method: string;
  readonly basis: string;
  readonly byEngineer: boolean;
  readonly document: string;
  readonly date: string;
  readonly edition: string;
  readonly why: string;
}
export interface HazardsTyped {
  readonly wind: LoadTyped;
  readonly zones: readonly ZoneTyped[];
  readonly snow: LoadTyped;
  readonly roofSnow: string;
  readonly exposure: string;
  readonly thermal: string;
  readonly rRoof: string;
  readonly ventilated: boolean;
  readonly roofSurface: string;
  readonly roofLive: string;
}

type Hazards = Extract<CommandInput, { type: 'assess-hazards' }>['hazards'];
const LOAD: LoadTyped = {
  method: '',
  basis: 'strength',
  byEngineer: false,
  document: '',
  date: '',
  edition: '7-16',
  why: '',
};

/** What was confirmed before comes back into the form; else empty, with the zones of the surface. */
export function hazardsTyped(surface: SurfaceView): HazardsTyped {
  const content = surface.stages.hazards.content;
  return {
    wind: loadFrom(content?.wind),
    zones: content?.wind.zones.length ? content.wind.zones.map(zoneFrom) : ZONES[partOf(surface)],
    snow: loadFrom(content?.snow),
    roofSnow: content?.snow.method === 'entered' ? content.snow.roof_psf : '',
    exposure: 'partially',
    thermal: 'heated',
    rRoof: '',
    ventilated: false,
    roofSurface: 'slippery-unobstructed',
    roofLive: content?.roof_live_psf ?? '',
  };
}

const partOf = ({ kind }: SurfaceView): 'roof' | 'wall' =>
  kind === 'wall' || kind === 'fascia' || kind === 'liner' || kind === 'interior' ? 'wall' : 'roof';

const zone = (name: string, part: string): ZoneTyped => ({
  zone: name,
  part,
  inward: '',
  outward: '',
});
const ZONES = {
  roof: [zone('1', 'roof'), zone('2', 'roof'), zone('3', 'roof')],
  wall: [zone('4', 'wall'), zone('5', 'wall')],
};
const zoneFrom = (each: HazardsContent['wind']['zones'][number]): ZoneTyped => ({
  zone: each.zone,
  part: each.part,
  inward: each.inward_psf,
  outward: each.outward_psf,
});

function loadFrom(content: HazardsContent['wind'] | HazardsContent['snow'] | undefined): LoadTyped {
  if (!content) return LOAD;
  const [, document = content.source, date = ''] =
    /^(.*), (\d{4}-\d{2}-\d{2})$/s.exec(content.source) ?? [];
  return {
    ...LOAD,
    method: content.method,
    basis: content.basis,
    byEngineer: content.by_engineer,
    edition: content.edition ?? LOAD.edition,
    ...(content.method === 'entered' ? { document, date: day(date) } : {}),
    ...(content.method === 'not-applicable' ? { why: content.source } : {}),
  };
}

export function hazardsFaults(typed: HazardsTyped): FieldErrors {
  return [
    ...loadFaults('wind', 'Wind', typed.wind),
    ...(typed.wind.method === 'entered' ? typed.zones.flatMap(zoneFaults) : []),
    ...loadFaults('snow', 'Snow', typed.snow),
    ...(typed.snow.method === 'entered' && !decimal(typed.roofSnow)
      ? [{ field: 'roof-snow', message: 'Roof snow load: enter a number in psf, like 24.5' }]
      : []),
    ...(typed.snow.method === 'calculated' && typed.rRoof.trim() && !decimal(typed.rRoof)
      ? [
          {
            field: 'r-roof',
            message: 'Thermal resistance of the roof: enter a number like 30, or leave it empty',
          },
        ]
      : []),
    ...(typed.roofLive.trim() && !decimal(typed.roofLive)
      ? [
          {
            field: 'roof-live',
            message: 'Roof live load: enter a number in psf, or leave it empty',
          },
        ]
      : []),
  ];
}

function loadFaults(id: 'wind' | 'snow', name: string, load: LoadTyped): FieldErrors {
  if (!load.method)
    return [{ field: `${id}-method-0`, message: `${name}: choose how it is known` }];
  if (load.method === 'not-applicable' && !load.why.trim()) {
    return [{ field: `${id}-why`, message: `${name}: say why it does not act here` }];
  }
  if (load.method !== 'entered') return [];
  return [
    ...(load.document.trim()
      ? []
      : [
          {
            field: `${id}-document`,
            message: `${name}: name the letter, report or map it comes from`,
          },
        ]),
    ...(parseDay(load.date)
      ? []
      : [{ field: `${id}-date`, message: `${name}: enter its date like 14 Feb 2026` }]),
  ];
}

function zoneFaults({ zone: name, inward, outward }: ZoneTyped, i: number): FieldErrors {
  const up = decimal(outward);
  const down = decimal(inward);
  return [
    ...(name.trim() ? [] : [{ field: `zone-${i}`, message: `Zone ${i + 1}: enter its name` }]),
    ...(down !== undefined && Number(down) >= 0
      ? []
      : [
          {
            field: `inward-${i}`,
            message: `Zone ${name || i + 1}: enter the inward pressure in psf, like 16.0`,
          },
        ]),
    ...(up !== undefined && Number(up) <= 0
      ? []
      : [
          {
            field: `outward-${i}`,
            message: `Zone ${name || i + 1}: enter the uplift in psf with its minus sign, like −32.5`,
          },
        ]),
  ];
}

/** A decimal in plain digits; the printed minus sign counts as a hyphen; units are refused. */
export function decimal(text: string): string | undefined {
  const given = text.trim().replace('−', '-');
  return /^-?(0|[1-9]\d*)(\.\d+)?$/.test(given) ? given : undefined;
}

const source = (load: LoadTyped) => ({
  document: load.document.trim(),
  date: parseDay(load.date) ?? '',
});

export function hazardsOf(typed: HazardsTyped): Hazards {
  const live = decimal(typed.roofLive);
  return {
    wind: windOf(typed),
    snow: snowOf(typed),
    ...(live ? { roof_live: { v: live, u: 'psf' as const } } : {}),
  };
}

function windOf({ wind, zones }: HazardsTyped): Hazards['wind'] {
  if (wind.method === 'not-applicable') return { method: 'not-applicable', why: wind.why.trim() };
  if (wind.method === 'calculated')
    return { method: 'calculated', edition: wind.edition as '7-16' };
  return {
    method: 'entered',
    basis: wind.basis as 'ASD',
    by_engineer: wind.byEngineer,
    source: source(wind),
    zones: zones.map((each) => ({
      zone: each.zone.trim(),
      part: each.part as 'roof',
      inward: { v: decimal(each.inward) ?? '', u: 'psf' as const },
      outward: { v: decimal(each.outward) ?? '', u: 'psf' as const },
    })),
  };
}

function snowOf({ snow, ...typed }: HazardsTyped): Hazards['snow'] {
  if (snow.method === 'not-applicable') return { method: 'not-applicable', why: snow.why.trim() };
  if (snow.method === 'calculated') {
    const rRoof = decimal(typed.rRoof);
    return {
      method: 'calculated',
      edition: snow.edition as '7-16',
      roof_exposure: typed.exposure as 'fully',
      thermal: typed.thermal as 'heated',
      ...(rRoof ? { R_roof: rRoof } : {}),
      ventilated: typed.ventilated,
      surface: typed.roofSurface as 'other',
    };
  }
  return {
    method: 'entered',
    basis: snow.basis as 'ASD',
    by_engineer: snow.byEngineer,
    source: source(snow),
    roof: { v: decimal(typed.roofSnow) ?? '', u: 'psf' as const },
  };
}

/** The field a pointer into the command belongs to. */
export function hazardsPlace(pointer: string): string {
  const [, , kind = '', what = '', index = '', field = ''] = pointer.split('/');
  if (kind === 'roof_live') return 'roof-live';
  if (what === 'zones') return field ? `${field}-${index}` : 'zone-0';
  if (what === 'source') return index === 'date' ? `${kind}-date` : `${kind}-document`;
  if (what === 'roof') return 'roof-snow';
  if (what === 'R_roof') return 'r-roof';
  return what === 'why' ? `${kind}-why` : `${kind}-method-0`;
}
