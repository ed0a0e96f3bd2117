// The parts of a catalogue that come in as tables, and the columns of each.

export const PARTS = {
  profiles: [
    'profile',
    'name',
    'family',
    'fastening',
    'seam',
    'structural',
    'least_slope_per_12',
    'warranty_least_slope_per_12',
    'widths_in',
    'rib_height_in',
    'rib_pitch_in',
    'flat_width_in',
    'striated',
    'longest_piece_ft',
    'developed_width_in',
    'outline',
  ],
  fasteners: [
    'fastener',
    'name',
    'kind',
    'clip_movement',
    'metal',
    'diameter_in',
    'washer_diameter_in',
    'thread_bite_in',
  ],
  'fastener-tests': [
    'fastener',
    'into',
    'least_thickness_in',
    'allowable_lb',
    'document',
    'edition',
    'date',
  ],
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
  terms: [
    'metal',
    'metallic_coating',
    'paint_system',
    'color_group',
    'finish_years',
    'fade_limit',
    'fade_scale',
    'fade_years',
    'chalk_least',
    'chalk_years',
    'water_distance_ft',
    'document',
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

/** What a part holds, as pages name it. */
export const PART_WORDS: Readonly<Record<Part, string>> = {
  profiles: 'Profiles: minimum slopes, widths, ribs, outline',
  fasteners: 'Fasteners and clips',
  'fastener-tests': 'Tested loads of fasteners',
  charts: 'Load charts',
  made: 'What is made: metals, thicknesses, paint, colors, prices',
  assemblies: 'Tested assemblies and approvals',
  terms: 'Colors with their finish terms',
  prices: 'A price list for what is made',
};

const MAY_BE_EMPTY: Readonly<Record<Part, readonly string[]>> = {
  profiles: ['warranty_least_slope_per_12', 'rib_pitch_in', 'developed_width_in', 'outline'],
  fasteners: ['clip_movement', 'diameter_in', 'washer_diameter_in', 'thread_bite_in'],
  'fastener-tests': ['least_thickness_in'],
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
  terms: [
    'fade_limit',
    'fade_scale',
    'fade_years',
    'chalk_least',
    'chalk_years',
    'water_distance_ft',
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
