// A time-stamp of a checkpoint by RFC 3161: the request for one, and whether a reply is an answer to it.

import { createHash } from 'node:crypto';
import * as asn1 from 'asn1js';
import * as pki from 'pkijs';
import { signedBy, TimeStampFault } from './time-signature.js';

/** What is kept beside a checkpoint, as it was sent and received. */
export interface TimeStamp {
  /** TimeStampReq, DER. */
  readonly request: Buffer;
  /** TimeStampResp, DER. */
  readonly reply: Buffer;
  /** The certificates that were trusted then, PEM. */
  readonly trusted: string;
}

export interface Stamped {
  /** The note existed before this moment, RFC 3339. */
  readonly at: string;
  /** The subject of the authority's certificate. */
  readonly by: string;
}

export interface TimeQuestion {
  readonly note: string;
  /** Object identifier of the policy that is accepted. */
  readonly policy: string;
  readonly nonce: Buffer;
}

const NONCE_BYTES = 8;
const GRANTED = [0, 1];

/** Asks under one policy, with the certificate in the reply. */
export function makeTimeRequest({ note, policy, nonce }: TimeQuestion): Buffer {
  if (nonce.length !== NONCE_BYTES) throw new RangeError(`a nonce has ${NONCE_BYTES} bytes`);
  const positive = Buffer.concat([Buffer.of(1), nonce]);
  const request = new pki.TimeStampReq({
    version: 1,
    messageImprint: new pki.MessageImprint({
      hashAlgorithm: new pki.AlgorithmIdentifier({
        algorithmId: pki.id_sha256,
        algorithmParams: new asn1.Null(),
      }),
      hashedMessage: new asn1.OctetString({ valueHex: digestOf(note) }),
    }),
    reqPolicy: policy,
    nonce: new asn1.Integer({ valueHex: positive }),
    certReq: true,
  });
  return Buffer.from(request.toSchema().toBER());
}

/**
 * Who stamped the note, and when.
 * @throws TimeStampFault saying what is wrong
 */
export function openTimeStamp(note: string, { request, reply, trusted }: TimeStamp): Stamped {
  try {
    return open(note, read(pki.TimeStampReq, request), read(pki.TimeStampResp, reply), trusted);
  } catch (error) {
    if (error instanceof TimeStampFault) throw error;
    throw new TimeStampFault('The time-stamp cannot be read.', { cause: error });
  }
}

function open(
  note: string,
  request: pki.TimeStampReq,
  { status, timeStampToken }: pki.TimeStampResp,
  trusted: string,
): Stamped {
  if (!GRANTED.includes(status.status) || !timeStampToken) {
    const words = (status.statusStrings ?? []).map((each) => each.getValue()).join(' ');
    throw new TimeStampFault(
      `The authority granted no time-stamp: status ${status.status}${words && `, "${words}"`}.`,
    );
  }
  if (timeStampToken.contentType !== pki.id_ContentType_SignedData) {
    throw new TimeStampFault('The time-stamp is not signed data.');
  }
  const signed = new pki.SignedData({ schema: timeStampToken.content });
  const { eContentType, eContent } = signed.encapContentInfo;
  if (eContentType !== pki.id_eContentType_TSTInfo || !eContent) {
    throw new TimeStampFault('What is signed is not the content of a time-stamp.');
  }
  const content = Buffer.from(eContent.getValue());
  const stamp = read(pki.TSTInfo, content);
  checkAnswer(note, request, stamp);
  const by = signedBy({ signed, content, at: stamp.genTime, trusted });
  return { at: stamp.genTime.toISOString(), by };
}

function checkAnswer(note: string, request: pki.TimeStampReq, stamp: pki.TSTInfo): void {
  if (stamp.version !== 1) throw new TimeStampFault('The time-stamp is of an unknown version.');
  for (const imprint of [request.messageImprint, stamp.messageImprint]) {
    const sha256 = imprint.hashAlgorithm.algorithmId === pki.id_sha256;
    if (!sha256 || !Buffer.from(imprint.hashedMessage.getValue()).equals(digestOf(note))) {
      throw new TimeStampFault('The time-stamp is of something else than this checkpoint.');
    }
  }
  if (!request.nonce || !stamp.nonce || hex(request.nonce) !== hex(stamp.nonce)) {
    throw new TimeStampFault('The time-stamp answers another request: its nonce differs.');
  }
  if (!request.reqPolicy || stamp.policy !== request.reqPolicy) {
    throw new TimeStampFault(`The time-stamp is under the policy ${stamp.policy}, not accepted.`);
  }
}

const digestOf = (note: string): Buffer => createHash('sha256').update(note).digest();
const hex = (number: asn1.Integer): string =>
  Buffer.from(number.valueBlock.valueHexView)
    .toString('hex')
    .replace(/^(00)+/, '');

/** The whole of the bytes is one value, and nothing follows it. */
function read<T>(Type: new (parameters: { schema: unknown }) => T, bytes: Buffer): T {
  const { offset, result } = asn1.fromBER(bytes);
  if (offset !== bytes.length) throw new TimeStampFault('The time-stamp cannot be read.');
  return new Type({ schema: result });
}
