import table from '../../../data/standards/detailCategories.json' with { type: 'json' };
import { megapascals, type Pressure, type SourceRef } from '../quantity/index.ts';

/** A constructional detail and its stress range at 2 million cycles. */
export interface DetailCategory {
  readonly detail: string;
  /** ΔσC or FAT [Pa]. */
  readonly category: Pressure;
  /** m of the steep branch: 3, or 5 where the whole line has one slope. */
  readonly slope: number;
  readonly source: SourceRef;
}

export const detailCategories: readonly DetailCategory[] = table.rows.map(
  ({ detail, categoryMpa, slope, source }) => ({
    detail,
    category: megapascals(categoryMpa),
    slope,
    source,
  }),
);

/** The steps of the category ladder [Pa], rising. */
export const categorySteps: readonly Pressure[] = table.categoriesMpa.map((value) => megapascals(value));

export const fatiguePartialFactors = table.partialFactors;
