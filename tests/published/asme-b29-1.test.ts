/**
 * Sprockets against ASME B29.1 as reprinted in Machinery's Handbook and public tables. Rows marked [derived] are
 * the standard's formulas worked separately with a general numeric library.
 */
import { describe, expect, test } from 'vitest';
import {
  chordalVariation,
  outsideDiameter,
  pitchDiameter,
  sprocketDimensions,
  toothForm,
} from '../../src/core/driveline/index.ts';
import { inches, type Length, mm } from '../../src/core/quantity/index.ts';
import { type Chain, findChain } from '../../src/core/standards/index.ts';

const INCH = 0.0254;
/** Half of the last digit of a value printed to four decimals, and a little for its own rounding. */
const FOUR_DECIMALS = 0.000051;

function chainNamed(name: string): Chain {
  const found = findChain(name);
  if (!found.ok) throw new Error(`no chain ${name}`);
  return found.value;
}

/** N, PD and OD (0.6 form) at a pitch of one inch [derived]. */
const FACTORS: readonly (readonly [number, number, number])[] = [
  [9, 2.9238, 3.3475],
  [10, 3.2361, 3.6777],
  [11, 3.5495, 4.0057],
  [12, 3.8637, 4.3321],
  [13, 4.1786, 4.6572],
  [14, 4.494, 4.9813],
  [15, 4.8097, 5.3046],
  [16, 5.1258, 5.6273],
  [17, 5.4422, 5.9495],
  [18, 5.7588, 6.2713],
  [19, 6.0755, 6.5927],
  [20, 6.3925, 6.9138],
  [21, 6.7095, 7.2346],
  [25, 7.9787, 8.5158],
  [30, 9.5668, 10.1144],
  [35, 11.1558, 11.7109],
  [40, 12.7455, 13.3062],
  [45, 14.3356, 14.9007],
  [54, 17.1984, 17.7693],
  [60, 19.1073, 19.6811],
  [72, 22.9256, 23.5038],
];

describe('factors at a pitch of one inch', () => {
  test.each(FACTORS)('%i teeth', (teeth, pitchFactor, outsideFactor) => {
    expect(Math.abs(pitchDiameter(inches(1), teeth) / INCH - pitchFactor)).toBeLessThan(FOUR_DECIMALS);
    expect(Math.abs(outsideDiameter(inches(1), teeth) / INCH - outsideFactor)).toBeLessThan(FOUR_DECIMALS);
  });

  test('a printed page for 25 teeth of 38.1 mm pitch: PD 303.988, OD 324.46 mm', () => {
    // The page carries its factor with a slip in the last digit (7.9789 for 7.9787), hence 0.01 mm.
    expect(Math.abs(pitchDiameter(mm(38.1), 25) * 1000 - 303.988)).toBeLessThan(0.01);
    expect(Math.abs(outsideDiameter(mm(38.1), 25) * 1000 - 324.46)).toBeLessThan(0.01);
  });

  test('Bhandari example 14.4: 19.05 mm pitch, 17 and 34 teeth', () => {
    expect(pitchDiameter(mm(19.05), 17) * 1000).toBeCloseTo(103.673741, 6);
    expect(pitchDiameter(mm(19.05), 34) * 1000).toBeCloseTo(206.462975, 6);
  });
});

/** chain, N, PD, BD, CD, OD, MHD in the unit of the row [derived]. */
const CASES: readonly (readonly [string, number, number, number, number, number, number, number])[] = [
  ['#35', 11, 1.331, 1.131, 1.1175, 1.5021, 0.8721, INCH],
  ['#35', 60, 7.1652, 6.9652, 6.9652, 7.3804, 6.7504, INCH],
  ['#40', 17, 2.7211, 2.4091, 2.3975, 2.9748, 2.1448, INCH],
  ['#41', 12, 1.9319, 1.6259, 1.6259, 2.166, 1.336, INCH],
  ['#50', 13, 2.6116, 2.2116, 2.1926, 2.9107, 1.8807, INCH],
  ['420', 14, 57.073, 49.303, 49.303, 63.262, 42.18, 0.001],
  ['428', 15, 61.084, 52.574, 52.239, 67.369, 46.29, 0.001],
];

test.each(CASES)('all diameters of %s, %i teeth', (name, teeth, pd, bd, cd, od, mhd, unit) => {
  const found = sprocketDimensions(chainNamed(name), teeth);
  // Four printed decimals of an inch, three of a millimeter (hubs in mm: two).
  const printed = unit === INCH ? FOUR_DECIMALS : 0.00051;
  expect(Math.abs(found.pitchDiameter / unit - pd)).toBeLessThan(printed);
  expect(Math.abs(found.rootDiameter / unit - bd)).toBeLessThan(printed);
  expect(Math.abs(found.caliperDiameter / unit - cd)).toBeLessThan(printed);
  expect(Math.abs(found.outsideDiameter / unit - od)).toBeLessThan(printed);
  expect(Math.abs(found.largestHub / unit - mhd)).toBeLessThan(unit === INCH ? FOUR_DECIMALS : 0.0051);
});

/** Machinery's Handbook 31st ed., p. 2631, table 10: largest hub diameters in 64ths; pitch in, N, whole, 64ths. */
const HUBS: readonly (readonly [number, number, number, number])[] = [
  [0.375, 11, 0, 55],
  [0.375, 12, 0, 63],
  [0.375, 13, 1, 7],
  [0.375, 14, 1, 15],
  [0.375, 15, 1, 23],
  [0.5, 11, 1, 11],
  [0.5, 12, 1, 21],
  [0.5, 13, 1, 32],
  [0.5, 14, 1, 42],
  [0.5, 15, 1, 52],
  [0.5, 16, 1, 63],
  [0.5, 17, 2, 9],
  [0.625, 11, 1, 30],
  [0.625, 12, 1, 43],
  [0.625, 13, 1, 56],
  [0.75, 11, 1, 49],
  [0.75, 12, 2, 1],
  [1, 11, 2, 24],
  [1, 12, 2, 45],
];

