import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeIssue, type Issue, type QuantityKind, type ReadOptions, readQuantity } from './index.ts';

function read(text: string, kind: QuantityKind, options?: ReadOptions): number {
  const outcome = readQuantity(text, kind, options);
  if (!outcome.ok) throw new Error(describeIssue(outcome.issues[0]));
  return outcome.value;
}

function issueOf(text: string, kind: QuantityKind): Issue {
  const outcome = readQuantity(text, kind);
  if (outcome.ok) throw new Error(`"${text}" was read as ${outcome.value}`);
  return outcome.issues[0];
}

function refusal(text: string, kind: QuantityKind = 'length') {
  const issue = issueOf(text, kind);
  if (issue.code !== 'unreadable') throw new Error(`"${text}" gave ${issue.code}`);
  return issue;
}

/** Doubles carry 15 digits; a few roundings are allowed. */
const closeTo = (actual: number, wanted: number) =>
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-14 * Math.max(1e-6, Math.abs(wanted)));

describe('lengths as builders write them', () => {
  // Wanted values in inches by hand; 1 in = 25.4 mm exactly.
  test.each([
    ['-8 7/16 in - 0.004', -8.4415],
    ['-8 7/16 in + 0.004', -8.4335],
    ['0 in - 0.004', -0.004],
    ['8 3/16 in', 8.1875],
    ['8-3/16"', 8.1875],
    ['8 - 3/16 in', 8.1875],
    ['8–3/16”', 8.1875],
    ['8 ³⁄₁₆ in', 8.1875],
    ['8³⁄₁₆″', 8.1875],
    ['1 1/2"', 1.5],
    ["1 1/2''", 1.5],
    ['1½"', 1.5],
    ['1 ½ in.', 1.5],
    ['⅜ in', 0.375],
    ['⅞”', 0.875],
    ['19/16 in', 1.1875],
    ['.55"', 0.55],
    ['0.55 inch', 0.55],
    ['5. in', 5],
    [`5'3"`, 63],
    ["5'3", 63],
    ['5′ 3″', 63],
    ['5’3”', 63],
    [`5'-3 1/2"`, 63.5],
    ['5 ft 3 1/2 in', 63.5],
    ['5 ft. 3.5 in.', 63.5],
    [`5' 1/2"`, 60.5],
    ["3'", 36],
    ['2 feet', 24],
    ['-1 1/2 in', -1.5],
    ['− 1/2 in', -0.5],
    [`-5'3"`, -63],
    ['+2 in', 2],
    ['8 7/16 in + 0.004', 8.4415],
    ['8 7/16 in - 0.004', 8.4335],
    ['5 thou', 0.005],
    ['12 IN', 12],
  ])('%s', (text, wanted) => closeTo(read(text, 'length'), wanted * 0.0254));

  test.each([
    ['12mm', 12],
    ['12 mm', 12],
    ['12 MM', 12],
    ['12-mm', 12],
    ['\u00a012\u2009mm ', 12],
    ['１２ mm', 12],
    ['1.2 m', 1200],
    ['1.2 M', 1200],
    ['30 cm', 300],
    ['50 µm', 0.05],
    ['1e3 mm', 1000],
    ['-0.5 mm', -0.5],
    ['0 mm', 0],
    ['-0 mm', 0],
  ])('%s', (text, wanted) => closeTo(read(text, 'length'), wanted / 1000));

  test('a negative zero does not appear', () => expect(Object.is(read('-0 mm', 'length'), 0)).toBe(true));
});

describe('gauge numbers', () => {
  // Sheet: 1893 weights over 41.82 lb/ft² per inch (40 oz/ft² for 16); tube: Birmingham gage; see gauge.test.ts.
  test.each([
    ['16 ga', {}, 0.0598],
    ['16ga', {}, 0.0598],
    ['16 gauge', {}, 0.0598],
    ['16 ga sheet', {}, 0.0598],
    ['16 GA tube', {}, 0.065],
    ['16 ga. tube', {}, 0.065],
    ['16 BWG', {}, 0.065],
    ['16 ga', { gauge: 'tube-wall' }, 0.065],
    ['16 ga sheet', { gauge: 'tube-wall' }, 0.0598],
    ['16 ga aluminum', {}, 0.0508],
  ] as const)('%s %o', (text, options, wanted) => closeTo(read(text, 'length', options), wanted * 0.0254));

  test('of a stock not known, not made, negative or broken are refused', () => {
    expect(refusal('16 ga stainless').wanted).toContain('tube');
    expect(refusal('16 bwg sheet').code).toBe('unreadable');
    expect(refusal('-16 ga').wanted).toContain('above 0');
    expect(refusal('16.5 ga').code).toBe('unreadable');
    expect(issueOf('99 ga', 'length')).toMatchObject({
      code: 'not-in-table',
      nearest: ['38 ga (0.006 in)', '37 ga (0.0064 in)'],
    });
    expect(refusal('16 ga', 'mass').code).toBe('unreadable');
  });
});

