import type { AxleStrength, DriveShaftStrength, ShaftSolution, Strength } from '../../../strength/index.ts';
import type { Block } from '../../bookPages.ts';
import { type DrawingContext, inLine } from '../context.ts';
import { printed } from '../rideWords.ts';
import { caseText, partText, percentCell, recast, smallText } from './strengthWords.ts';

/** Nothing more is told by a longer life than that it is long [h]. */
const LONG_LIFE = 1e5;

/** Maxima, bearings, keys and the outboard bearing of a countershaft. */
export function shaftTables(
  context: DrawingContext,
  one: DriveShaftStrength,
  { rows, settings }: Strength,
): readonly Block[] {
  return [
    ...peakTable(context, one.solution, settings.shaftYield),
    {
      kind: 'table',
      columns: [
        { title: 'Bearing' },
        { title: 'Carries', align: 'right' },
        { title: 'Tilt', align: 'right' },
        { title: 'Tilt allowed', align: 'right' },
        { title: 'Number' },
        { title: `Life of the duty, low to high; ${settings.bearingLife} h asked for`, align: 'right' },
        { title: 'C0/P0', align: 'right' },
        { title: 'Speed used', align: 'right' },
      ],
      rows: one.bearings.map((bearing) => [
        partText(bearing.item),
        printed(context, bearing.radial, 'force', 1),
        `${(bearing.slope * 1000).toFixed(1)} mrad`,
        `${(bearing.slopeLimit * 1000).toFixed(0)} mrad`,
        bearing.designation ?? 'not told',
        bearing.hours ? lifeRange(bearing.hours) : '–',
        bearing.staticFactor === undefined ? '–' : bearing.staticFactor.toFixed(1),
        bearing.speedShare === undefined ? '–' : percentCell(bearing.speedShare),
      ]),
      size: 2.5,
    },
    ...keyTable(context, one, rows, settings.fatigueFactor),
    ...outboardTable(context, one),
    ...misalignmentNote(context, one),
  ];
}

const peakTable = (context: DrawingContext, solution: ShaftSolution, yielding: number): readonly Block[] => [
  {
    kind: 'table',
    columns: [
      { title: 'Largest' },
      { title: 'Value', align: 'right' },
      { title: 'Where, from the middle of the bike', align: 'right' },
    ],
    rows: [
      [
        'Bending moment',
        printed(context, solution.maxMoment.value, 'torque'),
        placeText(context, solution.maxMoment.at),
      ],
      [
        'Deflection',
        smallText(context, solution.maxDeflection.value),
        placeText(context, solution.maxDeflection.at),
      ],
      [
        `Stress, no notch (yield is ${(yielding / solution.maxStress.value).toFixed(1)} times it)`,
        printed(context, solution.maxStress.value, 'pressure', 1),
        placeText(context, solution.maxStress.at),
      ],
    ],
    size: 2.5,
  },
];

const placeText = (context: DrawingContext, y: number): string =>
  `${inLine(context, Math.abs(y), 1)} ${y < 0 ? 'right' : 'left'}`;

function keyTable(
  context: DrawingContext,
  { id, keyseats }: DriveShaftStrength,
  rows: Strength['rows'],
  wanted: number,
): readonly Block[] {
  if (keyseats.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Keyseat' },
        { title: `Fatigue factor, Goodman; ${wanted} asked for`, align: 'right' },
        { title: 'Key' },
        { title: 'Stress', align: 'right' },
        { title: 'Used', align: 'right' },
      ],
      rows: keyseats.map(({ item, factor }) => {
        const key = rows.find((row) => row.part === id && row.where.startsWith(`key of ${item},`));
        const said = factor.toFixed(2);
        return [
          partText(item),
          factor < wanted ? { text: said, weight: 'bold' as const, tone: 'accent' as const } : said,
          key ? recast(context, key.quantity) : '–',
          key ? printed(context, key.value, 'pressure', 1) : '–',
          key ? percentCell(key.utilization) : '–',
        ];
      }),
      size: 2.5,
    },
  ];
}

