import { describe, expect, test } from 'vitest';
import { demoDrawing, demoNames, drawingOf } from '../../../../tests/support/demoScene.ts';
import { meetingTexts, outsideMargins, texts } from '../../../../tests/support/sheetChecks.ts';
import { type Patch, smallBuild } from '../../../../tests/support/smallBuild.ts';
import { printQuantity } from '../../quantity/index.ts';
import { type Riding, ridingOf } from '../../ride/index.ts';
import { finishBook } from '../bookPages.ts';
import type { Sheet } from '../sheet.ts';
import { missingCharacters } from '../textMetrics.ts';
import type { DrawingContext } from './context.ts';
import { rideSheets } from './rideSheets.ts';

const systems = ['both', 'mm', 'in'] as const;

const chapter = (context: DrawingContext, riding: Riding): readonly Sheet[] =>
  finishBook(rideSheets(context, riding), { bike: 'bike', date: '2026-01-02', units: 'mm over in' });

const said = (sheets: readonly Sheet[]): string =>
  sheets.flatMap((sheet) => texts(sheet.items).map((one) => one.text)).join(' ');

describe.each(demoNames)('ride chapter of the %s demo', (name) => {
  const { context } = demoDrawing(name);
  const riding = ridingOf(context.scene);
  const chapters = new Map(systems.map((system) => [system, chapter({ ...context, system }, riding)]));
  const all = systems.flatMap((system) =>
    chapters.get(system)!.map((sheet) => [`${system} ${sheet.id}`, sheet] as const),
  );

  test.each(all)(
    '%s: no two texts share paper, all lies within the margins, letters are legible',
    (_, sheet) => {
      expect(meetingTexts(sheet)).toEqual([]);
      expect(outsideMargins(sheet)).toEqual([]);
      const small = texts(sheet.items).filter((one) => one.size < 2.5 && one.at.y > 7 + 12);
      expect(small.map((one) => one.text)).toEqual([]);
      expect(
        missingCharacters(
          texts(sheet.items)
            .map((one) => one.text)
            .join(''),
        ),
      ).toEqual([]);
    },
  );

  test('every page has a name of its own, and the same ride gives the same pages', () => {
    const pages = chapters.get('both')!;
    expect(new Set(pages.map((page) => page.id)).size).toBe(pages.length);
    expect(JSON.stringify(chapter({ ...context, system: 'both' }, ridingOf(context.scene)))).toBe(
      JSON.stringify(pages),
    );
  });

  test('top speed, weave speed and the present sprockets are on the pages as worked out', () => {
    const words = said(chapters.get('mm')!);
    const { speed } = riding.going!.answers.launch.top;
    expect(words).toContain(`top speed ${printQuantity(speed, 'speed', 'mm')}`);
    expect(words).toContain(`weave ${printQuantity(riding.handling!.handling.speeds.weave!, 'speed', 'mm')}`);
    const present = texts(chapters.get('mm')!.flatMap((page) => page.items)).filter(
      (one) => one.text === 'now',
    );
    expect(present.length).toBe(1);
  });

  test('one system is asked for, one is printed', () => {
    const found = (system: 'mm' | 'in', pattern: RegExp): string | undefined =>
      // Names of published figures and of sources keep the units that they were published in.
      said(chapters.get(system)!)
        .replaceAll(/(up to|riding,) \d+ km\/h/g, '')
        .match(pattern)?.[0];
    expect(found('mm', /mph|lbf|\d[ \u00a0]ft\b|°F/)).toBeUndefined();
    expect(found('in', /km\/h|m\/s²|\d N\b|\d K\b|\d[ \u00a0]m\b/)).toBeUndefined();
  });

  test('figures of a directive are said to be for reference only, limits of the model are said', () => {
    const words = said(chapters.get('both')!);
    expect(words).toContain('for reference only');
    expect(words).toContain('no tire slip or relaxation');
  });
});

const torque = (value: number) => ({ torque: [1000, 2500, 3600].map((at) => ({ at, torque: value })) });

/** Bikes that no one would build, but that a half-written file describes. */
const oddBuilds: Readonly<Record<string, Patch>> = {
  'an engine too weak to move off': { engine: torque(0.05) },
  'an engine that lifts the front wheel': { engine: torque(150) },
  'a rider ahead of the front axle': {
    engine: torque(9),
    steering: { wheelbase: 600 },
    seating: { seat: { place: { from: 'rearAxle', forward: 900, height: 560 } } },
  },
  'a rider behind the rear axle': {
    engine: torque(9),
    seating: { seat: { place: { from: 'rearAxle', forward: -300, height: 900 } } },
  },
  'an upright head': { engine: torque(9), steering: { headAngle: 90, forkOffset: 0, lock: 30 } },
  'a clutch that never locks': {
    engine: torque(9),
    driveline: {
      stages: [
        { id: 'clutch', kind: 'clutch', on: 'engine', engages: 2000, locks: 2600, capacity: 1 },
        {
          id: 'final',
          kind: 'chain',
          from: 'engine',
          to: 'rearAxle',
          chain: '#35',
          driverTeeth: 12,
          drivenTeeth: 72,
        },
      ],
    },
  },
};

test.each(Object.entries(oddBuilds))('the chapter can be drawn of a build with %s', (_, patch) => {
  const { context } = drawingOf(smallBuild(patch));
  const pages = chapter(context, ridingOf(context.scene));
  expect(pages.flatMap(meetingTexts)).toEqual([]);
  expect(pages.flatMap(outsideMargins)).toEqual([]);
});

test('a bike whose ride cannot be worked out says why and still has its other pages', () => {
  const { context } = drawingOf(smallBuild({}));
  const riding = ridingOf(context.scene);
  const { going: _, gearing: __, handling: ___, turning: ____, ...rest } = riding;
  const bare: Riding = {
    ...rest,
    leans: [],
    locks: [],
    issues: [{ code: 'missing', path: 'engine.torque', wanted: 'the torque curve' }],
  };
  for (const one of [riding, bare]) {
    const pages = chapter(context, one);
    expect(pages.flatMap(meetingTexts)).toEqual([]);
    expect(pages.flatMap(outsideMargins)).toEqual([]);
  }
  expect(said(chapter(context, bare))).toContain('engine.torque');
});
