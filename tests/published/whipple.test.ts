import { describe, expect, test } from 'vitest';
import {
  characteristic,
  type WhippleMatrices,
  type WhippleSums,
  whippleEigenvalues,
  whippleMatrices,
  whippleModes,
  whippleSpeeds,
  whippleSums,
} from '../../src/core/ride/index.ts';
import { smallMotorcycle } from '../support/smallMotorcycle.ts';
import { whippleBenchmark } from '../support/whippleBenchmark.ts';

// Proc. R. Soc. A 463 (2007) 1955-1982, the benchmark bicycle, as transcribed in independent public test suites.

const near = (value: number | undefined, expected: number, tolerance: number): void => {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const matrices = whippleMatrices(whippleBenchmark);

describe('[WHP-1] matrices of the benchmark bicycle', () => {
  const published: Omit<WhippleMatrices, 'g'> = {
    M: [
      [80.81722, 2.31941332208709],
      [2.31941332208709, 0.29784188199686],
    ],
    C1: [
      [0, 33.86641391492494],
      [-0.85035641456978, 1.6854039739756],
    ],
    K0: [
      [-80.95, -2.59951685249872],
      [-2.59951685249872, -0.80329488458618],
    ],
    K2: [
      [0, 76.59734589573222],
      [0, 2.65431523794604],
    ],
  };
  test.each(['M', 'C1', 'K0', 'K2'] as const)('%s', (name) => {
    // 14 printed decimals; sums of about ten products of order 100 lose at most two of the sixteen digits.
    for (const i of [0, 1] as const)
      for (const j of [0, 1] as const) near(matrices[name][i][j], published[name][i][j], 1e-12);
  });

  // Worked by another hand line by line: which line is wrong, should one be.
  const steps: Omit<WhippleSums, 'IRzz'> = {
    mT: 94,
    xT: 0.3421276595744681,
    zT: -0.8611702127659574,
    ITxx: 80.81722,
    ITxz: 28.93344,
    ITzz: 17.01908,
    xA: 0.9514285714285714,
    zA: -0.55,
    IAxx: 0.40942,
    IAxz: -0.07956,
    IAzz: 0.1722657142857143,
    uA: 0.02865952162808398,
    IAll: 0.1538973160142678,
    IAlx: 0.1611908396686719,
    IAlz: 0.3301214520762362,
    mu: 0.07459266794471793,
    SR: 0.4,
    SF: 0.8,
    ST: 1.2,
    SA: 2.599516852498716,
  };
  test.each(Object.entries(steps))('step %s', (name, value) => {
    near(whippleSums(whippleBenchmark)[name as keyof WhippleSums], value, 1e-13);
  });
});

describe('[WHP-2] eigenvalues of table 2', () => {
  // v, capsize, castering, weave Re, weave Im. At 7 m/s the transcribed castering …5262 should end in …5202.
  const table: readonly (readonly [number, number, number, number, number])[] = [
    [1, -3.13423125066578, -7.11008014637442, 3.5269617099007, 0.8077402751993],
    [2, -3.07158645641514, -8.67387984831735, 2.68234517512745, 1.68066296590675],
    [3, -2.63366137253667, -10.3510146724592, 1.70675605663975, 2.31582447384325],
    [4, -1.42944427361326, -12.1586142657645, 0.41325331521125, 3.07910818603206],
    [5, -0.32286642900409, -14.0783896927982, -0.77534188219585, 4.46486771378823],
    [6, -0.0040669007697, -16.0853712309803, -1.52644486584142, 5.87673060598709],
    [7, 0.10268170574766, -18.15788466125262, -2.13875644258362, 7.19525913329805],
    [8, 0.14327879765713, -20.27940894394569, -2.69348683581097, 8.46037971396931],
    [9, 0.15790184030917, -22.43788559040858, -3.21675402252485, 9.69377351531791],
    [10, 0.16105338653172, -24.62459635017404, -3.72016840437287, 10.90681139476287],
  ];
  test.each(table)('at %d m/s', (speed, capsize, castering, re, im) => {
    const modes = whippleModes(whippleEigenvalues(matrices, speed));
    // The transcriptions differ from the exact values by up to 6e-13.
    near(modes.capsize, capsize, 1e-11);
    near(modes.castering, castering, 1e-11);
    near(modes.weave[0].re, re, 1e-11);
    near(modes.weave[0].im, im, 1e-11);
    expect(modes.weave[1]).toEqual({ re: modes.weave[0].re, im: -modes.weave[0].im });
  });

  test('standing still: two pairs of opposite real roots', () => {
    const roots = whippleEigenvalues(matrices, 0);
    [5.53094371765393, 3.13164324790656, -3.13164324790656, -5.53094371765393].forEach((value, k) => {
      near(roots[k]!.re, value, 1e-11);
      expect(roots[k]!.im).toBe(0);
    });
  });

  test('castering at 7 m/s to forty digits, rounded to sixteen', () => {
    // Worked with forty digits by another hand; the double arithmetic keeps thirteen.
    near(whippleModes(whippleEigenvalues(matrices, 7)).castering, -18.15788466125202, 1e-12);
  });

  test('characteristic polynomial at 5 m/s', () => {
    const printed = [
      1744.737941310344, 5659.575132905006, 886.2080050595014, 298.1589007227142, 18.69107474387883,
    ];
    for (const [k, value] of printed.entries()) {
      // Sixteen printed digits; the constant term is a difference that costs three of them.
      near(characteristic(matrices, 5)[k], value, 1e-13 * 10 ** (k === 0 ? 2 : 0) * value);
    }
  });
});

describe('[WHP-3] speeds of the benchmark bicycle', () => {
  const speeds = whippleSpeeds(matrices);
  test('weave and capsize, published to 14 decimals', () => {
    near(speeds.weave, 4.29238253634111, 1e-11);
    near(speeds.capsize, 6.02426201538837, 1e-11);
  });
  test('the pair on the imaginary axis at the weave speed', () => {
    const [pair] = whippleModes(whippleEigenvalues(matrices, speeds.weave!)).weave;
    near(pair.re, 0, 1e-11);
    near(pair.im, 3.43503384866144, 1e-11);
  });
  test('double real root', () => {
    near(speeds.doubleRoot?.speed, 0.68428307889246, 1e-11);
    near(speeds.doubleRoot?.root, 3.7829040512932, 1e-11);
    // The eigenvalue itself is ill conditioned there: half the digits remain.
    const [first] = whippleEigenvalues(matrices, 0.68428307889246);
    near(first?.re, 3.7829040512932, 1e-6);
    near(first?.im, 0, 1e-6);
  });
  test('self-stable between the two', () => {
    expect(speeds.selfStable).toEqual([{ from: speeds.weave, to: speeds.capsize }]);
  });
});

describe('[WHP-4] a small motorcycle from its parts list', () => {
  // Worked by another hand with a general numeric library, printed to ten digits.
  const motorcycle = smallMotorcycle();
  const m = whippleMatrices(motorcycle);
  test('parameters', () => {
    const expected = {
      mB: 111,
      xB: 0.4168468468,
      zB: -0.7252252252,
      IBxx: 12.32801216,
      IBxz: -1.269337842,
      IBzz: 3.990778605,
      mH: 6,
      xH: 0.8432824823,
      zH: -0.5832361746,
      IHxx: 0.4344962595,
      IHxz: -0.1298250505,
      IHzz: 0.1392299983,
      c: 0.05620664871,
      IFxx: 0.0370075,
      IFyy: 0.071265,
    } as const;
    for (const [name, value] of Object.entries(expected))
      near(motorcycle[name as keyof typeof expected], value, Math.max(1, Math.abs(value)) * 1e-9);
  });
  test('matrices', () => {
    near(m.M[0][0], 73.67814066, 5e-9);
    near(m.M[0][1], 2.106678158, 5e-10);
    near(m.M[1][1], 0.2791248138, 5e-11);
    near(m.C1[0][1], 37.76939111, 5e-9);
    near(m.C1[1][0], -0.3621117589, 5e-11);
    near(m.C1[1][1], 2.139284727, 5e-10);
    near(m.K0[0][0], -86.09941705, 5e-9);
    near(m.K0[0][1], -3.298625067, 5e-10);
    near(m.K0[1][1], -1.341671686, 5e-10);
    near(m.K2[0][1], 79.30676952, 5e-9);
    near(m.K2[1][1], 3.145844486, 5e-10);
  });
  test.each([
    { spin: 0, weave: 5.801676631, capsize: 10.53309198 },
    { spin: 0.16, weave: 5.778491321, capsize: 10.81876109 },
    { spin: -0.16, weave: 5.825894766, capsize: 10.26891927 },
  ])('speeds with a rotor of $spin kg·m', ({ spin, weave, capsize }) => {
    const speeds = whippleSpeeds(whippleMatrices(motorcycle, spin));
    // The other hand searched the weave speed to about 1e-9.
    near(speeds.weave, weave, 1e-9);
    near(speeds.capsize, capsize, 5e-9);
  });
  test('eigenvalues', () => {
    const six = whippleModes(whippleEigenvalues(m, 6));
    near(six.castering, -25.246255, 5e-7);
    near(six.capsize, -3.726423, 5e-7);
    near(six.weave[0].re, -0.17452815, 5e-9);
    near(six.weave[0].im, 2.1101955, 5e-8);
    const ten = whippleModes(whippleEigenvalues(m, 10));
    near(ten.castering, -39.043762, 5e-7);
    near(ten.capsize, -0.044242489, 5e-9);
    near(ten.weave[0].re, -4.8907763, 5e-8);
    near(ten.weave[0].im, 3.4267784, 5e-8);
  });
});