// NIST SP 811 (2008), appendix B.8/B.9: factors marked exact there to all digits, others to the digits printed.
// Those of ASTM E380 (1982) were compared with a public transcription of its table and have the same digits;
// PS, rpm, lb·ft² and lb·in² are as remembered from SP 811.
describe('factors against NIST SP 811, appendix B', () => {
  test.each([
    ['1 in', 'length', 2.54e-2],
    ['1 ft', 'length', 3.048e-1],
    ['1 yd', 'length', 9.144e-1],
    ['1 mi', 'length', 1.609344e3],
    ['1 thou', 'length', 2.54e-5],
    ['1 lb', 'mass', 4.5359237e-1],
    ['1 kgf', 'force', 9.80665],
    ['1 bar', 'pressure', 1e5],
    ['1 mph', 'speed', 4.4704e-1],
    ['1 ft/s', 'speed', 3.048e-1],
    ['1 ft/min', 'speed', 5.08e-3],
    ['1 in²', 'area', 6.4516e-4],
    ['1 ft²', 'area', 9.290304e-2],
    ['1 g/cm³', 'density', 1e3],
  ] as const)('%s of %s is exact', (text, kind, wanted) => closeTo(read(text, kind), wanted));

  test.each([
    ['1 oz', 'mass', 2.834952e-2],
    ['1 lbf', 'force', 4.448222],
    ['1 lb-ft', 'torque', 1.355818],
    ['1 in-lb', 'torque', 1.129848e-1],
    ['1 in-oz', 'torque', 7.061552e-3],
    ['1 kgf·m', 'torque', 9.80665],
    ['1 psi', 'pressure', 6.894757e3],
    ['1 ksi', 'pressure', 6.894757e6],
    ['1 hp', 'power', 7.456999e2],
    ['1 PS', 'power', 7.354988e2],
    ['1 km/h', 'speed', 2.777778e-1],
    ['1 rpm', 'angularSpeed', 1.047198e-1],
    ['1°', 'angle', 1.745329e-2],
    ["1'", 'angle', 2.908882e-4],
    ['1 lb/in³', 'density', 2.76799e4],
    ['1 lb/ft³', 'density', 1.601846e1],
    ['1 lb·ft²', 'inertia', 4.214011e-2],
    ['1 lb·in²', 'inertia', 2.926397e-4],
    ['1 lbf/in', 'stiffness', 1.751268e2],
    ['1 lb/ft', 'lineMass', 1.488164],
    ['1 lb/in', 'lineMass', 1.785797e1],
  ] as const)('%s of %s to the digits printed', (text, kind, wanted) => {
    // Half a unit of the last of seven printed digits is at most 5e-7 of the value.
    expect(Math.abs(read(text, kind) / wanted - 1)).toBeLessThanOrEqual(5e-7);
  });
});

