// The OpenAPI 3.1 document, made from the routes and their Zod schemas.

import { Injectable, type INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';
import { COOKIE } from './session-guard.js';
import { ProblemSchema } from './problem-schema.js';

/** Made once, when it is first asked for. */
@Injectable()
export class OpenApiDocument {
  private app: INestApplication | undefined;
  private made: OpenAPIObject | undefined;

  of(app: INestApplication): void {
    this.app = app;
  }

  get(): OpenAPIObject {
    if (!this.app) throw new Error('the document was asked for before the service stood');
    return (this.made ??= openApi(this.app));
  }
}

function openApi(app: INestApplication): OpenAPIObject {
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Gauge Ledger')
    .setVersion('1')
    .setDescription(
      'Jobs of metal roof and wall panels, their decisions, and the record of why each gauge was ' +
        'chosen. An office aid: local code and the authority having jurisdiction govern, and ' +
        'what spans needs a licensed engineer.',
    )
    .addCookieAuth(COOKIE)
    .addSecurityRequirements('cookie')
    .build();
  const document = SwaggerModule.createDocument(app, config, {
    standardSchemaConverter: (schema, { schemaType }) =>
      jsonSchema(schema as unknown as z.ZodType, schemaType),
  });
  const problem = JSON.parse(
    JSON.stringify(z.toJSONSchema(ProblemSchema, { io: 'output' }).$defs).replaceAll(
      '#/$defs/',
      '#/components/schemas/',
    ),
  ) as object;
  document.components = {
    ...document.components,
    schemas: { ...document.components?.schemas, ...problem } as never,
  };
  return document;
}

/** A schema with an id becomes a component; everything else stands where it is used. */
function jsonSchema(schema: z.ZodType, io: 'input' | 'output') {
  const made = z.toJSONSchema(schema, { target: 'draft-2020-12', io, unrepresentable: 'any' });
  const { $defs: components = {}, $schema: _, ...own } = made;
  return { schema: own, components } as never;
}
