// The parts of a catalogue that come in as tables, and the columns of each.

export const PARTS = {
  charts: [
    'chart',
    'profile',
    'width_in',
    'metal',
    'grade',
    'gauge',
    'thickness_in',
    'spans',
    'basis',
    'deflection_limit',
    'attachment_included',
    'interpolation',
    'span_in',
    'inward_psf',
    'outward_psf',
    'deflection_psf',
    'document',
    'edition',
    'date',
  ],
  made: [
    'profile',
    'width_in',
    'metal',
    'thickness_in',
    'gauge',
    'gauge_table',
    'grade',
    'metallic_coating',
    'paint_system',
    'color_groups',
    'status',
    'lead_days',
    'least_order_squares',
    'price_usd',
    'upcharge_usd',
  ],
  assemblies: [
    'number',
    'profile',
    'width_in',
    'metal',
    'thickness_in',
    'substrates',
    'fastener',
    'attachment_spacing_in',
    'support_spacing_in',
    'deck_thickness_in',
    'outward_psf',
    'inward_psf',
    'basis',
    'safety_factor',
    'standard',
    'hail_class',
    'expires',
    'document',
    'edition',
    'date',
  ],
  prices: [
    'profile',
    'width_in',
    'metal',
    'thickness_in',
    'grade',
    'metallic_coating',
    'paint_system',
    'color_groups',
    'price_usd',
    'upcharge_usd',
    'lead_days',
  ],
} as const;
export type Part = keyof typeof PARTS;
export const PART_NAMES = Object.keys(PARTS) as readonly Part[];

const MAY_BE_EMPTY: Readonly<Record<Part, readonly string[]>> = {
  charts: ['gauge', 'deflection_psf'],
  made: ['gauge', 'gauge_table', 'least_order_squares', 'upcharge_usd'],
  assemblies: [
    'support_spacing_in',
    'deck_thickness_in',
    'inward_psf',
    'safety_factor',
    'hail_class',
    'expires',
  ],
  prices: ['upcharge_usd', 'lead_days'],
};
export const mayBeEmpty = (part: Part, column: string): boolean =>
  MAY_BE_EMPTY[part].includes(column);

/** A table as it stands in its file: the row numbers are those a person sees there. */
export interface Sheet {
  readonly part: Part;
  readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[];
}

export interface SheetFault {
  readonly sheet: string;
  readonly row: number;
  /** Empty where the whole row is meant. */
  readonly column: string;
  readonly message: string;
}

/** One row under its heading. */
export interface Line {
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
}