test.each(HUBS)(
  'largest hub of the handbook table: pitch %f in, %i teeth',
  (pitch, teeth, whole, sixtyFourths) => {
    const chain = {
      pitch: inches(pitch),
      rollerDiameter: inches(0.6 * pitch),
      innerWidth: inches(pitch / 2),
    };
    const hub = sprocketDimensions(chain, teeth).largestHub / INCH;
    const table = whole + sixtyFourths / 64;
    expect(Math.floor(64 * hub + 0.1) / 64).toBe(table);
    expect(Math.abs(hub - table)).toBeLessThan(1 / 64);
  },
);

/** Tooth flange thickness, table of a public problem set; in, three decimals. */
test.each([
  ['#25', 0.11],
  ['#35', 0.168],
  ['#40', 0.284],
  ['#41', 0.227],
  ['#50', 0.343],
  ['#60', 0.459],
])('tooth flange of %s: %f in', (name, thickness) => {
  // The table is rounded to 0.001 in; W of #35 is 3/16 or 0.188 in, a difference of 0.0005 in.
  expect(Math.abs(sprocketDimensions(chainNamed(name), 17).flangeThickness / INCH - thickness)).toBeLessThan(
    0.00101,
  );
});

/** Ds, A, B, M, T, E, xy, yz, F, H, S, diameter over points [derived], in inches and degrees. */
const FORMS: readonly (readonly [number, number, number, readonly number[]])[] = [
  [
    0.375,
    0.2,
    11,
    [0.204, 40.4545, 12.9091, 0.12175, 0.10382, 0.262, 0.05891, 0.01855, 0.16864, 0.14101, 0.21963, 1.5592],
  ],
  [
    0.5,
    0.312,
    17,
    [
      0.31656, 38.5294, 14.7059, 0.19526, 0.15548, 0.40788, 0.1044, 0.03664, 0.25874, 0.17903, 0.27864,
      3.0328,
    ],
  ],
  [
    0.5,
    0.306,
    12,
    [0.31053, 40, 13.3333, 0.18753, 0.15735, 0.40007, 0.09289, 0.03018, 0.25769, 0.18594, 0.28961, 2.2379],
  ],
  [
    0.625,
    0.4,
    13,
    [0.405, 39.6154, 13.6923, 0.24651, 0.20404, 0.5225, 0.12457, 0.04142, 0.33601, 0.22726, 0.35781, 2.9903],
  ],
  [
    0.375,
    0.2,
    60,
    [0.204, 36, 17.0667, 0.12944, 0.09405, 0.262, 0.07775, 0.02991, 0.1602, 0.13079, 0.19409, 7.417],
  ],
  [
    1,
    0.625,
    20,
    [0.63112, 38, 15.2, 0.39401, 0.30783, 0.81556, 0.21573, 0.07762, 0.51669, 0.35545, 0.54945, 7.0246],
  ],
];

test.each(FORMS)('tooth form, pitch %f in, roller %f in, %i teeth', (pitch, roller, teeth, row) => {
  const form = toothForm({ pitch: inches(pitch), rollerDiameter: inches(roller) }, teeth);
  const inInches = (length: Length) => length / INCH;
  const degree = 180 / Math.PI;
  const found = [
    2 * inInches(form.seatingRadius),
    form.seatingAngle * degree,
    form.workingAngle * degree,
    inInches(form.workingOffset.m),
    inInches(form.workingOffset.t),
    inInches(form.workingRadius),
    inInches(form.workingChord),
    inInches(form.flat),
    inInches(form.toppingRadius),
    inInches(form.pointHeight),
    inInches(form.pointRise),
    inInches(form.pointDiameter),
  ];
  for (const [index, value] of row.entries()) {
    // Angles and the last column have four decimals; one cell of it (2.9903 for 2.99025) was rounded up.
    const printed = [1, 2].includes(index) ? 0.000051 : index === 11 ? 0.00006 : 0.0000051;
    expect(Math.abs((found[index] ?? Number.NaN) - value), `column ${index}`).toBeLessThanOrEqual(printed);
  }
});

/** `iso-606`, limits from memory. */
test('ISO 606 limits of 08A with 17 teeth hold the same sprocket (limits from memory)', () => {
  const chain = chainNamed('08A');
  const dimensions = sprocketDimensions(chain, 17);
  const form = toothForm(chain, 17);
  expect(dimensions.outsideDiameter * 1000).toBeGreaterThan(72.701);
  expect(dimensions.outsideDiameter * 1000).toBeLessThan(77.071);
  // 7.92 mm in ISO 606, 0.312 in (7.925 mm) in B29.1.
  expect(Math.abs(dimensions.rootDiameter * 1000 - 61.196)).toBeLessThan(0.01);
  expect(form.seatingRadius * 1000).toBeGreaterThan(3.9996);
  expect(form.seatingRadius * 1000).toBeLessThan(4.1371);
});

/** Chordal speed variation in percent of the largest speed, 1 − cos(180°/N) [derived], three decimals. */
test.each([
  [9, 6.031],
  [10, 4.894],
  [11, 4.051],
  [12, 3.407],
  [13, 2.906],
  [15, 2.185],
  [17, 1.703],
  [19, 1.364],
  [21, 1.117],
  [25, 0.789],
])('chordal variation of %i teeth: %f percent', (teeth, percent) => {
  expect(Math.abs(100 * chordalVariation(teeth) - percent)).toBeLessThan(0.00051);
});
