// Spacings by zone in words.

import { amount } from '../parts/words.js';

export const attachmentLines = (
  zones: readonly {
    readonly zone: string;
    readonly spacing: { readonly v: string; readonly u: string };
  }[],
): string => zones.map(({ zone, spacing }) => `zone ${zone} every ${amount(spacing)}`).join('; ');
