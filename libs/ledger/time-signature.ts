// The signature of a time-stamp: over its signed attributes, by a certificate made for time-stamping
// that leads to a trusted one (RFC 3161, 2.3 and 2.4.2; RFC 5652, 5.4; RFC 5035).

import { createHash, verify, X509Certificate } from 'node:crypto';
import type * as asn1 from 'asn1js';
import * as pki from 'pkijs';

/** Named apart from what the parser throws of itself. */
export class TimeStampFault extends Error {}

export interface SignedTime {
  readonly signed: pki.SignedData;
  /** What the message digest is of. */
  readonly content: Buffer;
  readonly at: Date;
  readonly trusted: string;
}

const CONTENT_TYPE = '1.2.840.113549.1.9.3';
const MESSAGE_DIGEST = '1.2.840.113549.1.9.4';
const SIGNING_CERTIFICATE = '1.2.840.113549.1.9.16.2.12';
const SIGNING_CERTIFICATE_V2 = '1.2.840.113549.1.9.16.2.47';
const TIME_STAMPING = '1.3.6.1.5.5.7.3.8';
const LONGEST_CHAIN = 8;
const HASHES: Readonly<Record<string, string>> = {
  [pki.id_sha256]: 'sha256',
  [pki.id_sha384]: 'sha384',
  [pki.id_sha512]: 'sha512',
};
/** The hash of each kind of signature; the signer's own where the kind names none. */
const SIGNATURES: Readonly<Record<string, string | undefined>> = {
  '1.2.840.113549.1.1.1': undefined,
  '1.2.840.113549.1.1.11': 'sha256',
  '1.2.840.113549.1.1.12': 'sha384',
  '1.2.840.113549.1.1.13': 'sha512',
  '1.2.840.10045.4.3.2': 'sha256',
  '1.2.840.10045.4.3.3': 'sha384',
  '1.2.840.10045.4.3.4': 'sha512',
};

/**
 * The subject of the certificate that signed.
 * @throws TimeStampFault saying what is wrong
 */
export function signedBy({ signed, content, at, trusted }: SignedTime): string {
  const [signer, another] = signed.signerInfos;
  if (!signer || another) throw new TimeStampFault('A time-stamp has one signature.');
  const inside = (signed.certificates ?? []).filter((each) => each instanceof pki.Certificate);
  const found = inside.find((each) => isOf(signer, each));
  if (!found)
    throw new TimeStampFault('The certificate of the signature is not in the time-stamp.');
  const certificate = opened(found);
  checkAttributes(signer, content, certificate);
  checkSignature(signer, certificate);
  checkPurpose(found);
  checkChain(certificate, inside.map(opened), anchors(trusted), at);
  return certificate.subject.split('\n').join(', ');
}

function isOf({ sid }: pki.SignerInfo, certificate: pki.Certificate): boolean {
  if (!(sid instanceof pki.IssuerAndSerialNumber)) return false;
  return (
    certificate.issuer.isEqual(sid.issuer) && certificate.serialNumber.isEqual(sid.serialNumber)
  );
}

function checkAttributes(
  { signedAttrs, digestAlgorithm }: pki.SignerInfo,
  content: Buffer,
  { raw }: X509Certificate,
): void {
  const value = (type: string): asn1.BaseBlock | undefined => {
    const [only, another] = (signedAttrs?.attributes ?? []).filter((each) => each.type === type);
    return another ? undefined : (only?.values as asn1.BaseBlock[] | undefined)?.[0];
  };
  if (value(CONTENT_TYPE)?.valueBlock.toString() !== pki.id_eContentType_TSTInfo) {
    throw new TimeStampFault('The signature is not one of a time-stamp.');
  }
  const digest = createHash(hashOf(digestAlgorithm.algorithmId)).update(content).digest();
  if (!octets(value(MESSAGE_DIGEST))?.equals(digest)) {
    throw new TimeStampFault('The time-stamp was altered: its digest does not fit.');
  }
  const v2 = value(SIGNING_CERTIFICATE_V2);
  const named = v2 ? namedIn(v2, 'sha256') : namedIn(value(SIGNING_CERTIFICATE), 'sha1');
  if (!named?.digest?.equals(createHash(named.hash).update(raw).digest())) {
    throw new TimeStampFault('The signature does not name the certificate it was made with.');
  }
}

