import type { WhippleParameters } from '../../src/core/ride/index.ts';

/** The published benchmark bicycle: Proc. R. Soc. A 463 (2007) 1955-1982, table 1. */
export const whippleBenchmark: WhippleParameters = {
  w: 1.02,
  c: 0.08,
  lam: Math.PI / 10,
  g: 9.81,
  rR: 0.3,
  mR: 2,
  IRxx: 0.0603,
  IRyy: 0.12,
  xB: 0.3,
  zB: -0.9,
  mB: 85,
  IBxx: 9.2,
  IBzz: 2.8,
  IBxz: 2.4,
  xH: 0.9,
  zH: -0.7,
  mH: 4,
  IHxx: 0.05892,
  IHzz: 0.00708,
  IHxz: -0.00756,
  rF: 0.35,
  mF: 3,
  IFxx: 0.1405,
  IFyy: 0.28,
};
