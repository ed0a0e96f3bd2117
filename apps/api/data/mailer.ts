// E-mail by SMTP, only where it was configured; nothing pretends to have been sent.

import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { createTransport, type Transporter } from 'nodemailer';
import { Settings } from './settings.js';

export interface Mail {
  readonly to: string;
  readonly subject: string;
  readonly text: string;
}

/** A mail server that does not answer is given up on. */
const NEVER_HANG = { connectionTimeout: 10_000, greetingTimeout: 10_000, socketTimeout: 30_000 };

@Injectable()
export class Mailer implements OnApplicationShutdown {
  private readonly transport: Transporter | undefined;
  private readonly from: string;

  constructor({ mail }: Settings) {
    this.from = mail?.from ?? '';
    this.transport = mail
      ? createTransport(
          { url: mail.smtpUrl, ...NEVER_HANG },
          { disableFileAccess: true, disableUrlAccess: true },
        )
      : undefined;
  }

  get configured(): boolean {
    return this.transport !== undefined;
  }

  /** @throws Error where the mail server does not take it, or none is configured */
  async send(mail: Mail): Promise<void> {
    if (!this.transport) throw new Error('no mail server is configured');
    await this.transport.sendMail({ from: this.from, ...mail });
  }

  onApplicationShutdown(): void {
    this.transport?.close();
  }
}
