// Requirement 16 at the token itself: what OpenSSL's authority gives is accepted, everything else is
// refused by name.

import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import * as asn1 from 'asn1js';
import * as pki from 'pkijs';
import { makeAuthority, OTHER_POLICY, POLICY, type Authority } from '../../tests/time-authority.js';
import { TimeStampFault } from './time-signature.js';
import { makeTimeRequest, openTimeStamp, type TimeStamp } from './time-stamp.js';
import { timeStampFault } from './verify-time-stamps.js';

const NOTE = 'records.example/roofers\n12\nAAAA\n\n— records.example/roofers BBBB\n';
let authority: Authority;
let request: Buffer;
let good: TimeStamp;

const ask = (note: string, policy: string) =>
  makeTimeRequest({ note, policy, nonce: randomBytes(8) });

beforeAll(() => {
  authority = makeAuthority();
  request = ask(NOTE, POLICY);
  good = { request, reply: authority.reply(request), trusted: authority.trusted };
});
afterAll(() => authority.remove());

const refusal = (stamp: Partial<TimeStamp>, note = NOTE): string => {
  try {
    return `accepted: ${JSON.stringify(openTimeStamp(note, { ...good, ...stamp }))}`;
  } catch (error) {
    expect(error).toBeInstanceOf(TimeStampFault);
    return (error as TimeStampFault).message;
  }
};

describe('requirement 16: those that are kept', () => {
  const kept = (sizes: readonly number[], stamps: readonly [number, Partial<TimeStamp>][]) =>
    timeStampFault(
      {
        checkpoints: async () =>
          sizes.map((size) => ({ size, root: Buffer.alloc(32), note: NOTE })),
        timeStamps: async (_, from = 0, most = Infinity) =>
          stamps
            .map(([size, stamp]) => ({ ...good, ...stamp, size }))
            .filter(({ size }) => size >= from)
            .slice(0, most),
      },
      'log',
    );

  test('each is held to its own checkpoint, also behind the first hundred', async () => {
    const many = Array.from({ length: 101 }, (_, i): [number, object] => [i + 1, {}]);
    const sizes = many.map(([size]) => size);
    expect(await kept([], [])).toBeUndefined();
    expect(await kept(sizes, many)).toBeUndefined();
    const reply = Buffer.from('<html>');
    expect(await kept(sizes, [...many.slice(0, 100), [101, { reply }]])).toBe(
      'Time-stamp of 101 entries: The time-stamp cannot be read.',
    );
  });

  test('one whose checkpoint is gone is a fault', async () => {
    expect(await kept([3], [[12, {}]])).toBe(
      'There is no checkpoint of 12 entries for its time-stamp',
    );
  });
});

describe('requirement 16: a time-stamp is checked against what was asked', () => {
  test('a good one is accepted, with the authority and the time', () => {
    const { at, by } = openTimeStamp(NOTE, good);
    expect(by).toBe('O=Noon Time, CN=tsa');
    expect(Math.abs(Date.parse(at) - Date.now())).toBeLessThan(60_000);
  });

  test('of another note', () => {
    const says = 'The time-stamp is of something else than this checkpoint.';
    expect(refusal({}, `${NOTE}— x yyyy\n`)).toBe(says);
    expect(refusal({ reply: authority.reply(ask('another', POLICY)) })).toBe(says);
  });

  test('with another nonce: a reply to an earlier request', () => {
    expect(refusal({ reply: authority.reply(ask(NOTE, POLICY)) })).toBe(
      'The time-stamp answers another request: its nonce differs.',
    );
  });

  test('under another policy', () => {
    const other = makeTimeRequest({ note: NOTE, policy: OTHER_POLICY, nonce: NONCE });
    const asked = makeTimeRequest({ note: NOTE, policy: POLICY, nonce: NONCE });
    expect(refusal({ request: asked, reply: authority.reply(other) })).toBe(
      `The time-stamp is under the policy ${OTHER_POLICY}, not accepted.`,
    );
  });

  test('a request the authority refuses', () => {
    const reply = authority.reply(ask(NOTE, '1.3.6.1.4.1.99999.3'));
    expect(refusal({ reply })).toMatch(/^The authority granted no time-stamp: status 2/);
  });
});

describe('requirement 16: the signature leads to the trusted certificate, or is refused', () => {
  test('another authority of the same name', () => {
    const another = makeAuthority();
    try {
      expect(refusal({ trusted: another.trusted })).toBe(
        'The certificate of the signature does not lead to a trusted one.',
      );
    } finally {
      another.remove();
    }
  });

  test('a certificate of the trusted root that is not for time-stamping', () => {
    const { result } = asn1.fromBER(authority.signedByAnother(good.reply));
    const reply = new pki.TimeStampResp({
      status: new pki.PKIStatusInfo({ status: 0 }),
      timeStampToken: new pki.ContentInfo({ schema: result }),
    });
    expect(refusal({ reply: Buffer.from(reply.toSchema().toBER()) })).toBe(
      'The certificate of the signature is not one for time-stamping alone.',
    );
  });

  test('a certificate that had run out', () => {
    const ended = makeAuthority({ ended: true });
    try {
      const stamp = { request, reply: ended.reply(request), trusted: ended.trusted };
      expect(refusal(stamp)).toMatch(/^The certificate of O=Noon Time, CN=tsa was not valid at /);
    } finally {
      ended.remove();
    }
  });

  test('a trusted file without a certificate', () => {
    expect(refusal({ trusted: 'nothing' })).toBe('There is no trusted certificate.');
  });
});

describe('requirement 16: altered bytes', () => {
  test('in the signature, in the content and in the attributes, each by name', () => {
    const altered = (at: number) => refusal({ reply: flipped(good.reply, at) });
    expect(altered(good.reply.length - 3)).toBe('The signature of the time-stamp does not fit.');
    const accuracy = good.reply.indexOf(Buffer.from('3003020101', 'hex'));
    expect(accuracy).toBeGreaterThan(0);
    expect(altered(accuracy + 4)).toBe('The time-stamp was altered: its digest does not fit.');
    const digest = good.reply.indexOf(Buffer.from('06092a864886f70d010904', 'hex'));
    expect(altered(digest + 17)).toBe('The time-stamp was altered: its digest does not fit.');
  });

  test('anywhere: refused, or of no meaning: the time and the authority stay the same', () => {
    const told = JSON.stringify(openTimeStamp(NOTE, good));
    const refused: string[] = [];
    for (let at = 0; at < good.reply.length; at += EVERY) {
      const says = refusal({ reply: flipped(good.reply, at) });
      if (says.startsWith('accepted')) expect(says).toBe(`accepted: ${told}`);
      else refused.push(says);
    }
    expect(refused.length).toBeGreaterThan((good.reply.length / EVERY) * 0.8);
    for (const reply of [Buffer.alloc(0), good.reply.subarray(0, -1), Buffer.from('<html>')])
      expect(refusal({ reply })).toBe('The time-stamp cannot be read.');
    expect(refusal({ reply: Buffer.concat([good.reply, Buffer.of(0)]) })).toBe(
      'The time-stamp cannot be read.',
    );
  });
});

/** Odd, so that every structure is met; all of them take a minute and a half. */
const EVERY = 29;
const NONCE = Buffer.from('0102030405060708', 'hex');
const flipped = (bytes: Buffer, at: number): Buffer => {
  const copy = Buffer.from(bytes);
  copy.writeUInt8(copy.readUInt8(at) ^ 1, at);
  return copy;
};
