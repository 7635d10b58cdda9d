import { describe, expect, test } from 'vitest';
import { demoDrawing, demoNames, drawingOf } from '../../../../tests/support/demoScene.ts';
import { meetingTexts, outsideMargins, reach, texts } from '../../../../tests/support/sheetChecks.ts';
import { type Patch, smallBuild } from '../../../../tests/support/smallBuild.ts';
import { boundsOfPoints, distance2, type Point } from '../../geometry/index.ts';
import { type DraftSheet, finishBook } from '../bookPages.ts';
import { paper } from '../paper.ts';
import type { PathItem, Sheet, SheetItem, TextItem } from '../sheet.ts';
import { templateSheets } from '../templates.ts';
import { missingCharacters } from '../textMetrics.ts';
import { scaleOf, type View, viewPoint } from '../view.ts';
import { band } from './bands.ts';
import { degreesText, words } from './context.ts';
import { fitUpSheets } from './fitUpSheet.ts';
import { generalArrangementSheets } from './generalArrangement.ts';
import { ladderSheets } from './ladderSheet.ts';
import { plateCards } from './plateCards.ts';
import { plateTemplateJobs } from './plateTemplates.ts';
import { projector } from './scene.ts';
import { sideViewItems } from './sideView.ts';
import { stackSheets } from './stackSheets.ts';
import { topViewItems } from './topView.ts';
import { tubeCards } from './tubeCards.ts';
import { tubeWrapJobs } from './tubeTemplates.ts';

const bookOf = (
  { context, work }: ReturnType<typeof drawingOf>,
  system: 'both' | 'mm' | 'in' = 'both',
): readonly Sheet[] => {
  const own = { ...context, system };
  const drafts: readonly DraftSheet[] = [
    ...generalArrangementSheets(own),
    ...stackSheets(own),
    ...ladderSheets(own),
    ...fitUpSheets(own, work.fitUp),
    ...plateCards(own, work.drilling),
    ...tubeCards(own, work),
  ];
  return finishBook(drafts, {
    bike: own.scene.build.about.name,
    date: '2026-01-02',
    units: 'mm over in',
  });
};

describe.each(demoNames)('sheets of the %s demo', (name) => {
  const systems = ['both', 'mm', 'in'] as const;
  const books = new Map(systems.map((system) => [system, bookOf(demoDrawing(name), system)]));
  const all = systems.flatMap((system) =>
    books.get(system)!.map((sheet) => [`${system} ${sheet.id}`, sheet] as const),
  );

  test.each(all)('%s: no two texts share paper', (_, sheet) => {
    expect(meetingTexts(sheet)).toEqual([]);
  });

  test.each(all)('%s: all lies within the margins', (_, sheet) => {
    expect(outsideMargins(sheet)).toEqual([]);
  });

  test.each(all)('%s: letters of 2.5 mm or more outside the title block, all in the font', (_, sheet) => {
    const small = texts(sheet.items).filter((one) => one.size < 2.5 && one.at.y > 7 + 12);
    // A number in a balloon may be set smaller to fit its circle.
    expect(small.filter((one) => !/^\d+$|^[A-Z]+$/.test(one.text)).map((one) => one.text)).toEqual([]);
    expect(
      missingCharacters(
        texts(sheet.items)
          .map((one) => one.text)
          .join(''),
      ),
    ).toEqual([]);
  });

  test('every sheet has a name of its own, and the same build gives the same sheets', () => {
    const sheets = books.get('both')!;
    expect(new Set(sheets.map((sheet) => sheet.id)).size).toBe(sheets.length);
    expect(JSON.stringify(bookOf(demoDrawing(name)))).toBe(JSON.stringify(sheets));
  });

  test('templates of all plates and copes can be laid out, each with two check lengths or more', () => {
    const { scene } = demoDrawing(name).context;
    const jobs = [...plateTemplateJobs(scene.patterns), ...tubeWrapJobs(scene.bike.tubes)];
    expect(jobs.length).toBeGreaterThan(scene.patterns.length);
    for (const job of jobs) {
      expect(job.checks.length, job.id).toBeGreaterThanOrEqual(2);
      const sheets = templateSheets(job, { paper: paper('letter'), bike: 'b', date: '2026-01-02' });
      expect(sheets.ok, job.id).toBe(true);
    }
  });
});