/** The first certificate named: ESSCertID has its digest first, ESSCertIDv2 may have the hash before. */
function namedIn(attribute: asn1.BaseBlock | undefined, usual: string) {
  const [first, second] = parts(parts(parts(attribute)[0])[0]);
  const digest = octets(first);
  if (digest) return { hash: usual, digest };
  return { hash: hashOf(parts(first)[0]?.valueBlock.toString() ?? ''), digest: octets(second) };
}

function checkSignature(signer: pki.SignerInfo, { publicKey }: X509Certificate): void {
  const { signatureAlgorithm, digestAlgorithm, signedAttrs, signature } = signer;
  const kind = signatureAlgorithm.algorithmId;
  if (!(kind in SIGNATURES)) throw new TimeStampFault(`Signatures of ${kind} are not known here.`);
  const hash = SIGNATURES[kind] ?? hashOf(digestAlgorithm.algorithmId);
  const over = Buffer.from(signedAttrs?.encodedValue ?? new ArrayBuffer(0));
  if (!verify(hash, over, publicKey, Buffer.from(signature.getValue()))) {
    throw new TimeStampFault('The signature of the time-stamp does not fit.');
  }
}

/** Critical, and for nothing else: RFC 3161, 2.3. */
function checkPurpose({ extensions = [] }: pki.Certificate): void {
  const usage = extensions.find((each) => each.extnID === pki.id_ExtKeyUsage);
  const purposes = (usage?.parsedValue as pki.ExtKeyUsage | undefined)?.keyPurposes ?? [];
  if (!usage?.critical || purposes.length !== 1 || purposes[0] !== TIME_STAMPING) {
    throw new TimeStampFault(
      'The certificate of the signature is not one for time-stamping alone.',
    );
  }
}

function checkChain(
  from: X509Certificate,
  others: readonly X509Certificate[],
  trusted: readonly X509Certificate[],
  at: Date,
): void {
  const issued = (of: X509Certificate) => (by: X509Certificate) =>
    by.ca && of.checkIssued(by) && of.verify(by.publicKey);
  let one = from;
  for (let length = 0; length < LONGEST_CHAIN; length++) {
    checkTime(one, at);
    if (trusted.some(({ raw }) => raw.equals(one.raw))) return;
    const next = trusted.find(issued(one)) ?? others.find(issued(one));
    if (!next || next.raw.equals(one.raw)) break;
    one = next;
  }
  throw new TimeStampFault('The certificate of the signature does not lead to a trusted one.');
}

function checkTime({ validFrom, validTo, subject }: X509Certificate, at: Date): void {
  if (at >= new Date(validFrom) && at <= new Date(validTo)) return;
  const name = subject.split('\n').join(', ');
  throw new TimeStampFault(`The certificate of ${name} was not valid at ${at.toISOString()}.`);
}

/** @throws TimeStampFault where there is none */
export function anchors(pem: string): readonly X509Certificate[] {
  const blocks = pem.match(/-----BEGIN CERTIFICATE-----[^-]+-----END CERTIFICATE-----/g) ?? [];
  if (blocks.length === 0) throw new TimeStampFault('There is no trusted certificate.');
  return blocks.map((block) => new X509Certificate(block));
}

function hashOf(algorithm: string): string {
  const hash = HASHES[algorithm];
  if (hash === undefined) throw new TimeStampFault(`The hash ${algorithm} is not accepted.`);
  return hash;
}

const opened = (certificate: pki.Certificate): X509Certificate =>
  new X509Certificate(Buffer.from(certificate.toSchema().toBER()));

const parts = (block: asn1.BaseBlock | undefined): readonly asn1.BaseBlock[] => {
  const inside = (block?.valueBlock as { value?: unknown } | undefined)?.value;
  return Array.isArray(inside) ? (inside as asn1.BaseBlock[]) : [];
};

const octets = (block: asn1.BaseBlock | undefined): Buffer | undefined => {
  if (block?.idBlock.tagClass !== 1 || block.idBlock.tagNumber !== 4) return undefined;
  return Buffer.from((block as asn1.OctetString).getValue());
};
