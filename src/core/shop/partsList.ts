import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { FlatPattern } from '../plates/index.ts';
import { printFineInches, printInches, printMillimeters } from '../quantity/index.ts';
import type { CutList } from './cutList.ts';

/** State of a part, as the build file's `made` says; planned where it says nothing. */
export type PartState = 'planned' | 'bought' | 'made' | 'welded';

/** One line of the parts list. */
export interface PartRow {
  /** Number on the list, counted from 1 through both halves. */
  readonly item: number;
  readonly source: 'buy' | 'make';
  readonly part: string;
  readonly what: string;
  readonly count: number;
  /** The dimensions that matter. */
  readonly matters: string;
  /** An equivalent to look for; for parts to make, the stock they come from. */
  readonly instead: string;
  readonly state: PartState;
}

type Draft = Omit<PartRow, 'item' | 'state'>;

const length = (value: number): string => `${printMillimeters(value)} (${printInches(value)})`;
/** Parts that must fit are said to a hundredth. */
const fine = (value: number): string => `${printMillimeters(value, 0.01)} (${printFineInches(value)})`;

export interface PartsInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
  readonly cuts: CutList;
}

/** Everything that the bike is made of: what to buy, with an equivalent to look for, and what to make. */
export function partsList(input: PartsInput): readonly PartRow[] {
  const drafts = [...buyDrafts(input), ...makeDrafts(input)];
  return drafts.map((draft, i) => ({
    ...draft,
    item: i + 1,
    state: input.build.made?.[draft.part]?.state ?? 'planned',
  }));
}

function buyDrafts({ build, bike, driveline }: PartsInput): Draft[] {
  const listed = Object.entries(build.purchases ?? {}).map(
    ([part, entry]): Draft => ({
      source: 'buy',
      part,
      what: entry.what,
      count: entry.count ?? 1,
      matters: entry.matters,
      instead: entry.instead ?? 'none named',
    }),
  );
  const bodies = Object.entries(build.bodies ?? {}).flatMap(([part, body]): Draft[] => [
    {
      source: 'buy',
      part,
      what: body.name,
      count: 1,
      matters: `about ${length(body.length)} × ${length(body.width)} × ${length(body.height)}`,
      instead: body.buy ?? 'none named',
    },
  ]);
  return [
    ...listed,
    ...wheelDrafts(build, bike),
    ...axleDrafts(bike),
    ...chainDrafts(driveline),
    ...bodies,
    ...fastenerDrafts(build),
  ];
}

function wheelDrafts(build: Build, bike: Bike): Draft[] {
  return (['rear', 'front'] as const).map((end): Draft => {
    const wheel = build.wheels[end];
    const tire = end === 'rear' ? bike.layout.rearTire : bike.layout.frontTire;
    return {
      source: 'buy',
      part: `${end}-wheel`,
      what: `${end === 'rear' ? 'Rear' : 'Front'} wheel with tire ${wheel.tire.size ?? ''}`.trim(),
      count: 1,
      matters: `tire ${length(2 * tire.radius)} diameter, ${length(tire.width)} wide; hub ${length(wheel.hub.width)} over the faces, bore ${fine(wheel.hub.bore)}`,
      instead: 'another wheel: measure hub width, bore, rollout and both rim edges, and enter them',
    };
  });
}

function axleDrafts(bike: Bike): Draft[] {
  return Object.values(bike.stacks).flatMap((stack): Draft[] =>
    stack.axle
      ? [
          {
            source: 'buy',
            part: `${stack.id}-axle`,
            what: `Axle or shaft, stack "${stack.id}"`,
            count: 1,
            matters: `${fine(stack.axle.diameter)} diameter, ${length(stack.axle.length)} long${threads(stack.axle)}`,
            instead: 'ground or drawn bar of the same diameter, threaded to suit',
          },
        ]
      : [],
  );
}

/** Threaded ends of an axle; nothing of a plain shaft. */
function threads({
  threadLeft = 0,
  threadRight = 0,
}: {
  readonly threadLeft?: number | undefined;
  readonly threadRight?: number | undefined;
}): string {
  const ends = [
    ...(threadLeft > 0 ? [`left ${length(threadLeft)}`] : []),
    ...(threadRight > 0 ? [`right ${length(threadRight)}`] : []),
  ];
  return ends.length > 0 ? `; thread ${ends.join(', ')}` : '';
}

