// Local and distortional buckling by the direct strength method, from entered elastic buckling
// moments: an independent look at a section whose buckling analysis exists.

import { kipInches, type KipInches } from '../units.js';

export interface DirectStrength {
  readonly Mnl: KipInches;
  readonly Mnd: KipInches;
  readonly Mn: KipInches;
}

/**
 * M_nl = (1 - 0.15 (M_crl/M_y)^0.4)(M_crl/M_y)^0.4 M_y above lambda 0.776 (AISI S100-16 F3.2.1) and
 * M_nd = (1 - 0.22 (M_crd/M_y)^0.5)(M_crd/M_y)^0.5 M_y above lambda 0.673 (F4.1); M_n the lesser.
 * kip-in; for a member held against lateral-torsional buckling. Left out: inelastic reserve.
 */
export function directStrength(My: KipInches, Mcrl: KipInches, Mcrd: KipInches): DirectStrength {
  const local = (Mcrl / My) ** 0.4;
  const distortional = Math.sqrt(Mcrd / My);
  const Mnl = Math.sqrt(My / Mcrl) <= 0.776 ? My : (1 - 0.15 * local) * local * My;
  const Mnd = 1 / distortional <= 0.673 ? My : (1 - 0.22 * distortional) * distortional * My;
  return { Mnl: kipInches(Mnl), Mnd: kipInches(Mnd), Mn: kipInches(Math.min(Mnl, Mnd)) };
}
