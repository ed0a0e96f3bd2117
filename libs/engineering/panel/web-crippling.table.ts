// Web crippling coefficients of multiple-web deck sections: AISI S100-16 Table G5-5, second-hand.
// The resistance factors of the two ETF rows are from memory. A null R/t limit was not read: the
// table's largest, 20, is taken.

export const CRIPPLING_CASES = [
  'fastened-EOF',
  'fastened-IOF',
  'fastened-ETF',
  'fastened-ITF',
  'unfastened-EOF',
  'unfastened-IOF',
  'unfastened-ETF',
  'unfastened-ITF',
] as const;

/** Fastened to support or not; end or interior; one or two flanges loaded. */
export type CripplingCase = (typeof CRIPPLING_CASES)[number];

export interface CripplingCoefficients {
  readonly C: number;
  readonly CR: number;
  readonly CN: number;
  readonly Ch: number;
  readonly Omega: number;
  readonly phi: number;
  readonly phiLimitStates: number;
  readonly mostROverT: number | null;
}

type Row = [number, number, number, number, number, number, number, number | null];

const row = ([C, CR, CN, Ch, Omega, phi, phiLimitStates, mostROverT]: Row) => ({
  C,
  CR,
  CN,
  Ch,
  Omega,
  phi,
  phiLimitStates,
  mostROverT,
});

export const CRIPPLING: Readonly<Record<CripplingCase, CripplingCoefficients>> = {
  'fastened-EOF': row([4, 0.04, 0.25, 0.025, 1.7, 0.9, 0.8, 20]),
  'fastened-IOF': row([8, 0.1, 0.17, 0.004, 1.75, 0.85, 0.75, null]),
  'fastened-ETF': row([9, 0.12, 0.14, 0.04, 1.8, 0.85, 0.7, 10]),
  'fastened-ITF': row([10, 0.11, 0.21, 0.02, 1.75, 0.85, 0.75, null]),
  'unfastened-EOF': row([3, 0.04, 0.29, 0.028, 2.45, 0.6, 0.5, 20]),
  'unfastened-IOF': row([8, 0.1, 0.17, 0.004, 1.75, 0.85, 0.75, null]),
  'unfastened-ETF': row([6, 0.16, 0.15, 0.05, 1.65, 0.9, 0.8, 5]),
  'unfastened-ITF': row([17, 0.1, 0.1, 0.046, 1.65, 0.9, 0.8, null]),
};

/** Limits of the whole table. */
export const CRIPPLING_LIMITS = {
  hOverT: 200,
  NOverT: 210,
  NOverH: 3,
  leastTheta: 45,
  mostTheta: 90,
  ROverT: 20,
} as const;
