import type { Figure } from '../../quantity/index.ts';
import { comparisonOf, isWear, type UtilizationRow } from './checks/utilizationRow.ts';
import { type Remedy, triedRemedies } from './remedies.ts';
import { type StrengthCore, type StrengthInput, strengthCore } from './strengthCore.ts';
import { strengthFigures } from './strengthFigures.ts';

/** Does it hold? Figures and comparisons; the verdicts are made of them by the findings. */
export interface Strength extends StrengthCore {
  /** The most used places of what can break, bend or slip; ratings of wear are among the rows only. */
  readonly worst: readonly UtilizationRow[];
  readonly remedies: readonly Remedy[];
  readonly figures: readonly Figure[];
  /** What was left out, in words for the report. */
  readonly notChecked: readonly string[];
}

const WORST = 10;

/**
 * Strength of the placed bike under its load cases: frame, welds, shafts, bearings, keys, chains, bolts. For the worst
 * places a remedy is tried by running the same check again.
 * @source derived, see each part
 */
export function strengthOf(input: StrengthInput): Strength {
  const core = strengthCore(input);
  const worst = worstPlaces(core.rows);
  return {
    ...core,
    worst,
    remedies: triedRemedies(input, core),
    figures: strengthFigures(core),
    notChecked: [
      'the engine, its shaft and its own bolts beyond slip',
      'wheels, tires and spokes',
      'the inside of a bought fork, the bars and the seat pan',
      'plates beyond straight cuts: peaks beside holes, dents, buckling of thin ones, fatigue',
      ...core.platesLeft,
      ...core.wallsLeft,
      ...core.hubsLeft,
      ...core.rowsLeft,
      ...core.drive.notChecked,
    ],
  };
}

/** The highest rows, a mirrored pair counted once; a rating of wear says nothing of what breaks first. */
function worstPlaces(rows: readonly UtilizationRow[]): readonly UtilizationRow[] {
  const seen = new Set<string>();
  return rows
    .filter((row) => {
      const key = comparisonOf(row);
      if (isWear(row) || seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .slice(0, WORST);
}