describe('spellings', () => {
  test.each([
    [['24°', '24 deg', '24 degrees', '24º', '24 ˚', "24° 0'"], 'angle', (24 * Math.PI) / 180],
    [["24°30'", `24° 30' 0"`, '24.5 deg', '24° 30′'], 'angle', (24.5 * Math.PI) / 180],
    [['1.5 rad', '1500 mrad'], 'angle', 1.5],
    [
      ['11 N·m', '11 Nm', '11Nm', '11 N-m', '11 N m', '11 N*m', '11 N.m', '11 N⋅m', '11000 N·mm', '11 NM'],
      'torque',
      11,
    ],
    [
      [
        '8 lb-ft',
        '8 ft-lb',
        '8 ft lb',
        '8 ft.-lb.',
        '8 lbf·ft',
        '8 ft·lbf',
        '8 ftlb',
        '8 LB-FT',
        '96 in-lb',
        '96 lb-in',
        '96 in lbs',
      ],
      'torque',
      8 * 0.3048 * 0.45359237 * 9.80665,
    ],
    [['5.5 hp', '5.5hp', '5 1/2 HP', '5.5 horsepower'], 'power', 5.5 * 550 * 0.3048 * 0.45359237 * 9.80665],
    [['4.1 kW', '4.1 KW', '4100 W', '4100 watts'], 'power', 4100],
    [['2.2 bar', '220 kPa', '0.22 MPa', '220000 Pa', '0.22 N/mm²', '0.22 N / mm^2'], 'pressure', 220000],
    [['45 km/h', '45 kph', '12.5 m/s', '45 KM/H'], 'speed', 12.5],
    [['2 kg', '2000 g', '2 kgs', '2 Kg'], 'mass', 2],
    [['1 lb', '1 lbs', '16 oz', '1 pound'], 'mass', 0.45359237],
    [['300 N', '0.3 kN', '300 newtons'], 'force', 300],
    [['60 rpm', '60 r/min', '60 1/min', '1 rev/s', '60 RPM'], 'angularSpeed', 2 * Math.PI],
    [['0.15', '15 %', '15%', '3/20', '3:20', '.15'], 'ratio', 0.15],
    [['6', '6:1', '72:12', '6.0 : 1'], 'ratio', 6],
    [['12', '12T', '12 teeth', '12 t'], 'count', 12],
    [['2 kg·m²', '2 kg m^2', '2 kgm2', '2e6 kg·mm²'], 'inertia', 2],
    [['12 N/mm', '12 kN/m', '12000 N/m'], 'stiffness', 12000],
    [['3 cm²', '300 mm²', '300 mm2', '300 sq mm', '300 sq. mm'], 'area', 3e-4],
  ] as const)('%o', (texts, kind, wanted) => {
    for (const text of texts) closeTo(read(text, kind), wanted);
  });
});

describe('what cannot be read', () => {
  test.each([
    ['12 kg', 'length', /^a length in mm, in, m, cm, ft \("kg" measures a mass\)$/, '12 mm or 1 1/2 in'],
    ['10 lb', 'force', /"lb" measures a mass/, '10 lbf'],
    ['10 kg', 'force', /"kg" measures a mass/, '10 kgf'],
    ['12 mm²', 'length', /"mm2" measures an area/, '12 mm'],
    ['6 mm', 'ratio', /"mm" measures a length/, /15 %/],
    ['1/0', 'length', /denominator above 0/, /mm/],
    ['1 1/0 in', 'length', /denominator above 0/, /mm/],
    ['3..2', 'length', /^a length$/, '12 mm or 1 1/2 in'],
    ['3..2 mm', 'length', /^a length$/, '12 mm or 1 1/2 in'],
    ['1.2.3 mm', 'length', /^a length$/, /mm/],
    ['12 mn', 'length', /^a length in/, '12 mm'],
    ['8 3/16 inc', 'length', /^a length in/, '8 3/16 in'],
    ['8 -3/16 in', 'length', /after a space or a hyphen/, '8 3/16 in'],
    [`5'8 -3/16"`, 'length', /after a space or a hyphen/, `5'8 3/16"`],
    [`5'13"`, 'length', /inches below 12/, `6'1"`],
    [`5' 12"`, 'length', /inches below 12/, `6'0"`],
    [`5'12 1/2"`, 'length', /inches below 12/, '12 mm or 1 1/2 in'],
    ['3600 rmp', 'angularSpeed', /^a shaft speed in/, '3600 rpm'],
    ['1 mPa', 'pressure', /^a pressure or stress in/, '1 MPa'],
    ['', 'length', /^a length$/, /mm/],
    ['  \t', 'angle', /^an angle$/, /24/],
    ['12', 'length', /with its unit/, '12 mm or 12 in'],
    ['24', 'angle', /with its unit/, '24°'],
    ['NaN', 'length', /^a length$/, /mm/],
    ['NaN mm', 'length', /^a length$/, /mm/],
    ['Infinity mm', 'length', /^a length$/, /mm/],
    ['1e999 mm', 'length', /power of ten/, /mm/],
    ['1e-999 mm', 'length', /power of ten/, /mm/],
    ['1e10 mm', 'length', /power of ten/, /mm/],
    ['1e mm', 'length', /a length/, /mm/],
    ['9999999999999999 mm', 'length', /million million/, /mm/],
    ['1,5 mm', 'length', /decimal point, not a comma/, '1.5 mm'],
    ['−1,5 mm', 'length', /decimal point, not a comma/, '-1.5 mm'],
    [',5 in', 'length', /decimal point, not a comma/, '.5 in'],
    ['1,200 mm', 'length', /decimal point, not a comma/, '1.200 mm or 1200 mm'],
    ['1,200,000 mm', 'length', /decimal point, not a comma/, /mm/],
    ['8 19/16 in', 'length', /fraction below 1/, /mm/],
    ['1 1/2 1/4 in', 'length', /a length/, /mm/],
    ['1.5 1/2 in', 'length', /a length/, /mm/],
    ['3/16/2 in', 'length', /a length/, /mm/],
    ['--3 mm', 'length', /a length/, /mm/],
    ['5 ft 3', 'length', /a length/, /mm/],
    ['8-10 mm', 'length', /a length/, /mm/],
    ['12 .mm', 'length', /a length/, /mm/],
    ['12 m m', 'length', /a length/, /mm/],
    ['12 mm-', 'length', /a length/, /mm/],
    ['mm', 'length', /^a length$/, /mm/],
    ['0x10 mm', 'length', /a length/, /mm/],
    ['6:0', 'ratio', /second number above 0/, /6:1/],
    ['12.5', 'count', /^a whole number$/, '12'],
    ['12 mm', 'count', /"mm" measures a length/, '12'],
  ] as const)('"%s" as %s', (text, kind, wanted, example) => {
    const issue = refusal(text, kind);
    expect(issue.given).toBe(text.trim() === '' ? text : text.trim());
    expect(issue.wanted).toMatch(wanted);
    if (typeof example === 'string') expect(issue.example).toBe(example);
    else expect(issue.example).toMatch(example);
  });

  test('a text of absurd length is refused at once and shown shortened', () => {
    const issue = refusal(`${'9'.repeat(1_000_000)} mm`);
    expect(issue.given).toHaveLength(65);
    expect(issue.wanted).toContain('64 characters');
  });

  test('every example given is itself readable', () => {
    const kinds: QuantityKind[] = [
      'length',
      'angle',
      'mass',
      'force',
      'torque',
      'pressure',
      'power',
      'speed',
      'angularSpeed',
      'area',
      'density',
      'inertia',
      'stiffness',
      'lineMass',
      'ratio',
      'count',
    ];
    for (const kind of kinds)
      for (const text of ['', '12 mn', '1,5', 'x', '1/0', '7 lb', '7 kg', '7 °', "7 ' ' '", '12.']) {
        const outcome = readQuantity(text, kind);
        if (outcome.ok) continue;
        const [issue] = outcome.issues;
        if (issue.code !== 'unreadable') throw new Error(issue.code);
        for (const example of issue.example.split(/, | or /))
          expect(readQuantity(example, kind), `${kind}: ${example}`).toMatchObject({ ok: true });
      }
  });
});

