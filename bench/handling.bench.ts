import {
  eigenvaluesOver,
  handlingOf,
  type WhippleParameters,
  whippleMatrices,
} from '../src/core/ride/index.ts';
import { bench, checksumOf } from './bench.ts';

/** A small motorcycle with a rider of 80 kg. */
const motorcycle: WhippleParameters = {
  w: 1,
  c: 0.0562,
  lam: 0.41888,
  g: 9.81,
  rR: 0.2,
  mR: 5.5,
  IRxx: 0.037,
  IRyy: 0.0713,
  xB: 0.417,
  zB: -0.725,
  mB: 111,
  IBxx: 12.33,
  IBzz: 3.99,
  IBxz: -1.269,
  xH: 0.843,
  zH: -0.583,
  mH: 6,
  IHxx: 0.4345,
  IHzz: 0.1392,
  IHxz: -0.1298,
  rF: 0.2,
  mF: 5,
  IFxx: 0.037,
  IFyy: 0.0713,
};
const matrices = whippleMatrices(motorcycle);
const speeds = Array.from({ length: 200 }, (_, k) => k * 0.1);

export const benches = [
  bench({
    name: 'eigenvalues at 200 speeds',
    warmUps: 20,
    runs: 100,
    target: 5,
    run: () => eigenvaluesOver(matrices, speeds),
    checksum: (rows) => checksumOf(rows),
  }),
  bench({
    name: 'handling with its table of changes',
    warmUps: 20,
    runs: 100,
    run: () => handlingOf(motorcycle),
    checksum: ({ speeds: found, changes }) => checksumOf([found, changes]),
  }),
];
