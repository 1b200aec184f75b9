import type { JSONSchema } from 'vscode-json-languageservice';

/** A schema for `jsonText`, of the kind that people write for their own files. */
export const JSON_SCHEMA: JSONSchema = {
  type: 'object',
  properties: {
    notes: {
      type: 'array',
      items: {
        type: 'object',
        required: ['bar', 'fret', 'string'],
        additionalProperties: false,
        properties: {
          bar: { type: 'integer', minimum: 0, description: 'The bar it stands in.' },
          fret: { type: 'integer', minimum: 0, maximum: 36, description: 'The fret, counted from the nut.' },
          string: { type: 'integer', minimum: 1, maximum: 14, description: 'The string, 1 at the top.' },
          name: { type: 'string', description: 'What it is called.' },
        },
      },
    },
  },
};