/** Bikes that no one would build, but that a half-written file describes. */
const oddBuilds: Readonly<Record<string, Patch>> = {
  'no brakes, no plates, no countershaft': {},
  'a very long wheelbase': { steering: { wheelbase: 2500 } },
  'a very short wheelbase': { steering: { wheelbase: 600 } },
  'an upright head': { steering: { headAngle: 90, forkOffset: 0 } },
  'no tubes': { frame: { tubes: { rail: null } } },
  'sprockets 30 mm apart': {
    stacks: {
      engine: {
        items: [
          { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
          {
            id: 'clutch',
            kind: 'clutch',
            length: 40,
            planes: [{ runs: 'sprocket', drive: 'final', at: 12 }],
          },
        ],
      },
    },
  },
};

describe.each(Object.entries(oddBuilds))('sheets of a build with %s', (_, patch) => {
  const sheets = bookOf(drawingOf(smallBuild(patch)));

  test('can be drawn: no two texts meet, all lies within the margins', () => {
    expect(sheets.flatMap(meetingTexts)).toEqual([]);
    expect(sheets.flatMap(outsideMargins)).toEqual([]);
  });
});

test('the two checks find what they look for', () => {
  const [sheet] = bookOf(demoDrawing('light'));
  const word: TextItem = {
    type: 'text',
    at: { x: 100, y: 100 },
    text: 'word',
    size: 3,
    anchor: 'start',
    turn: 0,
    weight: 'regular',
    tone: 'ink',
  };
  const twice = { ...sheet!, items: [word, { ...word, at: { x: 101, y: 101 } }] };
  expect(meetingTexts(twice)).toEqual(['word × word']);
  expect(outsideMargins({ ...sheet!, items: [{ ...word, at: { x: 6, y: 100 } }] })).toEqual(['word']);
  expect(outsideMargins({ ...sheet!, items: [{ ...word, at: { x: Number.NaN, y: 100 } }] })).toEqual([
    'word',
  ]);
});

/** 1 : 1, so that paper millimeters are those of the bike. */
const fullSize = (flipX: boolean): View => ({ scale: scaleOf(1), origin: { x: 0, y: 0 }, flipX });

const circleOf = (items: readonly SheetItem[], part: string) =>
  items.filter((item) => item.part === part).flatMap((item) => (item.type === 'circle' ? [item] : []));

describe('views show the bike where it is', () => {
  const { scene } = demoDrawing('light').context;

  test.each([true, false])('side view, flipped %s: tires stand on the ground at their axles', (flipX) => {
    const items = sideViewItems(scene, fullSize(flipX));
    for (const end of ['rear', 'front'] as const) {
      const axle = scene.bike.shafts[end === 'rear' ? 'rearAxle' : 'frontAxle']!;
      const radius = scene.bike.layout.fitted[end].radius * 1000;
      const tire = circleOf(items, `wheels.${end}`).find((one) => Math.abs(one.radius - radius) < 1e-9);
      // Exact but for rounding: one multiplication by 1000.
      expect(tire?.center.x).toBeCloseTo((flipX ? -1 : 1) * axle.x * 1000, 9);
      expect(tire?.center.y).toBeCloseTo(axle.z * 1000, 9);
    }
  });

  test('top view, forward to the left: the rider’s left is below', () => {
    const items = topViewItems(scene, fullSize(true));
    // The light demo's final chain runs left of the center plane, its first chain right of it.
    const heightOf = (part: string): number => {
      const points = items.filter((item) => item.part === part).flatMap(reach);
      const box = boundsOfPoints(points);
      return (box.minY + box.maxY) / 2;
    };
    const { lines } = scene.bike.ladder;
    for (const one of lines) {
      const y = ((one.driverY + one.drivenY) / 2) * 1000;
      expect(heightOf(`driveline.${one.drive}`), one.drive).toBeCloseTo(-y, 6);
    }
  });

  test('hidden groups are left out, all others stay', () => {
    const parts = (hide: readonly ('rider' | 'engine')[]): ReadonlySet<string | undefined> =>
      new Set(sideViewItems(scene, fullSize(true), { hide }).map((item) => item.part));
    const whole = parts([]);
    expect(whole).toContain('rider');
    expect(whole).toContain('engine');
    const less = parts(['rider', 'engine']);
    expect(less).not.toContain('rider');
    expect(less).not.toContain('engine');
    expect([...whole].filter((part) => !less.has(part)).sort()).toEqual(['engine', 'rider']);
  });

  test('an open view from the left paints the left rail over the engine, from the right the right one', () => {
    const order = (flipX: boolean): readonly (string | undefined)[] =>
      sideViewItems(scene, fullSize(flipX)).map((item) => item.part);
    for (const flipX of [true, false]) {
      const parts = order(flipX);
      expect(parts.lastIndexOf('frame.tubes.lowerRail')).toBeGreaterThan(parts.lastIndexOf('engine'));
      expect(parts.indexOf('frame.tubes.lowerRail')).toBeLessThan(parts.indexOf('engine'));
    }
  });
});

describe('a round bar is drawn as the silhouette it has', () => {
  const p = projector(fullSize(false), 'side');
  const look = { pen: 'outline', fill: 'paper' } as const;

  test('points of the outline keep the radius from the projected centerline', () => {
    // Points on a quarter of a 100 mm circle that leans out of the view by 40°: an ellipse on paper.
    const path = Array.from({ length: 181 }, (_, k) => {
      const turn = (Math.PI * k) / 360;
      const [u, v] = [0.1 * Math.cos(turn), 0.1 * Math.sin(turn)];
      return { x: u, y: v * Math.sin(0.7), z: v * Math.cos(0.7) };
    });
    const [item] = band(p, path, 0.01, look) as readonly [PathItem];
    const line = path.map((q): Point => viewPoint(p.view, p.flat(q)));
    const far = item.vertices.map((q) => Math.min(...line.map((c) => distance2(c, q))));
    // Chords of 0.5° leave the centerline by r·(1 − cos 0.25°) = 1 µm; the nearest sample may lie half a chord aside,
    // 0.44 mm, which makes √(10² + 0.44²) − 10 = 0.01 mm.
    expect(Math.min(...far)).toBeGreaterThan(10 - 0.002);
    expect(Math.max(...far)).toBeLessThan(10 + 0.011);
  });

  test('a bar seen end-on is a circle of its size', () => {
    const items = band(
      p,
      [
        { x: 0, y: -0.1, z: 0 },
        { x: 0, y: 0.1, z: 0 },
      ],
      0.0127,
      look,
    );
    expect(items).toMatchObject([{ type: 'circle', radius: 12.7 }]);
  });
});

test('names and angles are written as words', () => {
  expect(words('lowerRail.right')).toBe('lower rail right');
  expect(words('engine-plate')).toBe('engine plate');
  expect(degreesText(Math.PI / 4)).toBe('45.0°');
  expect(degreesText(-1e-9)).toBe('0.0°');
});
