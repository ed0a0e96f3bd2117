// Photos and papers by the digest of their bytes: what the record names can be shown for ever, and
// cannot be exchanged.

import { createHash } from 'node:crypto';
import { Body, Controller, Headers, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { z } from 'zod';
import { Digest } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { Header } from '../http/header.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';

const FileSchema = z
  .object({ digest: z.string(), name: z.string(), size: z.int(), type: z.string() })
  .meta({ id: 'File' });
const FileName = z
  .string('the header X-File-Name must name the file')
  .trim()
  .min(1)
  .max(600)
  .transform((text, context) => {
    try {
      return decodeURIComponent(text).slice(0, 200);
    } catch {
      context.addIssue('must be percent-encoded UTF-8');
      return z.NEVER;
    }
  })
  .refine((text) => !/[\u0000-\u001f/\\]/.test(text), 'must be a name, not a path');

/** What a browser may show inside a page; everything else is only ever saved. */
const SHOWN = new Set(['image/jpeg', 'image/png', 'image/webp', 'image/gif', 'application/pdf']);

@Controller('api/files')
export class FilesController {
  constructor(private readonly companies: Companies) {}

  @Route('POST', '', {
    says: 'Store a file; the same bytes are stored once',
    who: [...STAFF, 'engineer'],
    answers: 'created',
    takes: ['application/octet-stream'],
    headers: { 'X-File-Name': 'the name, percent-encoded' },
    gives: FileSchema,
  })
  async store(
    @Asking() asking: SignedIn,
    @Header('x-file-name', FileName) name: string,
    @Headers('content-type') contentType: string | undefined,
    @Body() bytes: unknown,
  ) {
    if (!Buffer.isBuffer(bytes) || bytes.length === 0) {
      throw new Problem('malformed', { faults: [{ pointer: '', message: 'the file is empty' }] });
    }
    const type =
      (contentType ?? 'application/octet-stream').split(';')[0]?.trim().slice(0, 100) ?? '';
    const digest = createHash('sha256').update(bytes).digest('hex');
    const { prisma } = this.companies.of(asking.company.id);
    const row = {
      companyId: asking.company.id,
      digest,
      name,
      type,
      size: bytes.length,
      bytes: new Uint8Array(bytes),
      createdBy: asking.person.id,
    };
    await prisma.file.createMany({ data: [row], skipDuplicates: true });
    return { digest, name, size: bytes.length, type };
  }

  @Route('GET', ':digest', {
    says: 'A stored file',
    who: [...STAFF, 'engineer'],
    gives: 'application/octet-stream',
  })
  async bytes(
    @Asking() asking: SignedIn,
    @Param('digest', { schema: Digest }) digest: string,
    @Res() response: Response,
  ): Promise<void> {
    const companyId = asking.company.id;
    const file = await this.companies.of(companyId).prisma.file.findUnique({
      where: { companyId_digest: { companyId, digest } },
    });
    if (!file) throw new Problem('not-found', 'There is no such file.');
    const shown = SHOWN.has(file.type);
    response.setHeader('Content-Type', shown ? file.type : 'application/octet-stream');
    response.setHeader(
      'Content-Disposition',
      `${shown ? 'inline' : 'attachment'}; filename*=UTF-8''${encodeURIComponent(file.name)}`,
    );
    response.setHeader('Cache-Control', 'private, max-age=31536000, immutable');
    response.end(Buffer.from(file.bytes));
  }
}
