// The register of licenses of the large demonstration: of those who left one lapsed and one is inactive,
// of those who are there one runs out soon. Invented.

import { Companies } from '../../api/data/companies.js';
import type { Service } from '../../api/service.js';
import { LAST_DAY, dayPlus } from './dice.js';
import { isThere, LARGE, onDuty, STAFF } from './staff.js';

export async function fillLicenses(service: Service): Promise<void> {
  const engineers = STAFF.filter(({ post }) => post === 'engineer');
  const soon = engineers.findLast((each) => isThere(each, LAST_DAY));
  await service
    .get(Companies)
    .of(LARGE.company)
    .prisma.license.createMany({
      data: engineers.map((each) => ({
        companyId: LARGE.company,
        id: each.id,
        person: each.id,
        name: `${each.name} (invented)`,
        number: `EX-${each.id.slice(-4)}`,
        jurisdiction: 'OH',
        expires: new Date(
          isThere(each, LAST_DAY) ? dayPlus(LAST_DAY, each === soon ? 21 : 400) : each.to,
        ),
        standing: isThere(each, LAST_DAY) ? 'active' : 'inactive',
        changedBy: onDuty('standards', LAST_DAY, 0).id,
      })),
      skipDuplicates: true,
    });
}
