// Coating designations: the least mass by triple-spot and single-spot test. Zinc: ASTM A653/A653M
// -15, Table 1 (also -04a; the table's page was read). 55 % Al-Zn: ASTM A792/A792M, Table 1 (the
// table's page was read). G and AZ in oz/ft2, Z and AZM in g/m2. Left out: G01 and Z001, which
// promise no minimum, zinc-iron alloy coatings, and suffix forms such as 60G (one side, g/m2).

export type CoatingUnit = 'oz/ft2' | 'g/m2';
export type CoatingMetal = 'zinc' | '55 % Al-Zn';

export interface CoatingRow {
  readonly metal: CoatingMetal;
  readonly unit: CoatingUnit;
  /** Triple-spot test, both sides together. */
  readonly total: number;
  /** Triple-spot test, one side. A792 tabulates none: 0.40 of the single-spot total. */
  readonly oneSide: number;
  /** Single-spot test, both sides together. */
  readonly singleSpot: number;
}

const zinc = (
  unit: CoatingUnit,
  total: number,
  oneSide: number,
  singleSpot: number,
): CoatingRow => ({
  metal: 'zinc',
  unit,
  total,
  oneSide,
  singleSpot,
});
const alZn = (unit: CoatingUnit, total: number, singleSpot: number): CoatingRow => ({
  metal: '55 % Al-Zn',
  unit,
  total,
  oneSide: 0.4 * singleSpot,
  singleSpot,
});

export const COATING_MASS = {
  G30: zinc('oz/ft2', 0.3, 0.1, 0.25),
  G40: zinc('oz/ft2', 0.4, 0.12, 0.3),
  G60: zinc('oz/ft2', 0.6, 0.2, 0.5),
  G90: zinc('oz/ft2', 0.9, 0.32, 0.8),
  G100: zinc('oz/ft2', 1.0, 0.36, 0.9),
  G115: zinc('oz/ft2', 1.15, 0.4, 1.0),
  G140: zinc('oz/ft2', 1.4, 0.48, 1.2),
  G165: zinc('oz/ft2', 1.65, 0.56, 1.4),
  G185: zinc('oz/ft2', 1.85, 0.64, 1.6),
  G210: zinc('oz/ft2', 2.1, 0.72, 1.8),
  G235: zinc('oz/ft2', 2.35, 0.8, 2.0),
  G300: zinc('oz/ft2', 3.0, 1.04, 2.6),
  G360: zinc('oz/ft2', 3.6, 1.28, 3.2),
  Z90: zinc('g/m2', 90, 30, 75),
  Z120: zinc('g/m2', 120, 36, 90),
  Z180: zinc('g/m2', 180, 60, 150),
  Z275: zinc('g/m2', 275, 94, 235),
  Z305: zinc('g/m2', 305, 110, 275),
  Z350: zinc('g/m2', 350, 120, 300),
  Z450: zinc('g/m2', 450, 154, 385),
  Z500: zinc('g/m2', 500, 170, 425),
  Z550: zinc('g/m2', 550, 190, 475),
  Z600: zinc('g/m2', 600, 204, 510),
  Z700: zinc('g/m2', 700, 238, 595),
  Z900: zinc('g/m2', 900, 316, 790),
  Z1100: zinc('g/m2', 1100, 390, 975),
  AZ50: alZn('oz/ft2', 0.5, 0.43),
  AZ55: alZn('oz/ft2', 0.55, 0.5),
  AZ60: alZn('oz/ft2', 0.6, 0.52),
  AZM150: alZn('g/m2', 150, 130),
  AZM165: alZn('g/m2', 165, 150),
  AZM180: alZn('g/m2', 180, 155),
} as const satisfies Record<string, CoatingRow>;

export type CoatingDesignation = keyof typeof COATING_MASS;
export const COATING_DESIGNATIONS = Object.keys(COATING_MASS) as readonly CoatingDesignation[];
