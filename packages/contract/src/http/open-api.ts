import { z } from 'zod';
import { problemDetailsSchema } from './problem-details.ts';
import { type Media, mediaTypes, type Route, type Routes, routesOf, usualMostBytes } from './route.ts';

type Json = { readonly [key: string]: unknown };
type SchemaOf = (type: z.ZodType, io: 'input' | 'output') => Json;

/** What each status means, where it is no yes. */
const meanings: Readonly<Record<number, string>> = {
  403: 'The call comes from a page or under a name that is not of this server',
  404: 'There is no such thing, or no book yet',
  409: 'Refused: the sentence says why and what would work',
  412: 'Somebody else has changed the book since; nothing is stored',
  413: 'The body is too large; nothing is stored',
  415: 'The body is not of the type that is understood; nothing is stored',
  422: 'Not understood: each problem says where and what to do; nothing is stored',
  500: 'A mistake of ours; nothing is stored',
  503: 'Too much is being worked out, or the server stops: Retry-After says when to ask again',
  504: 'It takes longer than is allowed and was given up; nothing is stored',
};

/**
 * Statuses that a route may answer with, besides its yes; each of them is a problem document (RFC 9457).
 */
export function refusalsOf(route: Pick<Route, 'params' | 'query' | 'body' | 'refuses' | 'heavy' | 'book'>): readonly number[] {
  const statuses = [
    403,
    ...(route.refuses ?? []),
    ...(route.book === 'writes' ? [409, 412] : []),
    ...(route.body === undefined ? [] : [413, 415]),
    ...(route.params === undefined && route.query === undefined && route.body === undefined ? [] : [422]),
    500,
    ...(route.heavy === true ? [503, 504] : []),
  ];
  return [...new Set(statuses)].sort((a, b) => a - b);
}

/** The OpenAPI 3.1 description of the routes. */
export function openApi(routes: Routes, info: { readonly title: string; readonly version: string; readonly description?: string }): Json {
  const components: Record<string, unknown> = {};
  const schema: SchemaOf = (type, io) => {
    const { $schema: _version, $defs, ...rest } = z.toJSONSchema(type, { io, target: 'draft-2020-12' }) as Record<string, unknown>;
    for (const [name, definition] of Object.entries(($defs ?? {}) as Json)) components[name] = withoutId(moved(definition));
    return withoutId(moved(rest)) as Json;
  };
  const problem = schema(problemDetailsSchema, 'output');
  const paths: Record<string, Record<string, unknown>> = {};
  const groups = new Set<string>();
  for (const [operationId, route] of routesOf(routes)) {
    const path = route.path.replace(/:(\w+)/g, '{$1}');
    const operations = paths[path] ?? {};
    paths[path] = operations;
    const group = groupOf(operationId);
    groups.add(group);
    operations[route.method] = { operationId, tags: [group], ...operationOf(route, schema) };
  }
  return {
    openapi: '3.1.0',
    info,
    servers: [{ url: '/', description: 'This server' }],
    tags: [...groups].map((name) => ({ name })),
    paths,
    components: {
      schemas: components,
      responses: Object.fromEntries(Object.keys(meanings).map((status) => [nameOf(status), answerOf(Number(status), problem)])),
    },
  };
}

/** `gigs.put` belongs to the gigs, `plan` stands for itself. */
const groupOf = (operationId: string): string => operationId.split('.')[0] ?? operationId;
const nameOf = (status: number | string): string => `Answer${status}`;

function answerOf(status: number, problem: Json): Json {
  return {
    description: meanings[status] ?? '',
    ...(status === 503 ? { headers: { 'Retry-After': { description: 'Seconds', schema: { type: 'integer', minimum: 1 } } } } : {}),
    content: { 'application/problem+json': { schema: problem } },
  };
}

const entityTag = { type: 'string', examples: ['"12"'] } as const;

function operationOf(route: Route, schema: SchemaOf): Json {
  const media = (of: Media = 'json') => mediaTypes[of].split(';')[0] ?? mediaTypes.json;
  const { example = {}, book } = route;
  return {
    summary: route.summary,
    ...(route.description === undefined ? {} : { description: route.description }),
    parameters: [
      ...parametersOf(route.params, 'path', example.params, schema),
      ...parametersOf(route.query, 'query', example.query, schema),
      ...(book === 'writes'
        ? [
            {
              name: 'If-Match',
              in: 'header',
              required: false,
              schema: entityTag,
              description: 'ETag of the book that was seen: refused with 412 if it has changed since',
            },
          ]
        : []),
      ...(book === 'reads'
        ? [
            {
              name: 'If-None-Match',
              in: 'header',
              required: false,
              schema: entityTag,
              description: 'ETag of the answer that is there: 304 if it still holds',
            },
          ]
        : []),
    ],
    ...(route.body === undefined
      ? {}
      : {
          requestBody: {
            required: true,
            description: `At most ${route.mostBytes ?? usualMostBytes} bytes`,
            content: {
              [media(route.takes)]: {
                schema: schema(route.body, 'input'),
                ...(example.body === undefined ? {} : { example: example.body }),
              },
            },
          },
        }),
    responses: {
      [route.status ?? 200]: {
        description: 'Done',
        ...(book === undefined
          ? {}
          : { headers: { ETag: { description: 'Revision of the book that this is the answer of', schema: entityTag } } }),
        content: { [media(route.gives)]: { schema: isBytes(route) ? {} : schema(route.response, 'output') } },
      },
      ...(book === 'reads' ? { 304: { description: 'What is there still holds' } } : {}),
      ...Object.fromEntries(refusalsOf(route).map((status) => [status, { $ref: `#/components/responses/${nameOf(status)}` }])),
    },
  };
}

/** OpenAPI 3.1 describes what is not JSON by its media type alone. */
const isBytes = ({ gives }: Route): boolean => gives === 'pdf';

function parametersOf(type: z.ZodType | undefined, where: 'path' | 'query', example: unknown, schema: SchemaOf): readonly Json[] {
  const { properties = {}, required = [] } = (type === undefined ? {} : schema(type, 'input')) as {
    properties?: Json;
    required?: readonly string[];
  };
  const examples = (example ?? {}) as Json;
  return Object.entries(properties).map(([name, property]) => {
    const { description, ...rest } = property as Json;
    return {
      name,
      in: where,
      required: required.includes(name),
      ...(description === undefined ? {} : { description }),
      schema: rest,
      ...(examples[name] === undefined ? {} : { example: examples[name] }),
    };
  });
}

/** References into the components instead of the definitions beside a schema. */
function moved(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(moved);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      key === '$ref' && typeof part === 'string' ? part.replace('#/$defs/', '#/components/schemas/') : moved(part),
    ]),
  );
}
function withoutId(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const { id: _id, ...rest } = value as Record<string, unknown>;
  return typeof _id === 'string' ? rest : value;
}
