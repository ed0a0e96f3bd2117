// Numbers: what weather demands, what steel and screws bear. Knows no job, no person, no clock; every
// result carries its steps and their clauses. Start with wind/ or panel/; calculators.ts lists all.

export * from './units.js';
export * from './sources.js';
export * from './check.js';
export * from './input.js';
export * from './calculator.js';
export * from './calculators.js';
export { coverage, type Covered } from './coverage.js';

export {
  cielabToLch,
  cielabToXyz,
  cielabWhite,
  hunterCoefficients,
  hunterScale,
  hunterToXyz,
  lchToCielab,
  xyzToCielab,
  xyzToHunter,
  type HunterScale,
  type Illuminant,
  type Lab,
  type Lch,
  type Observer,
  type Viewing,
  type White,
  type Xyz,
} from './coating/color-space.js';
export {
  ciede2000,
  distance,
  type Ciede2000,
  type ColorScale,
} from './coating/color-difference.js';
export { colorDifference, inScale, type ColorReading } from './coating/color-reading.js';
export {
  alZnThickness,
  coatingMass,
  G_PER_M2_IN_OZ_PER_FT2,
  zincThicknessFromGrams,
  zincThicknessFromOunces,
  type CoatingMass,
} from './coating/coating-mass.js';
export { COATING_DESIGNATIONS, type CoatingDesignation } from './coating/coating-mass.table.js';
export {
  CLIMATE_RANGE,
  corrosivity,
  corrosivityBand,
  firstYearSteel,
  firstYearZinc,
  lossAfter,
  timeFactor,
  type Climate,
  type FirstYearLoss,
} from './coating/corrosion.js';
export {
  CATEGORIES,
  TIME_EXPONENTS,
  type Corrosivity,
  type Exponent,
  type RateScale,
  type WeatheringMetal,
} from './coating/corrosion.table.js';
export {
  upperZincRate,
  zincLifeRange,
  zincLifeYears,
  type ZincExponent,
} from './coating/zinc-life.js';
export {
  FILM_BUILD_LEAST_MIL,
  FINISH_LIMITS,
  type FinishLimits,
  type FinishSpecification,
} from './coating/finish.table.js';
export {
  chalkAgainstTerm,
  fadeAgainstTerm,
  type ChalkRating,
  type ColorChange,
  type FinishTerm,
  type TermOutcome,
} from './coating/finish.js';
export {
  fastenerSuits,
  incompatibilities,
  type FastenerFinding,
  type FastenerMetal,
  type Incompatibility,
  type Meeting,
  type Neighbor,
  type PanelMetal,
} from './coating/compatibility.js';
export {
  disclosureRuleApplies,
  titleRequired,
  unmetFullWarrantyTests,
  warrantyTitle,
  type FullWarrantyTests,
} from './coating/warranty-title.js';
