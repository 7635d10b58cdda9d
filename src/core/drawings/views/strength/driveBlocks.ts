import type { Length } from '../../../quantity/index.ts';
import type { Strength } from '../../../strength/index.ts';
import type { Block } from '../../bookPages.ts';
import type { DrawingContext } from '../context.ts';
import { printed } from '../rideWords.ts';
import { partText, percentCell, smallText } from './strengthWords.ts';

/** Chains, belts and the bearings that are pressed into plates. */
export function driveBlocks(context: DrawingContext, { drive }: Strength): readonly Block[] {
  const { chains, belts, seats } = drive;
  return [
    ...(chains.length + belts.length > 0
      ? [{ kind: 'heading' as const, text: 'Chains and belts', level: 2 as const }]
      : []),
    ...chainTable(context, chains),
    ...beltTable(context, belts),
    ...seatTable(context, seats),
  ];
}

function chainTable(context: DrawingContext, chains: Strength['drive']['chains']): readonly Block[] {
  if (chains.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Chain' },
        { title: 'Tight strand', align: 'right' },
        { title: 'Allowed in work', align: 'right' },
        { title: 'With shock', align: 'right' },
        { title: 'Breaking over tight', align: 'right' },
        { title: 'Fastest', align: 'right' },
        { title: 'Pressure in its joints, mean', align: 'right' },
        { title: 'Allowed', align: 'right' },
        { title: 'Rated over design power', align: 'right' },
      ],
      rows: chains.map((chain) => [
        partText(chain.drive),
        printed(context, chain.tension, 'force', 1),
        printed(context, chain.limit, 'force', 1),
        `${printed(context, chain.peak, 'force', 1)} (${chain.service.factor} times)`,
        chain.factorOfBreaking.toFixed(1),
        printed(context, chain.speed, 'speed'),
        printed(context, chain.meanPressure, 'pressure', 0.1),
        chain.allowedPressure === undefined ? '–' : printed(context, chain.allowedPressure, 'pressure', 0.1),
        chain.powerFactor === undefined ? '–' : chain.powerFactor.toFixed(2),
      ]),
      size: 2.5,
    },
  ];
}

function beltTable(context: DrawingContext, belts: Strength['drive']['belts']): readonly Block[] {
  if (belts.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Belt, at launch' },
        { title: 'Tight strand', align: 'right' },
        { title: 'Slack strand', align: 'right' },
        { title: 'Mean of both', align: 'right' },
        { title: 'Wrap of the smaller', align: 'right' },
        { title: 'Sheaves pressed together by, least', align: 'right' },
        { title: 'On its shafts', align: 'right' },
      ],
      rows: belts.map((belt) => [
        partText(belt.drive),
        printed(context, belt.tight, 'force', 1),
        printed(context, belt.slack, 'force', 1),
        printed(context, belt.mean, 'force', 1),
        printed(context, belt.wrap, 'angle', 1),
        printed(context, belt.clampNeeded, 'force', 1),
        printed(context, belt.shaftLoad, 'force', 1),
      ]),
      size: 2.5,
    },
  ];
}

function seatTable(context: DrawingContext, seats: Strength['drive']['seats']): readonly Block[] {
  if (seats.length === 0) return [];
  const small = (length: number): string => smallText(context, length as Length);
  return [
    { kind: 'heading', text: 'Bearings pressed into plates', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: 'Plate' },
        { title: 'Bearing' },
        { title: 'Bore' },
        { title: 'Interference', align: 'right' },
        { title: 'Pressure, tightest', align: 'right' },
        { title: 'Tension round the bore', align: 'right' },
        { title: 'Pushes in with', align: 'right' },
        { title: 'Clearance that it takes, middle to tightest', align: 'right' },
        { title: 'Clearance before', align: 'right' },
        { title: 'Middle used', align: 'right' },
      ],
      rows: seats.map(({ tightest, clearance, clearanceLoss, ...seat }) => [
        partText(seat.plate),
        seat.designation,
        seat.isByHand ? 'by hand' : seat.fit,
        `${small(seat.interference.least)} to ${small(seat.interference.most)}`,
        tightest ? printed(context, tightest.pressure, 'pressure', 0.1) : '–',
        tightest ? printed(context, tightest.hubHoop, 'pressure', 1) : '–',
        tightest ? printed(context, tightest.pushForce, 'force', 10) : '–',
        `${small(clearanceLoss.middle)} to ${small(clearanceLoss.most)}`,
        clearance ? `${small(clearance.least)} to ${small(clearance.most)}, ${clearance.group}` : '–',
        clearance ? percentCell((2 * clearanceLoss.middle) / (clearance.least + clearance.most)) : '–',
      ]),
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: 'A minus is loose. Both rings elastic and even all round, the plate as the circle of metal round its bore, so a real plate presses less. Above 100 % take a bearing of the next larger clearance, C3, or the next looser fit. A bore that is opened by hand stops when this very bearing just seats; its band is what a file and a gauge keep to.',
      size: 2.6,
    },
  ];
}