function outboardTable(context: DrawingContext, { outboard }: DriveShaftStrength): readonly Block[] {
  if (!outboard) return [];
  const { with: held, without, isThere } = outboard;
  const row = (what: string, print: (side: typeof held) => string) => [what, print(held), print(without)];
  return [
    {
      kind: 'heading',
      text: isThere ? 'What the outboard bearing brings' : 'What an outboard bearing would bring',
      level: 2,
    },
    {
      kind: 'table',
      columns: [
        { title: 'Largest' },
        { title: isThere ? 'With it, as built' : 'With it, tried', align: 'right' },
        { title: isThere ? 'Without' : 'Without, as built', align: 'right' },
      ],
      rows: [
        row('Bending moment', (side) => printed(context, side.maxMoment, 'torque')),
        row('Stress', (side) => printed(context, side.maxStress, 'pressure', 1)),
        row('Deflection', (side) => smallText(context, side.maxDeflection)),
        row('Tilt in a bearing', (side) => `${(side.maxSlope * 1000).toFixed(2)} mrad`),
        row('Load on a bearing', (side) => printed(context, side.maxReaction, 'force', 1)),
      ],
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: `${isThere ? '' : 'The bike has none; one was tried at the end of its shaft, beyond the outermost drive. '}It is one more plate to line up: a bearing out of line loads the others.`,
      size: 2.6,
    },
  ];
}

function misalignmentNote(context: DrawingContext, { misalignment }: DriveShaftStrength): readonly Block[] {
  if (!misalignment) return [];
  const { offset, item, loaded, reaction, stress } = misalignment;
  return [
    {
      kind: 'paragraph',
      text: `Out of line: ${partText(item)} set ${inLine(context, offset, 0.1)} off the line of the others adds ${printed(context, reaction, 'force', 10)} at ${partText(loaded)} and ${printed(context, stress, 'pressure', 1)} in the shaft before anything pulls, on seats as stiff as the build file tells. Real plates give, and so take less. The largest of all its bearings, by common practice of fit-up.`,
      size: 2.8,
    },
  ];
}

/** Maxima, clamped stress, fatigue, threads and wheel bearings of an axle. */
export const axleTables = (
  context: DrawingContext,
  one: AxleStrength,
  { settings, wheelBearings, cases, rows }: Strength,
): readonly Block[] => [
  ...peakTable(context, one.solution, settings.shaftYield),
  ...wheelBearingTable(context, { one, settings, wheelBearings, cases }),
  ...threadNote(context, one, rows),
  {
    kind: 'table',
    columns: [{ title: 'Further' }, { title: 'Value', align: 'right' }],
    rows: [
      [
        'Largest stress if its nuts clamp it without give; the truth lies between',
        printed(context, one.clampedStress, 'pressure', 1),
      ],
      ...(one.fatigue === undefined
        ? []
        : [
            [
              `Fatigue factor of daily bumps, Goodman; ${settings.fatigueFactor} asked for`,
              Number.isFinite(one.fatigue) ? one.fatigue.toFixed(2) : 'no limit',
            ],
          ]),
    ],
    size: 2.5,
  },
];

function wheelBearingTable(
  context: DrawingContext,
  {
    one,
    settings,
    wheelBearings,
    cases,
  }: Pick<Strength, 'settings' | 'wheelBearings' | 'cases'> & { one: AxleStrength },
): readonly Block[] {
  const found = wheelBearings.find(({ wheel }) => `${wheel}Axle` === one.id);
  if (!found) return [];
  const { designation, side, meanLoad, hours, staticFactor, staticCase } = found;
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Bearing of the hub, the worse' },
        { title: 'Mean load', align: 'right' },
        { title: `Life, low to high; ${settings.bearingLife} h asked for`, align: 'right' },
        { title: 'Least C0/P0', align: 'right' },
        { title: 'In' },
      ],
      rows: [
        [
          `${designation}, ${side}`,
          printed(context, meanLoad, 'force', 1),
          lifeRange(hours),
          staticFactor.toFixed(1),
          caseText(cases, staticCase),
        ],
      ],
      size: 2.5,
    },
  ];
}

const lifeRange = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  [...new Set([low, high].map(hoursText))].join(' to ');

const hoursText = (value: number): string =>
  value > LONG_LIFE ? 'over 100000 h' : `${Number(value.toPrecision(2))} h`;

function threadNote(
  context: DrawingContext,
  { id, threads }: AxleStrength,
  rows: Strength['rows'],
): readonly Block[] {
  return threads.map((thread): Block => {
    const row = rows.find(
      ({ part, check, place }) => part === id && check === 'axleThread' && place === thread.side,
    );
    const factor = row ? ` At its root the fatigue factor under daily bumps is ${row.value.toFixed(2)}.` : '';
    return {
      kind: 'paragraph',
      text: `The thread on the ${thread.side} runs ${inLine(context, thread.reach, 0.1)} into ${partText(thread.holder)}, which then bears on crests and not on the full axle.${factor}`,
      size: 2.8,
    };
  });
}