/** Chains by the links worked out, and the sprockets by tooth count and hub. */
function chainDrafts(driveline: DrivelineSolution): Draft[] {
  return Object.values(driveline.chains).flatMap(({ stage, chain, plan, driver, driven }): Draft[] => {
    const links = plan
      ? `${plan.chosen.links} links${plan.chosen.offsetLink ? ' with an offset link' : ''}`
      : 'links not settled';
    const sprocket = (part: string, teeth: number, pitchDiameter: number, largestHub: number): Draft => ({
      source: 'buy',
      part,
      what: `Sprocket ${teeth} teeth, ${chain.name}`,
      count: 1,
      matters: `pitch diameter ${length(pitchDiameter)}; hub at most ${length(largestHub)}`,
      instead: 'any maker’s sprocket of that chain and tooth count; bore and key to suit the shaft',
    });
    return [
      {
        source: 'buy',
        part: `${stage.id}-chain`,
        what: `Roller chain ${chain.name}, ${links}`,
        count: 1,
        matters: `pitch ${length(chain.pitch)}; inner width ${length(chain.innerWidth)}`,
        instead: chain.aliases.length > 0 ? `also sold as ${chain.aliases.join(', ')}` : 'none named',
      },
      sprocket(`${stage.id}-driver`, stage.driverTeeth, driver.pitchDiameter, driver.largestHub),
      sprocket(`${stage.id}-driven`, stage.drivenTeeth, driven.pitchDiameter, driven.largestHub),
    ];
  });
}

function fastenerDrafts(build: Build): Draft[] {
  return Object.entries(build.fasteners ?? {}).map(
    ([part, entry]): Draft => ({
      source: 'buy',
      part,
      what: `Bolt ${entry.size}${entry.grade ? `, class ${entry.grade}` : ''}`,
      count: entry.count,
      matters: entry.use,
      instead: 'same thread, length and class or better',
    }),
  );
}

function makeDrafts({ bike, patterns, cuts }: PartsInput): Draft[] {
  const tubes = cuts.rows.map(
    (row): Draft => ({
      source: 'make',
      part: row.tube,
      what: `Tube${row.purpose ? `: ${row.purpose}` : ''}`,
      count: row.count,
      matters: `saw ${length(row.sawn)}; ${row.bends} ${row.bends === 1 ? 'bend' : 'bends'}; ${row.ends.map((end) => end.joint).join(' and ')} ends`,
      instead: `${length(row.outside)} × ${fine(row.wall)} ${row.material}`,
    }),
  );
  const plates = patterns.map(
    (pattern): Draft => ({
      source: 'make',
      part: pattern.id,
      what: pattern.title,
      count: pattern.count,
      matters: `${pattern.openings.length} holes and slots; ${pattern.bends.length} bends; ${pattern.make}`,
      instead: `${fine(pattern.thickness)} ${pattern.material}`,
    }),
  );
  return [...tubes, ...plates, ...spacerDrafts(bike)];
}

/** Spacers and sleeves at the exact length that the stacks ask for. */
function spacerDrafts(bike: Bike): Draft[] {
  return Object.values(bike.stacks).flatMap((stack) => [
    ...stack.items
      .filter((item) => item.kind === 'spacer')
      .map(
        (item): Draft => ({
          source: 'make',
          part: `${stack.id}.${item.id}`,
          what: `Spacer, stack "${stack.id}"`,
          count: 1,
          matters: `${fine(item.length)} long, ends square${item.note ? `; ${item.note}` : ''}`,
          instead:
            item.outside === undefined || item.bore === undefined
              ? 'tube to suit'
              : `tube ${length(item.outside)} outside, ${fine(item.bore)} bore`,
        }),
      ),
    ...stack.sleeves.map(
      (sleeve): Draft => ({
        source: 'make',
        part: `${stack.id}.${sleeve.item}.sleeve`,
        what: `Sleeve in ${sleeve.item}, stack "${stack.id}"`,
        count: 1,
        matters: `${fine(sleeve.outside)} outside, ${fine(sleeve.inside)} inside, ${fine(sleeve.length)} long, no split`,
        instead: 'turned from bar or tube',
      }),
    ),
  ]);
}
