import type { Assumption, ClutchAnswers, SpeedLimit, SteepestHill } from '../../../ride/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import type { DrawingContext } from '../context.ts';
import {
  areaText,
  gradeText,
  heatText,
  printed,
  quantityCells,
  quantityColumns,
  riseText,
  wayText,
} from '../rideWords.ts';
import { forceChart, type Going, runCharts } from './goingCharts.ts';

type Row = readonly [string, string];

export const topLimits: Readonly<Record<SpeedLimit, string>> = {
  resistance: 'drag and rolling',
  'engine-speed': 'engine speed',
  'force-drop': 'less pull after a switch of the drive',
  'wheel-lift': 'front wheel lifts',
  grip: 'grip of the rear tire',
  'no-launch': 'does not move off',
};

export const hillLimits: Readonly<Record<SteepestHill['limitedBy'], string>> = {
  engine: 'pull',
  grip: 'grip',
  'tip-back': 'tips back',
};

/** Pull, run, speeds, hills and clutch. */
export function goingPages(context: DrawingContext, going: Going): readonly DraftSheet[] {
  const { ride } = going;
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'How it goes', level: 1 },
    {
      kind: 'paragraph',
      text: `Worked out, not measured: ${printed(context, ride.launch.road.mass, 'mass', 0.1)} with rider, full throttle. What the build file does not tell was assumed; see the end.`,
      size: 2.8,
    },
    forceChart(context, going),
    ...runCharts(context, going),
    { kind: 'table', columns: [{ title: 'What' }, { title: 'Value' }], rows: figureRows(context, going) },
    ...timesTable(context, going),
    ...clutchBlocks(context, going),
    { kind: 'heading', text: 'Assumed for the ride', level: 3 },
    assumptionTable(context, ride.assumptions),
  ];
  return flowPages({
    id: 'ride-going',
    title: 'How it goes',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

function figureRows(context: DrawingContext, going: Going): readonly Row[] {
  const { ride, answers } = going;
  const { hill, perThousand, torqueForHill } = answers;
  const speed = (value: number): string => printed(context, value, 'speed');
  const same = perThousand.low === perThousand.high;
  return [
    ['Top speed on the level, and what ends it', topText(context, going)],
    [
      'Road speed at 1000 rpm of the engine',
      same
        ? speed(perThousand.low)
        : `${speed(perThousand.low)} in the lowest ratio, ${speed(perThousand.high)} in the highest`,
    ],
    [
      'Steepest hill from standstill, and what ends it',
      hill.steepest.grade > 0
        ? `${gradeText(hill.steepest.grade)}, ${hillLimits[hill.steepest.limitedBy]}`
        : 'none: the pull does not overcome the level',
    ],
    [
      `Engine torque that the ${gradeText(ride.use.grade)} hill asks`,
      printed(context, torqueForHill, 'torque'),
    ],
    ...(hill.standingHeat > 0
      ? [
          [
            'Heat in clutch or belt while held on the steepest hill',
            printed(context, hill.standingHeat, 'power'),
          ] as const,
        ]
      : []),
  ];
}

function topText(context: DrawingContext, { ride, answers }: Going): string {
  const { speed, limitedBy } = answers.launch.top;
  if (limitedBy === 'no-launch') return 'none: it does not move off';
  const { hasGovernor } = ride.launch.engine;
  const ends =
    limitedBy === 'engine-speed'
      ? hasGovernor
        ? 'the governor'
        : 'the end of the torque curve'
      : topLimits[limitedBy];
  return `${printed(context, speed, 'speed')}, ${ends}`;
}

function timesTable(context: DrawingContext, { answers }: Going): readonly Block[] {
  const { times, end } = answers.launch;
  const rows = [...times, ...(end.time > 0 ? [end] : [])];
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        ...quantityColumns(context, 'From standstill to', 'speed'),
        { title: 'Time s', align: 'right' },
        { title: 'Distance', align: 'right' },
      ],
      rows: rows.map((mark) => [
        ...quantityCells(context, mark.speed, 'speed'),
        mark.time.toFixed(1),
        wayText(context, mark.distance),
      ]),
    },
  ];
}

function clutchBlocks(context: DrawingContext, { ride, answers }: Going): readonly Block[] {
  const { clutch, launch } = answers;
  if (!clutch) return [];
  const speed = (value: number): string => printed(context, value, 'speed');
  const rise = (value: number | undefined): string =>
    value === undefined ? '' : `, drum ${riseText(context, value)} hotter`;
  const rows: readonly Row[] = [
    ['Road speed at first bite', speed(clutch.speeds.bite)],
    ['Road speed at its lock-up speed', speed(clutch.speeds.lockUp)],
    [
      'Locks in a launch at full throttle at',
      clutch.neverLocks || !launch.lockUp ? 'never: it slips up to the governor' : speed(launch.lockUp.speed),
    ],
    ['Road speed at the governed speed', speed(clutch.speeds.governed)],
    ['Heat of one launch on the level', `${heatText(clutch.launchHeat)}${rise(clutch.launchRise)}`],
    ...(clutch.hillHeat === undefined
      ? []
      : [
          [
            `Heat of one launch on the ${gradeText(ride.use.grade)} hill`,
            `${heatText(clutch.hillHeat)}${rise(clutch.hillRise)}`,
          ] as const,
        ]),
    [`At ${speed(ride.use.speed)} on the level`, dutyText(context, clutch.level)],
    [`At ${speed(ride.use.speed)} on the ${gradeText(ride.use.grade)} hill`, dutyText(context, clutch.hill)],
  ];
  return [{ kind: 'pageBreak' }, { kind: 'table', columns: [{ title: 'Clutch' }, { title: 'Value' }], rows }];
}

const dutyText = (context: DrawingContext, duty: ClutchAnswers['level']): string =>
  duty.slipping ? `slips all the time, ${printed(context, duty.heat, 'power')} of heat` : 'locked';

const assumptionTable = (context: DrawingContext, assumptions: readonly Assumption[]): Block => ({
  kind: 'table',
  columns: [
    { title: 'What' },
    { title: 'Taken as', align: 'right' },
    { title: 'Set it by' },
    { title: 'From' },
  ],
  rows: assumptions.map((one) => [
    one.name,
    one.kind === 'area' ? areaText(context, one.value) : printed(context, one.value, one.kind),
    one.path === '' ? '–' : one.path,
    `${one.source.key}: ${one.source.where}`,
  ]),
  size: 2.5,
});