describe('any text at all', () => {
  const kind = fc.constantFrom<QuantityKind>(
    'length',
    'angle',
    'force',
    'torque',
    'pressure',
    'ratio',
    'count',
    'inertia',
  );
  const piece = fc.constantFrom(
    '1',
    '0',
    '16',
    '.',
    ',',
    '/',
    ' ',
    '-',
    '+',
    '"',
    "'",
    '°',
    'mm',
    'in',
    'ft',
    'ga',
    'tube',
    'e',
    'E9',
    'lb',
    'N',
    '·',
    '%',
    ':',
    '½',
    '⁄',
    '²',
    '−',
    'NaN',
  );
  const likely = fc.tuple(
    fc.constantFrom('', '-', '−', '+'),
    fc.constantFrom('12', '1 1/2', '.5', '3/4', '1e3', '8-3/16', '1½', '1/0', '0', '6:1', '007', '1,5'),
    fc.constantFrom('', ' ', '-', ' '),
    fc.constantFrom('mm', '"', '°', 'N·m', 'ft', 'ga', 'ga tube', 'lb', '%', '', 'T', 'bar', 'mn'),
  );
  const text = fc.oneof(
    likely.map((pieces) => pieces.join('')),
    fc.string({ maxLength: 80, unit: 'binary' }),
    fc.string({ maxLength: 30 }),
    fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join('')),
  );

  test('is read as a finite number or refused with an example, never an exception', () => {
    let taken = 0;
    fc.assert(
      fc.property(text, kind, (given, of) => {
        const outcome = readQuantity(given, of);
        if (outcome.ok) {
          taken++;
          expect(Number.isFinite(outcome.value)).toBe(true);
        } else {
          const [issue] = outcome.issues;
          const said = issue.code === 'unreadable' ? issue.wanted + issue.example : describeIssue(issue);
          expect(said).not.toMatch(/undefined|NaN|Infinity|\[object/);
        }
      }),
      { numRuns: 20_000, seed: 811 },
    );
    // The generator must reach the good paths too, or this test would prove nothing.
    expect(taken).toBeGreaterThan(100);
  });
});
