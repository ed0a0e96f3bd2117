// A small mail server of a test's own, on loopback.

import { createServer, type AddressInfo, type Socket } from 'node:net';
import type { MailSettings } from '../apps/api/data/settings.js';

export interface Mail {
  readonly to: string;
  readonly text: string;
}

export interface MailServer {
  readonly mails: Mail[];
  readonly settings: MailSettings;
  /** While set, every mail is refused. */
  refuses: boolean;
  close(): void;
}

export async function mailServer(): Promise<MailServer> {
  const mails: Mail[] = [];
  const server = createServer((socket) => receive(socket, mails, () => made.refuses));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const made: MailServer = {
    mails,
    settings: {
      smtpUrl: `smtp://127.0.0.1:${port}?ignoreTLS=true`,
      from: 'office@ridge.example',
    },
    refuses: false,
    close: () => server.close(),
  };
  return made;
}

/** As much of RFC 5321 as a sender needs. */
function receive(socket: Socket, mails: Mail[], refuses: () => boolean): void {
  let to = '';
  let text: string[] | undefined;
  let rest = '';
  socket.write('220 mail.example\r\n');
  socket.on('error', () => undefined);
  socket.on('data', (bytes) => {
    const lines = (rest + bytes.toString()).split('\r\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      if (text) {
        if (line !== '.') {
          text.push(line);
          continue;
        }
        mails.push({ to, text: text.join('\n') });
        text = undefined;
        socket.write('250 kept\r\n');
      } else if (line.startsWith('EHLO')) socket.write('250 mail.example\r\n');
      else if (line.startsWith('MAIL') && refuses()) socket.write('451 later\r\n');
      else if (line.startsWith('RCPT')) {
        to = /<(.*)>/.exec(line)?.[1] ?? '';
        socket.write('250 fine\r\n');
      } else if (line === 'DATA') {
        text = [];
        socket.write('354 go on\r\n');
      } else if (line === 'QUIT') socket.end('221 bye\r\n');
      else socket.write('250 fine\r\n');
    }
  });
}
