// Numbers: what weather demands, what steel and screws bear. Knows no job, no person, no clock; every
// result carries its steps and their clauses. Start with wind/ or panel/; calculators.ts lists all.

export * from './units.js';
export * from './sources.js';
export * from './check.js';
export * from './input.js';
export * from './calculator.js';
export * from './calculators.js';
export { coverage } from './coverage.js';

export { windOnSurface, type WindSurface } from './wind/surface.js';
export type { WindSurfaceInput } from './wind/surface-input.js';
export {
  exposureCoefficient,
  velocityPressure,
  type VelocityPressure,
  type VelocityPressureInput,
} from './wind/velocity-pressure.js';
export { dimensionA, fastenerWindArea, panelWindArea } from './wind/areas.js';
export { ENCLOSURES, EXPOSURES, type Enclosure, type Exposure } from './wind/exposure.table.js';
export { ROOF_SHAPES, type RoofShape } from './wind/roof-figure.js';
export type { Part, ZonePressure } from './wind/zone-pressure.js';
export { parapetPressure, type ParapetPressure } from './wind/parapet.js';
export {
  zoneLayout,
  zoneLayoutNotes,
  zonesUnder,
  type LayoutInput,
  type ZoneUnder,
} from './wind/zone-layout.js';
export type { ZonePiece } from './wind/zone-piece.js';
export { areaOf, type Point, type Polygon } from './wind/plane-geometry.js';

export { readSnowRoof, type SnowQuestion } from './snow/read.js';
export { snowOnRoof } from './snow/snow-on-roof.js';
export {
  LARGER_READINGS,
  type DriftLoad,
  type SnowLoads,
  type SnowReadings,
  type SnowRoof,
} from './snow/snow-roof.js';
export { eaveIce, retentionDrag } from './snow/sliding.js';
export type {
  RiskCategory,
  RoofExposure,
  Terrain,
  ThermalCondition,
} from './snow/factors.table.js';
export type { SnowSurface } from './snow/slope-factor.js';

export {
  asdSnow,
  clauseOf,
  deadAndWind,
  governingDemand,
  panelDemand,
  type Combination,
  type DemandBothWays,
  type PanelDemand,
  type PanelLoads,
} from './combinations/combinations.js';
export {
  DEFLECTION_LIMITS,
  type DeflectionLimits,
} from './combinations/deflection-limits.table.js';
export { panelDeadLoad, roofLiveLoad, type RoofLiveLoad } from './combinations/roof-live-load.js';
export { ofHorizontal, ofSlope, type SlopeComponents } from './combinations/slope-components.js';

export {
  designThickness,
  GAUGE_TABLE_NAMES,
  panelWeight,
  sheetThickness,
  sheetWeight,
  type GaugeTableName,
  type SheetThickness,
} from './panel/gauge.js';
export {
  designStresses,
  E_STEEL,
  STEEL_GRADES,
  steelGrade,
  type DesignStresses,
  type SteelGrade,
} from './panel/steel.js';
export type { OutlinePoint } from './panel/corners.js';
export { outlineOf } from './panel/outline-input.js';
export { sheetShape, type SheetShape } from './panel/outline.js';
export { bendingStrength, type BendingStrength, type Sheet } from './panel/bending.js';
export { panelStrength, type Panel, type PanelStrength, type PanelWeb } from './panel/panel.js';
export {
  governing,
  panelChecks,
  spanLimits,
  strengthSteps,
  type PanelDemand as SpanDemand,
  type SpanLimit,
} from './panel/span-limits.js';
export { beamCoefficients, type BeamCoefficients } from './panel/beam.js';
export {
  gaugeStrength,
  loadTable,
  type LoadTableRequest,
  type LoadTableRow,
  type SpanLoad,
} from './panel/load-table.js';
export { STEEL_EDITIONS, type SteelEdition } from './panel/shear.js';

export {
  attachmentCheck,
  enteredCapacity,
  fastenerDemand,
  screwCapacity,
  spacingNeeded,
  woodCapacity,
  type Attachment,
  type FastenerCapacity,
  type HeadSheet,
} from './fasteners/attachment.js';
export {
  numberedScrewDiameter,
  SCREW_EDITIONS,
  screwStrength,
  type ScrewEdition,
  type ScrewJoint,
  type ScrewStrength,
} from './fasteners/screw.js';
export {
  WOOD_FASTENERS,
  woodWithdrawal,
  type WoodConnection,
  type WoodFastener,
} from './fasteners/wood-withdrawal.js';

export { freeLength, thermalMovement, type FixedLine } from './thermal/movement.js';
export { CLIP_DESIGN_RANGE_F, type RoofMetal } from './thermal/metals.table.js';
export { leastSlope, slopeAllowed } from './thermal/least-slope.js';
export { LEAST_SLOPE_CLAUSE, type PanelFamily } from './thermal/roof-code.table.js';

export {
  classCovering,
  dents,
  drivenVelocity,
  HAIL_RANGE,
  impactEnergy,
  terminalVelocity,
  type FootPounds,
} from './hail/hail.js';
export { HAIL_NAMES, IMPACT_CLASSES, type ImpactClass } from './hail/hail.table.js';

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
  labDistance,
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
export { FINISH_LIMITS, type FinishLimits } from './coating/finish.table.js';
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
export { SHEET_WEIGHT_PSF_PER_IN, sheetWeightOf } from './panel/sheet-weight.table.js';

export { takeOff, TAKE_OFF_CAUTION, type TakeOff, type TakeOffMeans } from './takeoff/take-off.js';
export { builtRoof, BUILT_ROOF, rectangularOpening, type BuiltRoof } from './takeoff/built-roof.js';
export {
  EDGE_KINDS,
  REQUEST as TAKE_OFF_REQUEST,
  STARTS,
  type EdgeKind,
  type PlaneRequest,
  type Start,
  type TakeOffRequest,
} from './takeoff/request.js';
export type { PlaneTakeOff } from './takeoff/plane-take-off.js';
export type { CutList, CutRun, CutSide, CutStrip } from './takeoff/cut-list.js';
export type { Bundle, PieceLine } from './takeoff/bundles.js';
export type { CutPattern, TrimLine } from './takeoff/trims.js';
export type { FastenerCount } from './takeoff/fastener-count.js';
export type { CountedLine } from './takeoff/materials.js';
export { slopeFactor } from './takeoff/plane.js';
export {
  cutStock,
  planHolds,
  searchPlan,
  type SolveStock,
  type StockPlan,
  type StockProblem,
} from './takeoff/cutting-stock.js';
