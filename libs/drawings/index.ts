// Drawings of what the engineering found: one function each for page and paper. They know facts as
// plain numbers and words, and nothing of jobs, rules or loads.

export { forPrint, type Drawing, type Point } from './svg.js';
export { feetInches } from './feet-inches.js';
export { planeDrawing, type PlaneTaken } from './plane-drawing.js';
export { zonePlan, type ZonePlanFacts, type ZonePressures } from './zone-plan.js';
export { loadAgainstSpan, type LoadAgainstSpanFacts } from './load-against-span.js';
export { longestSpan, type GaugeLine } from './span-reading.js';
export {
  chartDifference,
  type ChartDifferenceFacts,
  type ComparedGauge,
} from './chart-difference.js';
export {
  gaugeComparison,
  type GaugeComparisonFacts,
  type GaugeOption,
} from './gauge-comparison.js';
export { momentWords, timeline, type TimelineDecision, type TimelineFacts } from './timeline.js';
export { cutList, type CutListFacts, type Strip } from './cut-list.js';
