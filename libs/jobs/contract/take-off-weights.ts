// Weights of a take-off as they are printed: each line to 0.1 lb, and a total that is the sum of its
// lines, so that whoever adds the column gets the total. An order's lines weigh the same.

import type { TakenPiece, TakeOffResult } from './take-off.js';

const tenths = (pounds: string): number => Math.round(Number(pounds) * 10);
const sumOf = (pounds: readonly string[]): string =>
  (pounds.reduce((sum, each) => sum + tenths(each), 0) / 10).toFixed(1);

export const pieceArea = (
  { count, length_in }: TakenPiece,
  { coverage_in }: TakeOffResult['panel'],
): number => (count * Number(length_in) * Number(coverage_in)) / 144;

/** All pieces of one length together. */
export const pieceWeight = (piece: TakenPiece, panel: TakeOffResult['panel']): string =>
  (pieceArea(piece, panel) * Number(panel.weight_psf)).toFixed(1);

export const panelsWeight = ({ pieces, panel }: Pick<TakeOffResult, 'pieces' | 'panel'>): string =>
  sumOf(pieces.map((each) => pieceWeight(each, panel)));

export const trimWeight = ({ weight_lb }: TakeOffResult['trims'][number]): string =>
  Number(weight_lb).toFixed(1);

export const trimsWeight = ({ trims }: Pick<TakeOffResult, 'trims'>): string =>
  sumOf(trims.filter(({ stocks }) => stocks > 0).map(trimWeight));
