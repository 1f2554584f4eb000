import { bubbleKinds, directions } from '../recipe.ts';
import { limits } from './limits.ts';

const inches = { type: 'number', minimum: limits.shortest, maximum: limits.longest } as const;
const flatInches = { type: 'number', minimum: 0, maximum: limits.longest } as const;
const name = { type: 'string', minLength: 1, maxLength: limits.name, pattern: '^[^,:#\\r\\n]+$' } as const;
const always = { const: true } as const;
const aim = { type: 'array', items: { enum: directions }, minItems: 1, maxItems: 6 } as const;
const steering = { aim, facing: aim, bendDegrees: { type: 'number', minimum: 0, maximum: 720 }, bendToward: aim } as const;
const copies = { mirrored: always, around: { enum: directions } } as const;
const times = { type: 'integer', minimum: 1, maximum: limits.times } as const;

/** A closed object: all of `required`, any of `optional`, nothing else. */
const record = (required: Readonly<Record<string, unknown>>, optional: Readonly<Record<string, unknown>> = {}) => ({
  type: 'object',
  properties: { ...required, ...optional },
  required: Object.keys(required),
  additionalProperties: false,
});

/** JSON Schema (draft 2020-12) of the recipe model that `readRecipe` gives. */
export const recipeJsonSchema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Recipe',
  ...record(
    {
      pieces: { type: 'array', items: { $ref: '#/$defs/piece' }, maxItems: limits.balloons },
      finishing: { type: 'array', items: { $ref: '#/$defs/finishing' } },
    },
    { minutes: { type: 'number', minimum: 0.05, maximum: 600 } },
  ),
  $defs: {
    length: {
      oneOf: [inches, record({ part: { type: 'integer', minimum: 1, maximum: 999 }, of: { type: 'integer', minimum: 1, maximum: 999 } })],
    },
    piece: record(
      { name, size: { type: 'string' }, role: name, count: times, run: { type: 'array', items: { $ref: '#/$defs/move' } } },
      { finish: name, print: name, ...copies, tailInches: flatInches, inflateInches: inches, keepInches: flatInches, burped: always },
    ),
    move: {
      oneOf: [
        record(
          { kind: { enum: bubbleKinds }, length: { $ref: '#/$defs/length' } },
          { label: name, split: always, soft: always, ...steering },
        ),
        record({ kind: { const: 'flat' }, length: { $ref: '#/$defs/length' } }, { label: name, ...steering }),
        record({ kind: { const: 'lock' }, last: { type: 'integer', minimum: 2, maximum: limits.bubbles } }),
        record({ kind: { const: 'lock' }, to: name }),
        record({ kind: { const: 'join' }, to: name }),
        record({ kind: { const: 'mark' }, name }),
        record({ kind: { const: 'pop' } }, { label: name }),
        record({ kind: { const: 'tuck' }, label: name, into: name }),
        record({ kind: { const: 'trim' } }),
        record({ kind: { const: 'note' }, text: { type: 'string', minLength: 1, maxLength: limits.note } }),
        record({ kind: { const: 'repeat' }, times, moves: { type: 'array', items: { $ref: '#/$defs/move' }, minItems: 1 } }, copies),
      ],
    },
    finishing: record(
      { with: { enum: ['marker', 'stick', 'sticker'] }, what: name },
      { on: name, minutes: { type: 'number', minimum: 0, maximum: 60 } },
    ),
  },
} as const;
