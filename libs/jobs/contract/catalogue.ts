// The catalogue as a record: profiles, what is made, load charts, tested assemblies, fasteners. An
// edition is published whole; a decision names the edition it was made under.

import { z } from 'zod';
import {
  AVAILABILITIES,
  COLOR_GROUPS,
  FAMILIES,
  METALLIC_COATINGS,
  METALS,
  PAINT_SYSTEMS,
  SEAMS,
  SUBSTRATES,
} from '#rules';
import { WARRANTY_KINDS } from './after-order.js';
import { amountIn, Day, Decimal, Digest, FileRef, Id, Name, Words } from './amounts.js';

const SourceDocument = z.strictObject({
  document: Words,
  edition: Name,
  date: Day,
  digest: Digest.optional(),
  invented: z.boolean().optional().describe('true for demonstration data'),
});

export const Profile = z.strictObject({
  id: Id,
  name: Name,
  family: z.enum(FAMILIES),
  fastening: z.enum(['concealed', 'exposed']),
  seam: z.enum(SEAMS),
  structural: z.boolean(),
  least_slope: amountIn('per-12'),
  /** Least slope of the supplier's warranty, where it asks more than the listing. */
  warranty_least_slope: amountIn('per-12').optional(),
  widths: z.array(amountIn('in')).min(1),
  rib_height: amountIn('in'),
  rib_pitch: amountIn('in').optional(),
  flat_width: amountIn('in'),
  striated: z.boolean(),
  longest_piece: amountIn('ft'),
  /** Sheet width that goes into one cover width: weight grows with it. */
  developed_width: amountIn('in').optional(),
  outline: z
    .array(
      z.strictObject({ x_in: z.number(), y_in: z.number(), r_inside_in: z.number().optional() }),
    )
    .optional(),
});
export type Profile = z.infer<typeof Profile>;

/** One combination that is made, and how it is had. What has no row is not made. */
export const MadeRow = z.strictObject({
  profile: Id,
  width: amountIn('in'),
  metal: z.enum(METALS),
  thickness: amountIn('in').describe('decimal base-metal thickness'),
  gauge: z.string().max(4).optional().describe('a label beside the thickness; steel only'),
  gauge_table: z.enum(['msg', 'galvanized', 'usc206']).optional(),
  grade: Name,
  metallic_coating: z.enum(METALLIC_COATINGS),
  paint_system: z.enum(PAINT_SYSTEMS),
  color_groups: z.array(z.enum(COLOR_GROUPS)).min(1),
  status: z.enum(AVAILABILITIES).exclude(['not-made']),
  lead_days: z.number().int().min(0).max(365),
  least_order: amountIn('squares').optional(),
  price: amountIn('usd/square'),
  upcharge: amountIn('usd/square').optional(),
});
export type MadeRow = z.infer<typeof MadeRow>;

export const LoadChart = z.strictObject({
  id: Id,
  profile: Id,
  width: amountIn('in'),
  metal: z.enum(METALS),
  grade: Name,
  thickness: amountIn('in'),
  gauge: z.string().max(4).optional(),
  spans: z.enum(['1', '2', '3+']),
  basis: z.enum(['ASD', 'LRFD']),
  deflection_limit: z.string().max(20).describe('"L/180", or "none"'),
  attachment_included: z.boolean(),
  interpolation: z.boolean().describe('whether the source permits it'),
  rows: z
    .array(
      z.strictObject({
        span: amountIn('in'),
        inward: amountIn('psf'),
        outward: amountIn('psf'),
        deflection: amountIn('psf').optional(),
      }),
    )
    .min(1),
  source: SourceDocument,
});
export type LoadChart = z.infer<typeof LoadChart>;

