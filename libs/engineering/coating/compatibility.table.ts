// What must not meet: metals and materials that attack one another by contact, run-off or fumes,
// each with its source. "Common practice" stands where no page was read.

import { cite, COMMON_PRACTICE, type Citation } from '../sources.js';

export type PanelMetal = 'galvanized' | 'al-zn' | 'zinc' | 'aluminum' | 'copper' | 'stainless';
export type Neighbor =
  | 'copper'
  | 'copper-treated-lumber'
  | 'condensate'
  | 'lead'
  | 'graphite'
  | 'wet-mortar'
  | 'cured-masonry'
  | 'flue-gas'
  | 'animal-confinement'
  | 'fertilizer'
  | 'salt'
  | 'wet-insulation';
export type Meeting = 'contact' | 'runoff' | 'air';

export interface Incompatibility {
  readonly metals: readonly PanelMetal[];
  readonly neighbor: Neighbor;
  readonly meetings: readonly Meeting[];
  readonly severity: 'refuse' | 'caution';
  readonly says: string;
  readonly cite: Citation;
}

const COATED_AND_LIGHT = ['galvanized', 'al-zn', 'zinc', 'aluminum'] as const;
const ALUMINUM_BEARING = ['al-zn', 'aluminum'] as const;

const row = (
  metals: readonly PanelMetal[],
  neighbor: Neighbor,
  meetings: readonly Meeting[],
  severity: 'refuse' | 'caution',
  says: string,
  source: Citation = COMMON_PRACTICE,
): Incompatibility => ({ metals, neighbor, meetings, severity, says, cite: source });

export const INCOMPATIBILITIES: readonly Incompatibility[] = [
  row(
    COATED_AND_LIGHT,
    'copper',
    ['contact', 'runoff'],
    'refuse',
    'Copper, and water that ran over copper, attacks aluminum and zinc: keep copper off and below.',
  ),
  row(
    COATED_AND_LIGHT,
    'condensate',
    ['runoff'],
    'refuse',
    'Condensate from copper coils carries copper: pipe it off the roof.',
  ),
  row(
    COATED_AND_LIGHT,
    'copper-treated-lumber',
    ['contact'],
    'refuse',
    'Lumber treated with copper needs a polymeric membrane between, and fasteners that bear it.',
    cite('mca-lumber', 'separation and fasteners'),
  ),
  row(
    COATED_AND_LIGHT,
    'lead',
    ['contact', 'runoff'],
    'refuse',
    'Lead attacks aluminum-zinc, zinc and aluminum: use another flashing.',
  ),
  row(
    COATED_AND_LIGHT,
    'graphite',
    ['contact'],
    'caution',
    'Graphite pencil marks etch the coating: mark with something else.',
  ),
  row(
    ALUMINUM_BEARING,
    'wet-mortar',
    ['contact'],
    'refuse',
    'Wet mortar, stucco and concrete attack coatings with aluminum: cure first, or protect.',
  ),
  row(
    COATED_AND_LIGHT,
    'flue-gas',
    ['air', 'runoff'],
    'caution',
    'Flue gas and strong acids and alkalis shorten the life: check the warranty text.',
  ),
  row(
    COATED_AND_LIGHT,
    'animal-confinement',
    ['contact', 'air'],
    'refuse',
    "Ammonia under a roof over animals: change the material or get the supplier's letter.",
  ),
  row(
    COATED_AND_LIGHT,
    'fertilizer',
    ['contact', 'air', 'runoff'],
    'refuse',
    "Fertilizer attacks the coating: change the material or get the supplier's letter.",
  ),
  row(
    COATED_AND_LIGHT,
    'salt',
    ['contact', 'runoff'],
    'caution',
    'Salt left standing on the sheet shortens the life: check the warranty text.',
  ),
  row(
    COATED_AND_LIGHT,
    'wet-insulation',
    ['contact'],
    'caution',
    'Wet insulation against the sheet corrodes it from below: keep it dry and ventilated.',
  ),
];
