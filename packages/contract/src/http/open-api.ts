import { z } from 'zod';
import { problemDetailsSchema } from './problem-details.ts';
import { type Media, mediaTypes, type Route, type Routes, routesOf } from './route.ts';

type Json = { readonly [key: string]: unknown };

/** The OpenAPI 3.1 description of the routes. */
export function openApi(routes: Routes, info: { readonly title: string; readonly version: string }): Json {
  const components: Record<string, unknown> = {};
  const schema = (type: z.ZodType, io: 'input' | 'output'): Json => {
    const { $schema: _version, $defs, ...rest } = z.toJSONSchema(type, { io, target: 'draft-2020-12' }) as Record<string, unknown>;
    for (const [name, definition] of Object.entries(($defs ?? {}) as Json)) components[name] = withoutId(moved(definition));
    return withoutId(moved(rest)) as Json;
  };
  const refusal = { content: { 'application/problem+json': { schema: schema(problemDetailsSchema, 'output') } } };
  const paths: Record<string, Record<string, unknown>> = {};
  for (const [operationId, route] of routesOf(routes)) {
    const path = route.path.replace(/:(\w+)/g, '{$1}');
    const operations = paths[path] ?? {};
    paths[path] = operations;
    operations[route.method] = operationOf(operationId, route, schema, refusal);
  }
  return { openapi: '3.1.0', info, paths, components: { schemas: components } };
}

function operationOf(operationId: string, route: Route, schema: (type: z.ZodType, io: 'input' | 'output') => Json, refusal: Json): Json {
  const parameters = (type: z.ZodType | undefined, where: 'path' | 'query') => {
    const { properties = {}, required = [] } = (type === undefined ? {} : schema(type, 'input')) as {
      properties?: Json;
      required?: readonly string[];
    };
    return Object.entries(properties).map(([name, property]) => ({ name, in: where, required: required.includes(name), schema: property }));
  };
  const media = (of: Media = 'json') => mediaTypes[of].split(';')[0] ?? mediaTypes.json;
  return {
    operationId,
    summary: route.summary,
    parameters: [...parameters(route.params, 'path'), ...parameters(route.query, 'query')],
    ...(route.body === undefined
      ? {}
      : { requestBody: { required: true, content: { [media(route.takes)]: { schema: schema(route.body, 'input') } } } }),
    responses: {
      [route.status ?? 200]: { description: 'Done', content: { [media(route.gives)]: { schema: schema(route.response, 'output') } } },
      404: { description: 'There is no such thing', ...refusal },
      409: { description: 'Refused', ...refusal },
      422: { description: 'Not understood; nothing is stored', ...refusal },
    },
  };
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
