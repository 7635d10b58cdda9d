import type { Build } from './build/index.ts';
import { type Change, measuredBuild, type Reading, rippleOf } from './fit/index.ts';
import { type Proof, prove } from './prove.ts';
import { type Solution, solve } from './solve.ts';

/** A bike as it really measures, and what that moved. */
export interface AsBuilt extends Proof {
  readonly readings: readonly Reading[];
  /** Figures that moved, those of parts already made first. */
  readonly moved: readonly Change[];
}

/**
 * Solves a build with its readings: what was measured wins, what was typed stays as it is. Told is every figure that
 * moved against what was typed, or against `from` (the file without its variant, a bike before a swap), and every part
 * that was already made to another figure.
 */
export function solveAsBuilt(build: Build, from: Build = build): AsBuilt {
  const { build: measured, readings } = measuredBuild(build);
  const proof = prove(solve(measured));
  const before = measured === from ? proof : prove(solve(from));
  const made = proof.build.made;
  const moved = rippleOf(before, { figures: proof.figures, ...(made ? { made } : {}) });
  return { ...proof, readings, moved: moved.filter(matters) };
}

/** Places a build with its readings, and proves nothing: all that parts are cut and templates are drawn from. */
export const solveMeasured = (build: Build): Solution => solve(measuredBuild(build).build);

/** Share of a value below which a move is told only for a part that is already made. */
const LEAST_SHARE = 1e-4;

const matters = ({ how, share, alreadyCut }: Change): boolean =>
  alreadyCut !== undefined || how !== 'changed' || share >= LEAST_SHARE;
