import { z } from 'zod';
import { buildSchema } from './schema/index.ts';

/** The build file's JSON Schema (draft 2020-12), made from the same definition that reads it. */
export function buildJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(buildSchema, { io: 'input', unrepresentable: 'any' }) as Record<
    string,
    unknown
  >;
  return { ...schema, title: 'Jigwright build file' };
}
