// A time-stamping authority for tests, of OpenSSL and not of our own code: certificates, replies by
// RFC 3161, and an HTTP server that gives them. Its names are invented.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const POLICY = '1.3.6.1.4.1.99999.1';
export const OTHER_POLICY = '1.3.6.1.4.1.99999.2';

export interface Authority {
  /** PEM, as a service is given it. */
  readonly trusted: string;
  reply(request: Buffer): Buffer;
  /** The same answer, signed with a certificate that is not one for time-stamping, as DER of a token. */
  signedByAnother(reply: Buffer): Buffer;
  remove(): void;
}

const EXTENSIONS = `[tsa]
basicConstraints = critical, CA:false
extendedKeyUsage = critical, timeStamping
[plain]
basicConstraints = critical, CA:false
extendedKeyUsage = critical, codeSigning
[ts]
serial = serial
default_policy = ${POLICY}
other_policies = ${OTHER_POLICY}
digests = sha256
signer_digest = sha256
accuracy = secs:1
ess_cert_id_alg = sha256
`;

/** `ended`: its certificate has run out before the tokens it signs. */
export function makeAuthority({ ended = false } = {}): Authority {
  const folder = mkdtempSync(path.join(tmpdir(), 'gauge-authority-'));
  const at = (name: string) => path.join(folder, name);
  const openssl = (...args: string[]) =>
    execFileSync('openssl', args, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  writeFileSync(at('openssl.conf'), EXTENSIONS);
  writeFileSync(at('serial'), '01\n');
  const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes'];
  const subject = (name: string) => ['-subj', `/O=Noon Time/CN=${name}`];
  openssl('req', '-x509', ...key, ...subject('Root'), '-keyout', 'ca.key', '-out', 'ca.pem');
  for (const name of ['tsa', 'plain']) {
    openssl('req', ...key, ...subject(name), '-keyout', `${name}.key`, '-out', `${name}.csr`);
    const sign = ['x509', '-req', '-in', `${name}.csr`, '-CA', 'ca.pem', '-CAkey', 'ca.key'];
    const days = ['-days', ended ? '-1' : '30', '-CAcreateserial'];
    const extensions = ['-extfile', 'openssl.conf', '-extensions', name];
    openssl(...sign, ...days, ...extensions, '-out', `${name}.pem`);
  }
  return {
    trusted: readFileSync(at('ca.pem'), 'utf8'),
    reply: (request) => {
      writeFileSync(at('request.tsq'), request);
      const signer = ['-signer', 'tsa.pem', '-inkey', 'tsa.key'];
      const config = ['-config', 'openssl.conf', '-section', 'ts'];
      openssl(
        'ts',
        '-reply',
        ...config,
        ...signer,
        '-queryfile',
        'request.tsq',
        '-out',
        'reply.tsr',
      );
      return readFileSync(at('reply.tsr'));
    },
    signedByAnother: (reply) => {
      writeFileSync(at('reply.tsr'), reply);
      openssl('ts', '-reply', '-in', 'reply.tsr', '-token_out', '-out', 'token.der');
      openssl(
        ...['cms', '-verify', '-noverify', '-inform', 'DER', '-in', 'token.der', '-binary'],
        ...['-out', 'content.der'],
      );
      openssl(
        ...['cms', '-sign', '-nodetach', '-binary', '-cades', '-md', 'sha256', '-outform', 'DER'],
        ...['-econtent_type', '1.2.840.113549.1.9.16.1.4', '-in', 'content.der'],
        ...['-signer', 'plain.pem', '-inkey', 'plain.key', '-out', 'other.der'],
      );
      return readFileSync(at('other.der'));
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

export interface AuthorityServer {
  readonly url: string;
  /** How often it was asked. */
  asked(): number;
  /** Ends every connection, answered or not. */
  drop(): void;
  stop(): Promise<void>;
}

/** Answers as told: with bytes, or never. */
export async function serveAuthority(
  answer: (request: Buffer) => Buffer | undefined,
  port = 0,
): Promise<AuthorityServer> {
  let asked = 0;
  const server: Server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      asked++;
      const bytes = answer(Buffer.concat(parts));
      if (!bytes) return;
      response.setHeader('Content-Type', 'application/timestamp-reply');
      response.end(bytes);
    });
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    asked: () => asked,
    drop: () => server.closeAllConnections(),
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
