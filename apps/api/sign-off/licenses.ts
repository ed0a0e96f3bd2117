// The register of licenses: what is known of an engineer's license besides what its holder states. A
// sign-off that stands is not touched by what the register learns later.

import { Injectable } from '@nestjs/common';
import type { Command, RefusalView } from '#jobs';
import { Companies } from '../data/companies.js';
import type { Acting } from '../http/signed-in.js';

@Injectable()
export class Licenses {
  constructor(private readonly companies: Companies) {}

  /** Why this license may not sign this, by what the register says; nothing where it is not in it. */
  async refusals(asking: Acting, command: Command): Promise<readonly RefusalView[]> {
    if (
      command.type !== 'answer-sign-off' &&
      command.type !== 'reaffirm-sign-off' &&
      command.type !== 'record-engineer-design'
    )
      return [];
    const { license } = command;
    const { prisma } = this.companies.of(asking.company.id);
    const known = await prisma.license.findFirst({
      where: { jurisdiction: license.jurisdiction, number: license.number },
    });
    if (!known) return [];
    const day =
      command.type === 'record-engineer-design'
        ? command.dated
        : new Date().toISOString().slice(0, 10);
    const expires = known.expires.toISOString().slice(0, 10);
    const signsOwn = command.type !== 'record-engineer-design';
    return [
      ...(known.standing === 'active'
        ? []
        : [
            refusal(
              'MOVE-14',
              `License ${license.number} is ${known.standing} by the register of licenses.`,
            ),
          ]),
      ...(expires < day
        ? [
            refusal(
              'MOVE-14',
              `License ${license.number} expired on ${expires} by the register of licenses, before ${day}.`,
            ),
          ]
        : []),
      ...(signsOwn && known.person !== null && known.person !== asking.person.id
        ? [
            refusal(
              'MOVE-15',
              `License ${license.number} is another person's by the register of licenses.`,
            ),
          ]
        : []),
    ];
  }
}

const refusal = (code: 'MOVE-14' | 'MOVE-15', words: string): RefusalView => ({
  kind: code === 'MOVE-15' ? 'forbidden' : 'refused-by-rules',
  code,
  words,
  cites: [],
  figures: [],
  pointer: '/license',
});
