import type { z } from 'zod';

/** The parts of zod's own description of a schema that are read here. */
type Definition =
  | { readonly type: 'object'; readonly shape: Readonly<Record<string, z.ZodType>> }
  | { readonly type: 'array'; readonly element: z.ZodType }
  | { readonly type: 'record'; readonly valueType: z.ZodType }
  | { readonly type: 'optional' | 'default' | 'readonly'; readonly innerType: z.ZodType }
  | { readonly type: 'union'; readonly options: readonly z.ZodType[]; readonly discriminator?: string }
  | { readonly type: 'literal'; readonly values: readonly unknown[] }
  | { readonly type: 'enum'; readonly entries: Readonly<Record<string, unknown>> }
  | { readonly type: 'string' };
const definitionOf = (schema: z.ZodType): Definition => schema._zod.def as unknown as Definition;

/** The schema itself behind "may be missing" and "is this if missing"; of a union the option that fits the value. */
function schemaFor(schema: z.ZodType, value: unknown): z.ZodType {
  const definition = definitionOf(schema);
  if (definition.type === 'optional' || definition.type === 'default' || definition.type === 'readonly')
    return schemaFor(definition.innerType, value);
  if (definition.type !== 'union' || definition.discriminator === undefined) return schema;
  const { discriminator, options } = definition;
  const wanted = isRecord(value) ? value[discriminator] : undefined;
  return options.find((option) => accepts(shapeOf(option)?.[discriminator], wanted)) ?? schema;
}
function accepts(schema: z.ZodType | undefined, value: unknown): boolean {
  if (schema === undefined) return false;
  const definition = definitionOf(schema);
  if (definition.type === 'literal') return definition.values.includes(value);
  return definition.type === 'enum' && Object.values(definition.entries).includes(value);
}
function shapeOf(schema: z.ZodType): Readonly<Record<string, z.ZodType>> | undefined {
  const definition = definitionOf(schema);
  return definition.type === 'object' ? definition.shape : undefined;
}

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The keys that may stand in `value`, in the order of the schema; undefined where any key may stand. */
export const keysFor = (schema: z.ZodType, value: unknown): readonly string[] | undefined => {
  const shape = shapeOf(schemaFor(schema, value));
  return shape === undefined ? undefined : Object.keys(shape);
};
/** The schema of what lies under `key` of `value`. */
export function schemaUnder(schema: z.ZodType, value: unknown, key: string | number): z.ZodType | undefined {
  const definition = definitionOf(schemaFor(schema, value));
  if (definition.type === 'object') return definition.shape[String(key)];
  if (definition.type === 'array') return definition.element;
  return definition.type === 'record' ? definition.valueType : undefined;
}
/** What lies at the end of the path, with the schema that holds there. */
export function follow(
  schema: z.ZodType,
  value: unknown,
  path: readonly PropertyKey[],
): { readonly schema: z.ZodType | undefined; readonly value: unknown } {
  let at: z.ZodType | undefined = schema;
  let here = value;
  for (const key of path) {
    at = at === undefined ? undefined : schemaUnder(at, here, typeof key === 'symbol' ? String(key) : key);
    here = typeof here === 'object' && here !== null ? (here as Record<PropertyKey, unknown>)[key] : undefined;
  }
  return { schema: at, value: here };
}

/** The same value with its keys in the order of the schema; keys that it does not know come last. Free keys keep their order. */
export function inOrder(schema: z.ZodType | undefined, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((entry) => inOrder(schema && schemaUnder(schema, value, 0), entry));
  if (!isRecord(value)) return value;
  const known = schema === undefined ? undefined : keysFor(schema, value);
  const keys = Object.keys(value).filter((key) => value[key] !== undefined);
  const sorted = known === undefined ? keys : [...known.filter((key) => keys.includes(key)), ...keys.filter((key) => !known.includes(key))];
  return Object.fromEntries(sorted.map((key) => [key, inOrder(schema && schemaUnder(schema, value, key), value[key])]));
}

/** What the schema says about itself in words. */
export const descriptionOf = (schema: z.ZodType, value: unknown): string | undefined => schemaFor(schema, value).meta()?.description;
