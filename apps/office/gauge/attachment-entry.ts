// What is typed for the attachment by zone, its faults, and the command's attachment.

import type { Attachment, Catalogue, SurfaceView } from '#jobs/contract';
import type { FieldErrors } from '../parts/fields.js';
import { decimal } from '../stages/hazards-entry.js';

export interface AttachmentTyped {
  readonly fastener: string;
  readonly zones: readonly {
    readonly zone: string;
    readonly spacing: string;
    readonly rows: string;
  }[];
}

export function attachmentTyped(
  surface: SurfaceView,
  fasteners: Catalogue['fasteners'],
): AttachmentTyped {
  const before = surface.stages.gauge.content?.attachment;
  const names = [
    ...new Set(surface.stages.hazards.content?.wind.zones.map(({ zone }) => zone) ?? []),
  ];
  const zones = (names.length > 0 ? names : ['all']).map((zone) => {
    const had = before?.zones.find((each) => each.zone === zone);
    return { zone, spacing: had?.spacing.v ?? '', rows: had?.rows?.v ?? '' };
  });
  return {
    fastener: before?.fastener ?? (fasteners.length === 1 ? (fasteners[0]?.id ?? '') : ''),
    zones,
  };
}

export const gaugeFaults = ({ fastener, zones }: AttachmentTyped): FieldErrors => [
  ...(fastener ? [] : [{ field: 'fastener', message: 'Choose the fastener' }]),
  ...zones.flatMap(({ zone, spacing, rows }, i) => [
    ...(positive(spacing)
      ? []
      : [{ field: `spacing-${i}`, message: `Zone ${zone}: enter the spacing in inches, like 24` }]),
    ...(rows.trim() === '' || positive(rows)
      ? []
      : [
          {
            field: `rows-${i}`,
            message: `Zone ${zone}: enter the spacing of rows in inches, or leave it empty`,
          },
        ]),
  ]),
];

const positive = (text: string): boolean => Number(decimal(text) ?? 0) > 0;

export const attachmentOf = ({ fastener, zones }: AttachmentTyped): Attachment => ({
  fastener,
  zones: zones.map(({ zone, spacing, rows }) => ({
    zone,
    spacing: { v: decimal(spacing) ?? '', u: 'in' },
    ...(rows.trim() ? { rows: { v: decimal(rows) ?? '', u: 'in' as const } } : {}),
  })),
});

export function gaugePlace(pointer: string): string {
  const [, first = '', second = '', index = '', field = ''] = pointer.split('/');
  if (first === 'attachment')
    return second === 'zones' ? `${field || 'spacing'}-${index || 0}` : 'fastener';
  return first === 'why' ? 'why' : '';
}
