import { z } from 'zod';
import type { QuantityKind } from './brand.ts';
import { kindFacts } from './kinds.ts';

/** What a field's schema tells about itself (zod's global registry), also shown in the JSON Schema. */
export interface QuantityMeta {
  readonly description: string;
  readonly kind: QuantityKind;
  /** Edge unit. */
  readonly unit: string;
}

/** Meta of a quantity field, or undefined for any other schema. */
export function quantityMeta(schema: z.core.$ZodType): QuantityMeta | undefined {
  const meta = z.globalRegistry.get(schema) as Partial<QuantityMeta> | undefined;
  return meta?.kind !== undefined && meta.kind in kindFacts ? (meta as QuantityMeta) : undefined;
}

/** Spread into a plain record, which is what zod's registry takes. */
export const metaOf = (kind: QuantityKind, doc: string): QuantityMeta & Record<string, unknown> => ({
  description: doc,
  kind,
  unit: kindFacts[kind].edge,
});