/** A tested assembly or product approval: good for what it names, and no further. */
export const TestedAssembly = z.strictObject({
  id: Id,
  number: Name,
  profile: Id,
  width: amountIn('in'),
  metal: z.enum(METALS),
  thickness: amountIn('in'),
  substrates: z.array(z.enum(SUBSTRATES)).min(1),
  fastener: Id,
  /** Spacing of clips or fasteners along the panel. */
  attachment_spacing: amountIn('in'),
  support_spacing: amountIn('in').optional(),
  deck_thickness: amountIn('in').optional().describe('least deck thickness tested'),
  outward: amountIn('psf'),
  inward: amountIn('psf').optional(),
  basis: z.enum(['ASD', 'ultimate']),
  safety_factor: Decimal.optional().describe('needed where the basis is ultimate'),
  standard: Name,
  /** UL 2218 class of exactly this assembly; it speaks of splits, not dents. */
  hail_class: z.number().int().min(1).max(4).optional(),
  expires: Day.optional(),
  source: SourceDocument,
});
export type TestedAssembly = z.infer<typeof TestedAssembly>;

export const Fastener = z.strictObject({
  id: Id,
  name: Name,
  kind: z.enum(['clip', 'screw']),
  clip_movement: z.enum(['fixed', 'floating']).optional(),
  metal: z.enum(['galvanized', 'stainless', 'aluminum', 'copper-alloy']),
  diameter: amountIn('in').optional(),
  washer_diameter: amountIn('in').optional(),
  thread_bite: amountIn('in').optional(),
  /** Allowable loads stated by the fastener's own test; where none, it is calculated. */
  tested: z
    .array(
      z.strictObject({
        into: z.enum(SUBSTRATES),
        least_thickness: amountIn('in').optional(),
        allowable: amountIn('lb'),
        source: SourceDocument,
      }),
    )
    .optional(),
});
export type Fastener = z.infer<typeof Fastener>;

/** The supplier's warranty terms that rules need before an order; the documents come with issue. */
export const CoatingTerm = z.strictObject({
  metal: z.enum(METALS),
  metallic_coating: z.enum(METALLIC_COATINGS),
  paint_system: z.enum(PAINT_SYSTEMS),
  color_group: z.enum(COLOR_GROUPS),
  finish_years: z.number().int().min(0).max(60),
  fade: z
    .strictObject({
      limit: Decimal,
      scale: z.enum(['Hunter', 'CIELAB', 'CIEDE2000', 'not named']),
      years: z.number().int(),
    })
    .optional(),
  chalk: z.strictObject({ least: Decimal, years: z.number().int() }).optional(),
  water_distance: amountIn('ft').optional(),
  document: Name,
});
export type CoatingTerm = z.infer<typeof CoatingTerm>;

/** Who stands behind warranty documents of a kind, where to write to, and the text of each as it came. */
export const Warrantor = z.strictObject({
  name: Name,
  address: Name.describe('where claims are mailed to'),
  documents: z
    .array(
      z.strictObject({
        kind: z.enum(WARRANTY_KINDS),
        version: Name,
        text: FileRef.optional(),
        registration_days: z
          .number()
          .int()
          .min(1)
          .max(730)
          .optional()
          .describe('after completion; none where none is asked for'),
        full_years: z
          .number()
          .int()
          .min(0)
          .max(60)
          .optional()
          .describe(
            'cover falls in a straight line after so many years; none where it never falls',
          ),
      }),
    )
    .max(20),
});
export type Warrantor = z.infer<typeof Warrantor>;

export const Catalogue = z.strictObject({
  edition: z.number().int().min(1),
  in_force_from: Day,
  summary: Words,
  invented: z.boolean().optional(),
  profiles: z.array(Profile),
  made: z.array(MadeRow),
  charts: z.array(LoadChart),
  assemblies: z.array(TestedAssembly),
  fasteners: z.array(Fastener),
  terms: z.array(CoatingTerm),
  warrantors: z.array(Warrantor).max(200).optional(),
});
export type Catalogue = z.infer<typeof Catalogue>;
