// OpenAPI Specification, version 3.1.0, OpenAPI Initiative, 15 February 2021: section 4.8, the fixed fields of each object, which of them are required,
// and the rules on templates, parameters, references and operation ids. JSON Schema: A Media Type for Describing JSON Documents, draft 2020-12, and its
// Validation vocabulary: the keywords and the form of their values.
import { api, openApi } from '@twistwright/contract';
import { expect, test } from 'vitest';
import { z } from 'zod';

const text = z.string();
const names = /^[a-zA-Z0-9.\-_]+$/;
const map = <S extends z.ZodType>(value: S) => z.record(z.string(), value);
const components = <S extends z.ZodType>(value: S) => z.record(z.string().regex(names), value);
const reference = z.strictObject({ $ref: text.regex(/^#\/components\//), summary: text.optional(), description: text.optional() });

const typeName = z.enum(['string', 'number', 'integer', 'boolean', 'object', 'array', 'null']);
/** Keywords of the core, applicator, validation, format, content and meta-data vocabularies that a description of JSON needs. */
const schema: z.ZodType = z.lazy(() =>
  z.union([
    z.boolean(),
    z.strictObject({
      $ref: text.regex(/^#\/components\/schemas\//).optional(),
      type: z.union([typeName, z.array(typeName).min(1)]).optional(),
      const: z.union([z.string(), z.number(), z.boolean()]).optional(),
      enum: z
        .array(z.union([z.string(), z.number()]))
        .min(1)
        .optional(),
      minimum: z.number().optional(),
      maximum: z.number().optional(),
      exclusiveMinimum: z.number().optional(),
      exclusiveMaximum: z.number().optional(),
      minLength: z.int().min(0).optional(),
      maxLength: z.int().min(0).optional(),
      pattern: text.refine((pattern) => new RegExp(pattern, 'u')).optional(),
      format: text.optional(),
      items: schema.optional(),
      prefixItems: z.array(schema).min(1).optional(),
      minItems: z.int().min(0).optional(),
      maxItems: z.int().min(0).optional(),
      properties: map(schema).optional(),
      propertyNames: schema.optional(),
      additionalProperties: schema.optional(),
      required: z
        .array(text)
        .refine((all) => new Set(all).size === all.length)
        .optional(),
      anyOf: z.array(schema).min(1).optional(),
      oneOf: z.array(schema).min(1).optional(),
      allOf: z.array(schema).min(1).optional(),
      title: text.optional(),
      description: text.optional(),
      default: z.unknown().optional(),
      examples: z.array(z.unknown()).optional(),
    }),
  ]),
);
const header = z.strictObject({ description: text.optional(), required: z.boolean().optional(), schema });
const mediaType = z.strictObject({ schema: schema.optional(), example: z.unknown().optional() });
const content = z.record(z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/), mediaType);
const parameter = z
  .strictObject({
    name: text.min(1),
    in: z.enum(['query', 'header', 'path', 'cookie']),
    description: text.optional(),
    required: z.boolean().optional(),
    schema,
    example: z.unknown().optional(),
  })
  .refine(({ in: where, required }) => where !== 'path' || required === true, 'a path parameter is required')
  .refine(({ in: where, name }) => where !== 'header' || !/^(accept|content-type|authorization)$/i.test(name), 'such a header is ignored');
const response = z.strictObject({ description: text.min(1), headers: map(header).optional(), content: content.optional() });
const operation = z.strictObject({
  operationId: text.min(1),
  tags: z.array(text),
  summary: text.min(1),
  description: text.optional(),
  parameters: z
    .array(parameter)
    .refine((all) => new Set(all.map(({ name, in: where }) => `${where} ${name}`)).size === all.length, 'a parameter is listed twice'),
  requestBody: z.strictObject({ description: text.optional(), required: z.boolean().optional(), content }).optional(),
  responses: z.record(z.string().regex(/^[1-5]\d\d$/), z.union([response, reference])).refine((all) => Object.keys(all).length > 0),
});
const pathItem = z.strictObject({
  get: operation.optional(),
  put: operation.optional(),
  post: operation.optional(),
  delete: operation.optional(),
});
const document = z
  .strictObject({
    openapi: z.literal('3.1.0'),
    info: z.strictObject({ title: text, version: text, description: text.optional() }),
    servers: z.array(z.strictObject({ url: text, description: text.optional() })),
    tags: z
      .array(z.strictObject({ name: text, description: text.optional() }))
      .refine((tags) => new Set(tags.map(({ name }) => name)).size === tags.length, 'each tag is listed once'),
    paths: z.record(z.string().startsWith('/'), pathItem),
    components: z.strictObject({ schemas: components(schema), responses: components(response) }),
  })
  .superRefine(({ paths, tags, components: { schemas, responses } }, context) => {
    const wrong = (message: string): void => context.addIssue({ code: 'custom', message });
    const operations = Object.entries(paths).flatMap(([path, item]) =>
      Object.values(item).flatMap((one) => (one === undefined ? [] : [{ path, ...one }])),
    );
    if (new Set(operations.map(({ operationId }) => operationId)).size !== operations.length) wrong('an operationId is there twice');
    const shapes = Object.keys(paths).map((path) => path.replace(/\{\w+\}/g, '{}'));
    if (new Set(shapes).size !== shapes.length) wrong('two paths differ only in the name of a parameter');
    for (const { path, parameters, tags: own } of operations) {
      const inPath = parameters.filter((one) => one.in === 'path').map(({ name }) => name);
      const template = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      if (inPath.join() !== template.join()) wrong(`${path} and its path parameters differ`);
      if (own.some((tag) => !tags.some(({ name }) => name === tag))) wrong(`${path} has a tag that is not listed`);
    }
    const known = new Set([
      ...Object.keys(schemas).map((name) => `#/components/schemas/${name}`),
      ...Object.keys(responses).map((name) => `#/components/responses/${name}`),
    ]);
    for (const [, target = ''] of JSON.stringify({ paths, schemas, responses }).matchAll(/"\$ref":"([^"]+)"/g))
      if (!known.has(target)) wrong(`${target} leads nowhere`);
  });

const description = openApi(api, { title: 'Twistwright', version: '1' });

test('the description is an OpenAPI 3.1 document', () => {
  expect(document.safeParse(description).error?.issues ?? []).toEqual([]);
});
test('planted mistakes are seen', () => {
  type Tree = { [key: string]: Tree };
  const spoilt = (spoil: (tree: Tree) => void): boolean => {
    const tree = structuredClone(description) as Tree;
    spoil(tree);
    return document.safeParse(tree).success;
  };
  expect(spoilt(() => undefined)).toBe(true);
  const mistakes: readonly ((tree: Tree) => void)[] = [
    (tree) => Object.assign(tree, { swagger: '2.0' }),
    (tree) => delete tree.components?.schemas?.Gig,
    (tree) => delete tree.components?.responses?.Answer404?.description,
    (tree) => Object.assign(tree.paths ?? {}, { '/api/gigs/{key}': tree.paths?.['/api/gigs/{id}'] }),
    (tree) => Object.assign(tree.paths?.['/api/gigs']?.get ?? {}, { operationId: 'gigs.put' }),
    (tree) => Object.assign(tree.components?.schemas?.Gig ?? {}, { requird: ['id'] }),
    (tree) => Object.assign(tree.paths?.['/api/gigs']?.get ?? {}, { responses: {} }),
  ];
  expect(mistakes.map(spoilt)).toEqual(mistakes.map(() => false));
});
test('money, lengths, times and shares say their unit: every number of an answer stands under a word for one, or describes itself', () => {
  const { schemas } = description.components as { readonly schemas: Readonly<Record<string, object>> };
  const silent: string[] = [];
  const walk = (name: string, value: unknown, under: string): void => {
    if (typeof value !== 'object' || value === null) return;
    const { type, description: said, properties, items, additionalProperties, anyOf, oneOf } = value as Readonly<Record<string, unknown>>;
    if ((type === 'number' || type === 'integer') && said === undefined && !unitWord.test(under)) silent.push(`${name}: ${under}`);
    for (const [key, part] of Object.entries((properties ?? {}) as object)) walk(name, part, key);
    for (const part of [items, additionalProperties, ...((anyOf ?? oneOf ?? []) as readonly unknown[])]) walk(name, part, under);
  };
  for (const name of answers) walk(name, schemas[name], '');
  expect(silent).toEqual([]);
});
/** A key that says its unit, or counts things. */
const unitWord =
  /(minutes?|miles|inches|litres|weeks|gigs|points|share|chance|count|counts?|bags|pieces|runs|balloons|bubbles|strokes|number|requests|seed|p10|p50|p90|p95|mean|low|mid|high|mayWait|artists|usual|enough|ticked|total|expected|atLeast|makes|have|value|line|column|status|version|figures|joints|edges|deeds|tailInches|at)$/i;
const answers = [
  'Plan',
  'GigPlan',
  'Forecast',
  'Charge',
  'Packing',
  'Needs',
  'Shopping',
  'ShoppingOrder',
  'KitPlan',
  'Kit',
  'Growth',
  'Advice',
  'WhatIfSide',
  'FigureShown',
  'Air',
  'FramePlan',
];
