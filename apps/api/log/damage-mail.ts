// Tells a company's administrators by e-mail that its record does not hold, where mail is set up.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';
import { Mailer } from '../data/mailer.js';
import { Log } from '../http/log.js';

@Injectable()
export class DamageMail {
  constructor(
    private readonly companies: Companies,
    private readonly mailer: Mailer,
    private readonly log: Log,
  ) {}

  /** What cannot be sent is logged: the pages show the alarm in any case. */
  async send(
    company: string,
    fault: { readonly pos: number | null; readonly says: string },
  ): Promise<void> {
    if (!this.mailer.configured) return;
    const where = fault.pos === null ? '' : `First bad position: ${fault.pos}.\n`;
    const people = await this.companies
      .of(company)
      .prisma.person.findMany({ where: { active: true, roles: { has: 'administrator' } } });
    for (const { email } of people) {
      await this.mailer
        .send({
          to: email,
          subject: 'Alarm: the record does not hold',
          text:
            `The verification of the whole record found that it was altered or is damaged.\n` +
            `${where}What was found: ${fault.says}.\n\n` +
            'Let nobody restore or repair the database before it was copied. The page Admin, Health ' +
            'of the service, says more.',
        })
        .catch((err: unknown) => this.log.error({ company, err }, 'the alarm was not mailed'));
    }
  }
}
